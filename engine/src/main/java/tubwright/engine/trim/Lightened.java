// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * The lightest layup found, and the mass below which none exists.
 *
 * @param layup what to build
 * @param mass of the whole tub with it, kg
 * @param stiffness bounds for each target: N·m/rad or N/m between loaded and held hardpoints
 * @param bound no choice among the candidates that meets the targets is lighter, kg
 * @param removable nominal mass less that of the lightest candidates everywhere, kg: what was there to be taken
 * @param solves exact solutions of layups
 * @param harvests solutions of mixtures of layups, for the bound
 * @param history best mass and bound as they came
 */
public record Lightened(
        Layup layup,
        double mass,
        List<Interval> stiffness,
        double bound,
        double removable,
        int solves,
        int harvests,
        List<Step> history) {
    public Lightened {
        stiffness = List.copyOf(stiffness);
        history = List.copyOf(history);
    }

    /**
     * One step on the way.
     *
     * @param seconds since the beginning
     * @param mass best so far, kg
     * @param bound best so far, kg
     */
    public record Step(double seconds, double mass, double bound) {}

    /** How much of the mass may still be too much, as a share of it. */
    public double gap() {
        return (mass - bound) / mass;
    }
}
