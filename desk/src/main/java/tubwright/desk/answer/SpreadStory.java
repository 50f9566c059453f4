// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Locale;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.safety.spread.SpreadAnswer;

/**
 * A load followed until little is left, with what a reader wants to know of it.
 *
 * @param tub name
 * @param variant of it
 * @param what is loaded, and how, in words
 * @param panel whether it is a panel by itself; else it is a place on the tub
 * @param force of the load for a factor of one, N (N·m of a couple)
 * @param couple whether the load is a couple
 * @param path what was found
 * @param mesh of which some shells may fail
 * @param elements these, rising
 * @param unknowns of what was solved
 * @param asides what stays elastic or was assumed, in words
 * @param stamp time
 * @param version of the program
 */
public record SpreadStory(
        String tub,
        String variant,
        String what,
        boolean panel,
        double force,
        boolean couple,
        SpreadAnswer path,
        Mesh mesh,
        int[] elements,
        int unknowns,
        List<String> asides,
        String stamp,
        String version) {
    /** How to read it. */
    public static final String ASIDE =
            "Small displacements and slow load: nothing buckles or wrinkles here, nothing is dynamic, cure stress is left out,"
                    + " unloading goes straight back to nought. What comes after the peak depends on fracture energies more than"
                    + " on anything; few of them are known well. It shows in what order things fail and whether they hold on; it"
                    + " does not replace a test.";

    public SpreadStory {
        asides = List.copyOf(asides);
    }

    /** Load of a step, N or N·m. */
    public double load(SpreadAnswer.Step step) {
        return force * step.factor();
    }

    /** How far the load has moved on its own way, m or rad: its work over the load. */
    public double movement(SpreadAnswer.Step step) {
        return step.movement() / force;
    }

    /** Of an event. */
    public double movement(SpreadAnswer.Event event) {
        return event.movement() / force;
    }

    /** Steps that were not balanced as closely as asked. */
    public long unsettled() {
        return path.steps().stream().filter(s -> !s.settled()).count();
    }

    /** In one sentence: how well the steps are in balance. */
    public String convergence() {
        double worst = path.steps().stream()
                .mapToDouble(SpreadAnswer.Step::imbalance)
                .max()
                .orElse(0);
        int rounds = path.steps().stream().mapToInt(SpreadAnswer.Step::rounds).sum();
        return String.format(
                Locale.ROOT,
                "%d steps, %d solutions; forces out of balance at most %.2g of the load; %s. Energy by the laws of what failed"
                        + " and by the work of the load differ by %.1f %%.",
                path.steps().size() - 1,
                rounds,
                worst,
                unsettled() == 0 ? "every step settled" : unsettled() + " steps did not settle",
                100 * path.energyGap());
    }
}
