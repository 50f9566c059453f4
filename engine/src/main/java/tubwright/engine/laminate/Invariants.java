// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Elasticity;

/**
 * The material invariants U1 to U5 of a layer, Pa (Tsai and Pagano 1968; Jones 1999, eq. 2.93).
 *
 * @param u1 isotropic part of Q11 and Q22
 * @param u2 amplitude with cos 2θ
 * @param u3 amplitude with cos 4θ
 * @param u4 isotropic part of Q12
 * @param u5 isotropic part of Q66
 */
public record Invariants(double u1, double u2, double u3, double u4, double u5) {
    /** Of a material. */
    public static Invariants of(Elasticity e) {
        double q11 = e.q11();
        double q22 = e.q22();
        double q12 = e.q12();
        double q66 = e.g12();
        return new Invariants(
                (3 * (q11 + q22) + 2 * q12 + 4 * q66) / 8,
                (q11 - q22) / 2,
                (q11 + q22 - 2 * q12 - 4 * q66) / 8,
                (q11 + q22 + 6 * q12 - 4 * q66) / 8,
                (q11 + q22 - 2 * q12 + 4 * q66) / 8);
    }

    /** Trace of the plane-stress stiffness, Q11 + Q22 + 2 Q66 (Tsai and Melo 2014), Pa. */
    public double trace() {
        return 2 * (u1 + u5);
    }
}
