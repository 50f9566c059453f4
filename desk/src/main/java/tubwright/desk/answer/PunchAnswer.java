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
