// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import java.util.ArrayList;
import java.util.List;

/**
 * Notches of a pattern: where a drawn line (edge of a zone, centreline) runs out at an outline, and where the direction of
 * warp, fibres or ribbon through the start meets the outer outline, so that direction and place can be checked at the edge.
 */
public final class Notches {
    /** Depth of a slit, m: common practice, no source. */
    public static final double DEPTH = 0.004;

    private static final double NEAR = 0.003;
    private static final double APART = 0.010;

    private Notches() {}

    /** The pattern with its notches, besides marks it has. */
    public static FlatPattern on(FlatPattern flat) {
        if (flat.outlines().isEmpty() || Math.min(flat.length(), flat.width()) < 4 * DEPTH) {
            return flat;
        }
        List<Mark> marks = new ArrayList<>(flat.marks());
        List<double[]> feet = new ArrayList<>();
        for (double[] line : flat.lines()) {
            int n = line.length;
            add(flat, line[0], line[1], NEAR, feet, marks);
            add(flat, line[n - 2], line[n - 1], NEAR, feet, marks);
        }
        double[] outer = flat.outlines().getFirst();
        double ahead = Double.NEGATIVE_INFINITY;
        double behind = Double.POSITIVE_INFINITY;
        double y = flat.start()[1];
        for (int i = 0; i < outer.length; i += 2) {
            int j = (i + 2) % outer.length;
            if (outer[i + 1] > y != outer[j + 1] > y) {
                double x = outer[i] + (y - outer[i + 1]) / (outer[j + 1] - outer[i + 1]) * (outer[j] - outer[i]);
                ahead = Math.max(ahead, x);
                behind = Math.min(behind, x);
            }
        }
        if (ahead > behind) {
            add(flat, ahead, y, NEAR, feet, marks);
            add(flat, behind, y, NEAR, feet, marks);
        }
        return flat.withMarks(marks);
    }

    private static void add(FlatPattern flat, double x, double y, double near, List<double[]> feet, List<Mark> marks) {
        double best = near;
        double[] foot = {};
        for (double[] outline : flat.outlines()) {
            for (int i = 0; i < outline.length; i += 2) {
                int j = (i + 2) % outline.length;
                double dx = outline[j] - outline[i];
                double dy = outline[j + 1] - outline[i + 1];
                double l = Math.hypot(dx, dy);
                if (l == 0) {
                    continue;
                }
                double t = Math.clamp(((x - outline[i]) * dx + (y - outline[i + 1]) * dy) / (l * l), 0.0, 1.0);
                double fx = outline[i] + t * dx;
                double fy = outline[i + 1] + t * dy;
                double away = Math.hypot(fx - x, fy - y);
                if (away < best) {
                    best = away;
                    foot = new double[] {fx, fy, -dy / l, dx / l};
                }
            }
        }
        if (foot.length == 0) {
            return;
        }
        for (double[] other : feet) {
            if (Math.hypot(other[0] - foot[0], other[1] - foot[1]) < APART) {
                return;
            }
        }
        for (int side = 1; side >= -1; side -= 2) {
            double ix = foot[0] + side * DEPTH * foot[2];
            double iy = foot[1] + side * DEPTH * foot[3];
            if (inside(flat, ix, iy)) {
                feet.add(foot);
                marks.add(new Mark(Mark.Kind.NOTCH, new double[] {foot[0], foot[1], ix, iy}));
                return;
            }
        }
    }

    /** Whether a point lies in the sheet: inside an odd number of outlines. */
    static boolean inside(FlatPattern flat, double x, double y) {
        boolean in = false;
        for (double[] o : flat.outlines()) {
            for (int i = 0, j = o.length - 2; i < o.length; j = i, i += 2) {
                if (o[i + 1] > y != o[j + 1] > y && x < (o[j] - o[i]) * (y - o[i + 1]) / (o[j + 1] - o[i + 1]) + o[i]) {
                    in = !in;
                }
            }
        }
        return in;
    }
}
