// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * Weight back: one candidate for each zone, patch and joint so that every stiffness target is met and the tub is
 * lightest, with a proved bound.
 *
 * <p>Down from above: with the stresses N of a design's exact solution, c(λ) ≤ Σ λ tr(C_k⁻¹ H), H = Σ w NNᵀ, is linear in
 * the choice and sufficient, so the least mass under that row meets the target again and is never heavier; repeated
 * until nothing changes, then in widening surroundings of the best design. Up from below: any field v gives vᵀK(λ)v ≥
 * (fᵀv)²/c_target for every choice that meets the target (Cauchy and Schwarz in the energy product); least mass under
 * such cuts is the bound, first over mixtures of candidates, then by branch and bound with new cuts at its nodes.
 */
public final class Lighten {
    private Lighten() {}

    /**
     * A stiffness to be reached.
     *
     * @param tub solved under the case it is about, one of the problem's
     * @param stiffness at least this: N·m/rad or N/m between loaded and held hardpoints
     */
    public record Target(LoadedTub tub, double stiffness) {
        double compliance() {
            return tub.stiffness(stiffness);
        }
    }

    /**
     * What may be spent. The answer depends on solutions and nodes alone as long as the time does not run out.
     *
     * @param solves exact solutions of layups
     * @param nodes of the branch and bound
     * @param seconds of wall time
     * @param gap at which it is enough, share of the mass
     */
    public record Budget(int solves, int nodes, double seconds, double gap) {
        /** Forty solutions; then until the time is up. */
        public static Budget ofSeconds(double seconds) {
            return new Budget(40, Integer.MAX_VALUE, seconds, 0);
        }
    }

    /** Hears how it goes, and may stop it; the best found so far is then the answer, with its bound. */
    public interface Listener {
        /** Nobody. */
        Listener NONE = new Listener() {};

        /** What is being done, in words. */
        default void stage(String words) {}

        /** A better mass or bound. */
        default void step(Lightened.Step step) {}

        /** Whether to end now. */
        default boolean stop() {
            return false;
        }
    }

    /**
     * Finds the lightest layup.
     *
     * @param problem what may be chosen; keeps the fields solved here for the next search
     * @param targets stiffness to be reached, at least one
     * @param budget what may be spent
     * @param listener hears of it
     * @throws OutOfReach where no choice found meets the targets
     */
    public static Lightened run(LightenProblem problem, List<Target> targets, Budget budget, Listener listener) {
        return run(problem, targets, _ -> List.of(), budget, listener);
    }

    /**
     * The same with demands that are verified on what is found. The bound counts the stiffness targets alone, so it holds
     * with the demands too.
     *
     * @param check asked about designs that meet the targets
     */
    public static Lightened run(
            LightenProblem problem, List<Target> targets, LayupCheck check, Budget budget, Listener listener) {
        return new LightenRun(problem, targets, check, budget, listener).run();
    }
}
