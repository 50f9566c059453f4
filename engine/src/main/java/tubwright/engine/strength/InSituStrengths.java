// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import tubwright.engine.material.Elasticity;

/**
 * Strengths of a ply held between neighbours, where a crack needs more energy than strength (Camanho, Dávila, Pinho,
 * Iannucci and Robinson 2006, Composites A 37, 165).
 *
 * @param transverseTension YT in situ, Pa
 * @param shear S12 in situ, Pa
 */
public record InSituStrengths(double transverseTension, double shear) {

    /** Where the ply lies. */
    public enum Position {
        /** Between plies of other directions, thin against the crack. */
        THIN_EMBEDDED,
        /** At a free surface of the laminate. */
        OUTER,
        /** Between other plies, so thick that its neighbours hardly matter. */
        THICK_EMBEDDED
    }

    /**
     * What the formulas need beside elasticity.
     *
     * @param modeI toughness GIc, J/m²
     * @param modeII toughness GIIc, J/m²
     * @param shearNonlinearity β of γ = τ/G + β τ³, 1/Pa³; 0 for linear shear
     * @param transverseTension YT of the free unidirectional ply, Pa
     * @param shear S12 of the free ply, Pa
     */
    public record Toughness(
            double modeI, double modeII, double shearNonlinearity, double transverseTension, double shear) {}

    /**
     * By closed form.
     *
     * @param thickness of the ply or of a block of plies of one direction, m
     */
    public static InSituStrengths of(Elasticity e, Toughness g, double thickness, Position position) {
        double nu21 = e.nu12() * e.e2() / e.e1();
        double crack = 2 * (1 / e.e2() - nu21 * nu21 / e.e1());
        double base = g.modeI() / (Math.PI * thickness * crack);
        double yt = switch (position) {
            case THIN_EMBEDDED -> Math.sqrt(8 * base);
            case OUTER -> 1.79 * Math.sqrt(base);
            case THICK_EMBEDDED -> 1.12 * Math.sqrt(2) * g.transverseTension();
        };
        double s = g.shear();
        double phi = switch (position) {
            case THIN_EMBEDDED -> 48 * g.modeII() / (Math.PI * thickness);
            case OUTER -> 24 * g.modeII() / (Math.PI * thickness);
            case THICK_EMBEDDED -> 12 * s * s / e.g12() + 18 * g.shearNonlinearity() * s * s * s * s;
        };
        return new InSituStrengths(yt, shear(phi, g.shearNonlinearity(), e.g12()));
    }

    /** √{[√(1 + β φ G²) − 1]/(3 β G)}, written so that β may be zero. */
    private static double shear(double phi, double beta, double g) {
        return Math.sqrt(phi * g / (3 * (Math.sqrt(1 + beta * phi * g * g) + 1)));
    }
}
