// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Elasticity;

/** Stiffness of one layer in laminate axes. */
final class PlaneStress {
    private PlaneStress() {}

    /**
     * Transformed reduced stiffness (Q11, Q12, Q16, Q22, Q26, Q66) in laminate axes, Pa, by the invariants of Tsai and
     * Pagano (1968).
     */
    static double[] transformed(Elasticity e, double angle) {
        Invariants u = Invariants.of(e);
        double c2 = Math.cos(2 * angle);
        double s2 = Math.sin(2 * angle);
        double c4 = c2 * c2 - s2 * s2;
        double s4 = 2 * c2 * s2;
        return new double[] {
            u.u1() + u.u2() * c2 + u.u3() * c4,
            u.u4() - u.u3() * c4,
            0.5 * u.u2() * s2 + u.u3() * s4,
            u.u1() - u.u2() * c2 + u.u3() * c4,
            0.5 * u.u2() * s2 - u.u3() * s4,
            u.u5() - u.u3() * c4
        };
    }

    /** Transverse shear compliance (xz-xz, xz-yz, yz-yz) in laminate axes, 1/Pa. */
    static double[] shearCompliance(Elasticity e, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double f13 = 1 / e.g13();
        double f23 = 1 / e.g23();
        return new double[] {c * c * f13 + s * s * f23, c * s * (f13 - f23), s * s * f13 + c * c * f23};
    }

    /** Product of a transformed stiffness with a strain (εx, εy, γxy). */
    static double[] times(double[] q, double[] strain) {
        return new double[] {
            q[0] * strain[0] + q[1] * strain[1] + q[2] * strain[2],
            q[1] * strain[0] + q[3] * strain[1] + q[4] * strain[2],
            q[2] * strain[0] + q[4] * strain[1] + q[5] * strain[2]
        };
    }

    /** Strain in laminate axes turned into the axes of a layer at this angle (engineering shear). */
    static double[] strainInLayerAxes(double[] strain, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new double[] {
            c * c * strain[0] + s * s * strain[1] + c * s * strain[2],
            s * s * strain[0] + c * c * strain[1] - c * s * strain[2],
            2 * c * s * (strain[1] - strain[0]) + (c * c - s * s) * strain[2]
        };
    }

    /** Stress in laminate axes turned into the axes of a layer at this angle. */
    static double[] stressInLayerAxes(double[] stress, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new double[] {
            c * c * stress[0] + s * s * stress[1] + 2 * c * s * stress[2],
            s * s * stress[0] + c * c * stress[1] - 2 * c * s * stress[2],
            c * s * (stress[1] - stress[0]) + (c * c - s * s) * stress[2]
        };
    }

    /** Free strain along 1 and 2 of a layer, in laminate axes (engineering shear). */
    static double[] freeStrain(double along1, double along2, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return new double[] {
            c * c * along1 + s * s * along2, s * s * along1 + c * c * along2, 2 * c * s * (along1 - along2)
        };
    }
}
