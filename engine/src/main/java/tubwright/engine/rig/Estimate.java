// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import tubwright.engine.rig.statistics.Uncertainty;

/**
 * A torsional stiffness with what its uncertainty is made of.
 *
 * @param stiffness N·m/rad
 * @param standardError of the straight line alone, N·m/rad
 * @param rSquared of the straight line
 * @param steps load steps used
 * @param uncertainty contributions, N·m/rad
 */
public record Estimate(double stiffness, double standardError, double rSquared, int steps, Uncertainty uncertainty) {
    /** Half-width of the interval that holds the true stiffness with 95 % chance, N·m/rad. */
    public double expanded() {
        return uncertainty.expanded(0.95);
    }

    /** The estimate with the rig's flexibility taken out; every contribution grows by (K/K_measured)². */
    Estimate without(RigStiffness rig) {
        double left = rig.takenOutOf(stiffness);
        double growth = left * left / (stiffness * stiffness);
        var parts = new java.util.ArrayList<Uncertainty.Contribution>();
        uncertainty.contributions().forEach(c -> parts.add(Series.scaled(c, growth)));
        double share = left / rig.stiffness();
        parts.add(Uncertainty.Contribution.known("rig stiffness", rig.standardUncertainty() * share * share));
        return new Estimate(left, standardError * growth, rSquared, steps, new Uncertainty(parts));
    }
}
