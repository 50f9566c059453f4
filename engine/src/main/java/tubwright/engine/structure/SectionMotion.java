// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.EnumMap;
import java.util.Map;
import tubwright.engine.structure.Mode.Motion;

/**
 * How much of a mode's kinetic energy is movement of whole sections: the body is cut into slabs along x and in each the
 * mean movement and the rotation about x that fit best are taken out. What is left is panels moving by themselves.
 */
final class SectionMotion {
    private static final int SLABS = 16;
    /** A mode belongs to its sections if at least this share of its energy is in one of their motions. */
    private static final double NAMED = 0.35;
    /** A second motion is worth a word from this share. */
    static final double GOOD_PART = 0.2;

    private final double[] positions;
    private final double[] mass;
    private final int[] slab;

    /**
     * @param positions 3 per node, m
     * @param mass lumped at each node, kg
     */
    SectionMotion(double[] positions, double[] mass) {
        this.positions = positions;
        this.mass = mass;
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < mass.length; n++) {
            from = Math.min(from, positions[3 * n]);
            to = Math.max(to, positions[3 * n]);
        }
        slab = new int[mass.length];
        for (int n = 0; n < mass.length; n++) {
            slab[n] = to > from ? Math.min(SLABS - 1, (int) (SLABS * (positions[3 * n] - from) / (to - from))) : 0;
        }
    }

    /** Share of the kinetic energy in each motion of sections; {@link Motion#LOCAL} is the rest. */
    Map<Motion, Double> shares(double[] shape) {
        double[] m = new double[SLABS];
        double[][] centre = new double[SLABS][3];
        double[][] mean = new double[SLABS][3];
        double total = 0;
        for (int n = 0; n < mass.length; n++) {
            int s = slab[n];
            m[s] += mass[n];
            for (int d = 0; d < 3; d++) {
                centre[s][d] += mass[n] * positions[3 * n + d];
                mean[s][d] += mass[n] * shape[6 * n + d];
                total += mass[n] * shape[6 * n + d] * shape[6 * n + d];
            }
        }
        double[] polar = new double[SLABS];
        double[] turn = new double[SLABS];
        for (int n = 0; n < mass.length; n++) {
            int s = slab[n];
            if (m[s] > 0) {
                double y = positions[3 * n + 1] - centre[s][1] / m[s];
                double z = positions[3 * n + 2] - centre[s][2] / m[s];
                polar[s] += mass[n] * (y * y + z * z);
                turn[s] += mass[n] * (y * shape[6 * n + 2] - z * shape[6 * n + 1]);
            }
        }
        double[] sums = new double[4];
        for (int s = 0; s < SLABS; s++) {
            for (int d = 0; d < 3 && m[s] > 0; d++) {
                sums[d] += mean[s][d] * mean[s][d] / m[s];
            }
            sums[3] += polar[s] > 0 ? turn[s] * turn[s] / polar[s] : 0;
        }
        Map<Motion, Double> shares = new EnumMap<>(Motion.class);
        shares.put(Motion.LENGTHWISE, sums[0] / total);
        shares.put(Motion.SIDEWAYS, sums[1] / total);
        shares.put(Motion.VERTICAL, sums[2] / total);
        shares.put(Motion.TORSION, sums[3] / total);
        shares.put(Motion.LOCAL, 1 - (sums[0] + sums[1] + sums[2] + sums[3]) / total);
        return shares;
    }

    /** The motion with the largest share if that is large enough, else local. */
    static Motion leading(Map<Motion, Double> shares) {
        Motion leading = Motion.LOCAL;
        double most = NAMED;
        for (Map.Entry<Motion, Double> share : shares.entrySet()) {
            if (share.getKey() != Motion.LOCAL && share.getValue() > most) {
                most = share.getValue();
                leading = share.getKey();
            }
        }
        return leading;
    }

    /** " with torsion" and the like, if another motion of sections has a good part; else empty. */
    static String besides(Map<Motion, Double> shares, Motion leading) {
        Motion second = Motion.LOCAL;
        double most = GOOD_PART;
        for (Map.Entry<Motion, Double> share : shares.entrySet()) {
            if (share.getKey() != Motion.LOCAL && share.getKey() != leading && share.getValue() > most) {
                most = share.getValue();
                second = share.getKey();
            }
        }
        return second == Motion.LOCAL ? "" : " with " + second.words();
    }
}
