// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.List;

/**
 * A closed curve on a chart, given as the zero of a level set in space, along which the mesh is to be cut: the edge of an
 * opening, of a patch, of a wall.
 *
 * @param name of the opening, hole, patch or wall
 * @param level level set: negative inside, about the distance near zero, m
 * @param bands parts of the chart in which the curve counts, {a0, a1, b0, b1} each, cell counts
 * @param away what is cut away
 * @param size wanted edge length at the curve, m
 * @param sharp sharp corners of the curve in space, 3 numbers each (right half)
 */
record CutCurve(String name, Level level, List<double[]> bands, Away away, double size, double[] sharp) {
    /** Signed level set in space. */
    interface Level {
        double at(double x, double y, double z);
    }

    /** Which side of the curve is thrown away. */
    enum Away {
        NOTHING,
        INSIDE,
        OUTSIDE
    }

    boolean covers(double a, double b) {
        for (double[] band : bands) {
            if (a > band[0] && a < band[1] && b > band[2] && b < band[3]) {
                return true;
            }
        }
        return false;
    }
}
