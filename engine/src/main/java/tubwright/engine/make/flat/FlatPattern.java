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
 */
public record FlatPattern(
        String name,
        List<double[]> outlines,
        List<double[]> lines,
        double[] start,
        double reference,
        Distortion distortion,
        double missing) {
    public FlatPattern {
        outlines = List.copyOf(outlines);
        lines = List.copyOf(lines);
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
