// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

/**
 * Linear elastic constants of a layer in plane stress, principal axes 1 and 2 in its plane, with transverse shear.
 *
 * @param e1 modulus along 1, Pa
 * @param e2 modulus along 2, Pa
 * @param nu12 contraction along 2 per extension along 1 under load along 1; nu21 = nu12·e2/e1
 * @param g12 in-plane shear modulus, Pa
 * @param g13 transverse shear modulus in the plane 1-3, Pa
 * @param g23 transverse shear modulus in the plane 2-3, Pa
 */
public record Elasticity(double e1, double e2, double nu12, double g12, double g13, double g23) {
    public Elasticity {
        boolean positive = e1 > 0 && e2 > 0 && g12 > 0 && g13 > 0 && g23 > 0;
        if (!positive || !Double.isFinite(e1 + e2 + g12 + g13 + g23)) {
            throw new MaterialException("moduli must be finite and greater than zero: E1 " + e1 + ", E2 " + e2
                    + ", G12 " + g12 + ", G13 " + g13 + ", G23 " + g23 + " Pa");
        }
        if (!(nu12 * nu12 < e1 / e2)) {
            throw new MaterialException("nu12 = " + nu12 + " is impossible: its square must be less than E1/E2 = "
                    + e1 / e2 + " or the material would give energy away");
        }
    }

    /** The same modulus and Poisson's ratio in every direction; G = E/(2(1+nu)). */
    public static Elasticity isotropic(double e, double nu) {
        double g = e / (2 * (1 + nu));
        return new Elasticity(e, e, nu, g, g, g);
    }

    /** Reduced stiffness Q11, Pa. */
    public double q11() {
        return e1 / (1 - nu12 * nu12 * e2 / e1);
    }

    /** Reduced stiffness Q22, Pa. */
    public double q22() {
        return e2 / (1 - nu12 * nu12 * e2 / e1);
    }

    /** Reduced stiffness Q12, Pa. */
    public double q12() {
        return nu12 * q22();
    }
}
