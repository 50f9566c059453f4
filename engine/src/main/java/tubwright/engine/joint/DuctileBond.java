// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * What a bond whose adhesive yields carries per length, pulled across the line or sheared along it (energy of Hart-Smith
 * 1973, NASA CR-112235, applied to the arrangement at hand; bending is not in it).
 *
 * <p>A single lap is half of a double lap whose inner sheet is twice as thick: from ½ γ'² = (λ²/G) ∫τ dγ at either end. No
 * overlap carries more than τp over its whole area. Flow along the line obeys the same law with G t for E t.
 *
 * @param across pull, N/m
 * @param along shear flow, N/m
 * @param decay λ, 1/m
 * @param strength τp, Pa
 * @param faces bonded faces that share the load
 */
public record DuctileBond(double across, double along, double decay, double strength, int faces) {

    /**
     * Of an arrangement.
     *
     * @param lie single lap, double lap (one between two of sheet two) or tee (legs of sheet one on sheet two)
     * @param strength plastic shear stress τp, Pa
     * @param elasticStrain τp/G
     * @param plasticStrain beyond it
     */
    public static DuctileBond of(
            JointDetail.Lie lie,
            Sheet one,
            Sheet two,
            BondLine bond,
            double overlap,
            double strength,
            double elasticStrain,
            double plasticStrain) {
        double[] capacity = new double[2];
        double decay = 0;
        for (int way = 0; way < 2; way++) {
            Adherend a = way == 0 ? one.adherend() : one.inShear();
            Adherend b = way == 0 ? two.adherend() : two.inShear();
            boolean real = lie == JointDetail.Lie.DOUBLE_LAP;
            Adherend inner = real ? a : new Adherend(2 * a.thickness(), a.modulus(), a.poisson());
            DoubleLap lap = new DoubleLap(b, inner, bond.thickness(), strength, elasticStrain, plasticStrain);
            double halves = lie == JointDetail.Lie.SINGLE_LAP ? 0.5 : 1;
            capacity[way] = Math.min(halves * lap.strengthPerWidth(), strength * overlap * lie.faces());
            decay = way == 0 ? lap.decay() : decay;
        }
        return new DuctileBond(capacity[0], capacity[1], decay, strength, lie.faces());
    }

    /** Share of the strength used: the squares of both ways add up. */
    public double used(LineLoad load) {
        return Math.hypot(load.across() / across, load.along() / along);
    }

    /** Overlap with plastic ends and an elastic trough between under a load in the surface, F/(n τp) + 2/λ, m. */
    public double sensibleOverlap(double inSurface) {
        return inSurface / (faces * strength) + 2 / decay;
    }
}
