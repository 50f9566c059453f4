// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * Local failure of a sandwich with thin faces: closed formulas after Sullins, Smith and Spier (NASA CR-1457, 1969),
 * MIL-HDBK-23A and Allen (1969), constants from memory. Stresses in a face, Pa; compression positive.
 *
 * <p>Wrinkling is given with a constant because theory and tests part: use the design constant for a reserve, show the
 * theory's beside it. For a honeycomb of unknown ribbon direction take the lower (W) shear modulus.
 *
 * @param faceModulus Young's modulus of the face along the load, Pa
 * @param facePoisson Poisson's ratio of the face
 * @param faceThickness thickness of one face, both alike, m
 * @param coreModulus modulus of the core through its thickness, Pa
 * @param coreShearModulus transverse shear modulus of the core in the direction of the load, Pa
 * @param coreThickness m
 */
public record SandwichFailure(
        double faceModulus,
        double facePoisson,
        double faceThickness,
        double coreModulus,
        double coreShearModulus,
        double coreThickness) {

    /** Lower bound of tests, solid (isotropic) thick core. */
    public static final double DESIGN_SOLID = 0.50;

    /** Symmetric theory of Hoff and Mautner (1945), solid thick core. */
    public static final double THEORY_SOLID = 0.91;

    /** Lower bound of tests, honeycomb. */
    public static final double DESIGN_HONEYCOMB = 0.33;

    /** Theory, honeycomb: √(2/3) rounded. */
    public static final double THEORY_HONEYCOMB = 0.82;

    public SandwichFailure {
        boolean positive =
                faceModulus > 0 && faceThickness > 0 && coreModulus > 0 && coreShearModulus > 0 && coreThickness > 0;
        if (!positive || !(Math.abs(facePoisson) < 1)) {
            throw new IllegalArgumentException("moduli and thicknesses of a sandwich must be greater than zero");
        }
    }

    /** Distance between the middles of the faces, m. */
    public double armOfFaces() {
        return coreThickness + faceThickness;
    }

    /** Face stress at wrinkling on a solid core thicker than {@link #thickCoreLimit()}: Q (Ef Ec Gc)^(1/3). */
    public double wrinklingOnSolidCore(double q) {
        return q * Math.cbrt(faceModulus * coreModulus * coreShearModulus);
    }

    /** Core thickness above which wrinkling on a solid core does not depend on it, m. */
    public double thickCoreLimit() {
        return 1.82 * faceThickness * Math.cbrt(faceModulus * coreModulus / (coreShearModulus * coreShearModulus));
    }

    /** Face stress at wrinkling on a honeycomb: k Ef √(Ec tf/(Ef tc)). */
    public double wrinklingOnHoneycomb(double k) {
        return k * faceModulus * Math.sqrt(coreModulus * faceThickness / (faceModulus * coreThickness));
    }

    /**
     * Face stress at which a face that is wavy from the start breaks core or bond flatwise.
     *
     * @param waviness amplitude of the face's waves, m
     * @param flatwiseStrength lower of the core's and the bond's strength through the thickness, Pa
     */
    public double wrinklingWithWaviness(double waviness, double flatwiseStrength) {
        return wrinklingOnHoneycomb(THEORY_HONEYCOMB)
                / (1 + 0.64 * waviness * coreModulus / (coreThickness * flatwiseStrength));
    }

    /** Face stress at which the face buckles into the honeycomb's cells, cell size across the flats in m. */
    public double dimpling(double cellSize) {
        double ratio = faceThickness / cellSize;
        return 2 * faceModulus / (1 - facePoisson * facePoisson) * ratio * ratio;
    }

    /** Face shear stress at which the face buckles into the cells. */
    public double dimplingInShear(double cellSize) {
        return 0.6 * faceModulus * Math.pow(faceThickness / cellSize, 1.5);
    }

    /** Compressive force per width at which the core shears and the panel crimps, N/m: G d²/tc. */
    public double crimpingForce() {
        return coreShearModulus * armOfFaces() * armOfFaces() / coreThickness;
    }

    /**
     * Stress on the core from the curvature of stressed faces, Pa: σf tf/R of a curved panel, and in a flat one bent to
     * face stress σf the same with R = Ef d/(2σf).
     *
     * @param faceStress Pa
     * @param radius of the panel before loading, m; infinite if flat
     */
    public double crushingByCurvature(double faceStress, double radius) {
        double bent = 2 * faceStress / (faceModulus * armOfFaces());
        return faceStress * faceThickness * (Double.isInfinite(radius) ? bent : 1 / radius);
    }

    /** Exposure under compression in two directions, each exposure by its own formula, the larger first: (a³ + b³)^(1/3). */
    public static double inTwoDirections(double a, double b) {
        return Math.cbrt(a * a * a + b * b * b);
    }
}
