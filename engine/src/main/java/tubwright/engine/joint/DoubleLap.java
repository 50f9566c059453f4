// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Strength of a double lap whose adhesive yields (Hart-Smith 1973, NASA CR-112235): elastic up to τp, then plastic up to
 * the strain at failure.
 *
 * <p>From ½ γ'² = (λ²/G) ∫τ dγ with the slope of γ at each end given by the strain of the sheet that goes on there. Thermal
 * mismatch is not in it.
 *
 * @param outer either outer sheet
 * @param inner the sheet between
 * @param thickness of each bond line η, m
 * @param strength plastic shear stress τp, Pa
 * @param elasticStrain γe = τp/G
 * @param plasticStrain γp, beyond the elastic
 */
public record DoubleLap(
        Adherend outer, Adherend inner, double thickness, double strength, double elasticStrain, double plasticStrain) {

    /** Load per width the end where the inner sheet goes on can bear, N/m. */
    public double strengthAtInnerEnd() {
        return atInnerEnd(plasticStrain);
    }

    /** Load per width the end where the outer sheets go on can bear, N/m. */
    public double strengthAtOuterEnd() {
        return atOuterEnd(plasticStrain);
    }

    /** The lower of both: load per width at which a long overlap fails, N/m. */
    public double strengthPerWidth() {
        return Math.min(strengthAtInnerEnd(), strengthAtOuterEnd());
    }

    /** The same where no plastic strain is allowed, N/m. */
    public double elasticStrengthPerWidth() {
        return Math.min(atInnerEnd(0), atOuterEnd(0));
    }

    /** λ, 1/m: elastic shear dies out over 1/λ from the ends. */
    public double decay() {
        double g = strength / elasticStrain;
        return Math.sqrt(g / thickness * (1 / outer.stiffness() + 2 / inner.stiffness()));
    }

    /**
     * Overlap that carries a load in plastic ends with an elastic trough between, P/(2 τp) + 2/λ, m (Hart-Smith 1973).
     *
     * @param loadPerWidth P, N/m: the greatest load of the sheets, so that they fail before the bond
     */
    public double designOverlap(double loadPerWidth) {
        return loadPerWidth / (2 * strength) + 2 / decay();
    }

    private double atInnerEnd(double plastic) {
        double ei = inner.stiffness();
        return Math.sqrt(energy(plastic) * 2 * ei * (1 + ei / (2 * outer.stiffness())));
    }

    private double atOuterEnd(double plastic) {
        double eo = outer.stiffness();
        return Math.sqrt(energy(plastic) * 4 * eo * (1 + 2 * eo / inner.stiffness()));
    }

    private double energy(double plastic) {
        return 2 * thickness * strength * (elasticStrain / 2 + plastic);
    }
}
