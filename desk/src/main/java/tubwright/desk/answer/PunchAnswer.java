// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.safety.crush.PunchedPanel;

/**
 * A hard body against a panel.
 *
 * @param tub name
 * @param variant of the tub
 * @param laminate name
 * @param body what comes
 * @param panel what the panel takes
 * @param stamp time
 * @param version of the program
 */
public record PunchAnswer(
        String tub,
        String variant,
        String laminate,
        PunchedPanel.Body body,
        PunchedPanel panel,
        String stamp,
        String version) {
    /** How to read it. */
    public static final String ASIDE =
            "Estimates of energy for comparing panels and planning tests: no leave to rely on a panel. What stands between a"
                    + " person and what may come through is tested, and the sanctioning body decides.";

    /** J to get through slowly; empty where something is not known. */
    public OptionalDouble slowEnergy() {
        return panel.slow().notChecked().isEmpty()
                ? OptionalDouble.of(panel.slow().energy())
                : OptionalDouble.empty();
    }

    /** The lower of the two estimates, which counts, J; empty where one of them is not known. */
    public OptionalDouble countedEnergy() {
        OptionalDouble slow = slowEnergy();
        OptionalDouble fast = panel.fastEnergy();
        return slow.isPresent() && fast.isPresent()
                ? OptionalDouble.of(Math.min(slow.getAsDouble(), fast.getAsDouble()))
                : OptionalDouble.empty();
    }

    /** What comes of both estimates, in a sentence. */
    public String outcome() {
        if (countedEnergy().isEmpty()) {
            return "One estimate is missing, so it is not said whether the body gets through.";
        }
        boolean through = body.energy() >= countedEnergy().getAsDouble();
        boolean both = through
                == body.energy()
                        >= Math.max(
                                slowEnergy().getAsDouble(), panel.fastEnergy().getAsDouble());
        return (both ? "Both estimates say so: " : "The estimates differ, and the lower one counts: ")
                + (through ? "reckon with the body coming through." : "the body is not expected to come through.");
    }

    /** What an estimate says of the body, in words. */
    public String word(OptionalDouble energy) {
        if (energy.isEmpty()) {
            return "not checked";
        }
        double share = body.energy() / energy.getAsDouble();
        return String.format(
                Locale.ROOT,
                "%.0f J; the body brings %.0f J, %.2f of it: by this estimate it %s",
                energy.getAsDouble(),
                body.energy(),
                share,
                share < 1 ? "does not get through" : "gets through");
    }
}
