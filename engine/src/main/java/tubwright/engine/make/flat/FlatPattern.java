// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import java.util.List;

/**
 * A pattern to be cut, seen from the side it is laid from (the mould side is underneath), warp or fibres or ribbon along
 * x.
 *
 * @param name of the ply
 * @param outlines closed outlines, 2 coordinates per point, m; the outer one first, then cut-outs; the last point does not
 *     repeat the first
 * @param lines drawn, not cut: edges of zones and of plies that lie on it, the same way but open
 * @param start where laying starts, 2 coordinates, m
 * @param reference direction of the tub's reference direction at the start, rad from x
 * @param distortion what flattening stretched; all zero for a cloth, whose net gives it the shape exactly
 * @param missing length of outline the pattern could not follow, m
 * @param marks notches, ramps and potting
 */
public record FlatPattern(
        String name,
        List<double[]> outlines,
        List<double[]> lines,
        double[] start,
        double reference,
        Distortion distortion,
        double missing,
        List<Mark> marks) {
    public FlatPattern {
        outlines = List.copyOf(outlines);
        lines = List.copyOf(lines);
        marks = List.copyOf(marks);
    }

    /** One without marks. */
    public FlatPattern(
            String name,
            List<double[]> outlines,
            List<double[]> lines,
            double[] start,
            double reference,
            Distortion distortion,
            double missing) {
        this(name, outlines, lines, start, reference, distortion, missing, List.of());
    }

    /** The same with these marks. */
    public FlatPattern withMarks(List<Mark> others) {
        return new FlatPattern(name, outlines, lines, start, reference, distortion, missing, others);
    }

    /** The same with these outlines. */
    public FlatPattern withOutlines(List<double[]> others) {
        return new FlatPattern(name, others, lines, start, reference, distortion, missing, marks);
    }

    /** Marks of a kind. */
    public List<double[]> marks(Mark.Kind kind) {
        return marks.stream().filter(m -> m.kind() == kind).map(Mark::points).toList();
    }

    /** Area inside the outer outline less the cut-outs, m². */
    public double area() {
        double sum = 0;
        for (int i = 0; i < outlines.size(); i++) {
            sum += (i == 0 ? 1 : -1) * Math.abs(Outlines.area(outlines.get(i)));
        }
        return sum;
    }

    /** Length along x, m. */
    public double length() {
        return span(0);
    }

    /** Width along y, m. */
    public double width() {
        return span(1);
    }

    private double span(int axis) {
        double[] box = box();
        return box[axis + 2] - box[axis];
    }

    /** Least x, least y, largest x, largest y of the outlines, m. */
    public double[] box() {
        double[] box = {
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
        };
        for (double[] outline : outlines) {
            for (int i = 0; i < outline.length; i++) {
                box[i % 2] = Math.min(box[i % 2], outline[i]);
                box[i % 2 + 2] = Math.max(box[i % 2 + 2], outline[i]);
            }
        }
        return box;
    }

    /** Whether the outer outline crosses itself: then it cannot be cut from one sheet. */
    public boolean overlapsItself() {
        return !outlines.isEmpty() && Outlines.crossesItself(outlines.getFirst());
    }
}
