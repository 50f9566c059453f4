// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Second-order work of a beam's section forces: the quadratic part of the strains of a beam whose sections turn by
 * rotation vectors (strains after Simo and Vu-Quoc 1986, CMAME 58:79), integrated with the shapes of the linear element.
 *
 * <p>With θ = (φ, θy, θz), section forces P, Vy, Vz, T, My, Mz: ½P(v'² + w'²) + ½P (Iy + Iz)/A φ'² + Vy(φw' + ½φθy) +
 * Vz(½φθz - φv') - ½ (T, My, Mz)·(θ × θ'). The first term acts on the slope of the axis, so that a column with shear
 * flexibility follows Engesser (1889). Being written in rotation vectors, frames with corners need no correction.
 * Moments at the ends keep to their share of a conservative load; loads keep their direction.
 */
final class BeamGeometricStiffness {
    private static final int N = Beam.FREEDOMS;

    private final double[] g = new double[N * N];

    private BeamGeometricStiffness() {}

    /** In local axes, from the end forces in local axes. */
    static double[] local(Beam beam, BeamSection section, double[] force) {
        BeamGeometricStiffness sum = new BeamGeometricStiffness();
        double length = beam.length();
        double phiY = beam.shearRatio(section.inertiaZ(), section.shearAreaY());
        double phiZ = beam.shearRatio(section.inertiaY(), section.shearAreaZ());
        double polar = (section.inertiaY() + section.inertiaZ()) / section.area();
        double axial = force[6];
        double vy = force[7];
        double vz = force[8];
        for (int p = 0; p < Beam.GAUSS.length; p++) {
            double s = Beam.GAUSS[p];
            double f = Beam.GAUSS_WEIGHT[p] * length;
            double rest = (1 - s) * length;
            double my = force[10] - rest * vz;
            double mz = force[11] + rest * vy;
            double[] slopeV = new double[N];
            double[] slopeW = new double[N];
            double[] thetaY = new double[N];
            double[] thetaZ = new double[N];
            double[] bendY = new double[N];
            double[] bendZ = new double[N];
            double[] twist = new double[N];
            double[] twistRate = new double[N];
            twist[3] = 1 - s;
            twist[9] = s;
            twistRate[3] = -1 / length;
            twistRate[9] = 1 / length;
            shapes(beam, s, phiY, new int[] {1, 5, 7, 11}, 1, slopeV, thetaZ, bendZ);
            shapes(beam, s, phiZ, new int[] {2, 4, 8, 10}, -1, slopeW, thetaY, bendY);
            sum.add(slopeV, slopeV, 0.5 * f * axial);
            sum.add(slopeW, slopeW, 0.5 * f * axial);
            sum.add(twistRate, twistRate, 0.5 * f * axial * polar);
            sum.add(twist, slopeW, f * vy);
            sum.add(twist, thetaY, 0.5 * f * vy);
            sum.add(twist, slopeV, -f * vz);
            sum.add(twist, thetaZ, 0.5 * f * vz);
            sum.add(thetaY, bendZ, -0.5 * f * force[9]);
            sum.add(thetaZ, bendY, 0.5 * f * force[9]);
            sum.add(thetaZ, twistRate, -0.5 * f * my);
            sum.add(twist, bendZ, 0.5 * f * my);
            sum.add(twist, bendY, -0.5 * f * mz);
            sum.add(thetaY, twistRate, 0.5 * f * mz);
        }
        return sum.g;
    }

    /** Adds the stiffness of the energy c (a·q)(b·q). */
    private void add(double[] a, double[] b, double c) {
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                g[N * i + j] += c * (a[i] * b[j] + b[i] * a[j]);
            }
        }
    }

    /**
     * Slope of the axis, rotation of the section and its rate in one plane of bending.
     *
     * @param at deflection and rotation at end 1, the same at end 2
     * @param sign of a rotation that goes with a rising deflection
     */
    private static void shapes(
            Beam beam, double s, double phi, int[] at, double sign, double[] slope, double[] rotation, double[] rate) {
        double l = beam.length();
        double d = 1 / (1 + phi);
        double q = s * s;
        double[] w = new double[8];
        beam.bendingShapes(s, phi, w);
        double rise = d * (6 * q - 6 * s - phi) / l;
        double[] first = {
            rise, d * (1 - 4 * s + 3 * q + phi / 2 * (1 - 2 * s)), -rise, d * (3 * q - 2 * s - phi / 2 * (1 - 2 * s))
        };
        double turn = d * 6 * (2 * s - 1) / (l * l);
        double[] second = {turn, d * (6 * s - 4 - phi) / l, -turn, d * (6 * s - 2 + phi) / l};
        for (int i = 0; i < 4; i++) {
            double flip = i % 2 == 0 ? 1 : sign;
            slope[at[i]] = flip * first[i];
            rotation[at[i]] = sign * flip * w[4 + i];
            rate[at[i]] = sign * flip * second[i];
        }
    }
}
