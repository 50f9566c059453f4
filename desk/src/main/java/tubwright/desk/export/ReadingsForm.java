// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;
import tubwright.engine.rig.plan.GaugePair;
import tubwright.engine.rig.plan.TestPlan;

/** The table that a planned test fills in: what {@code rig read} takes, with the readings left blank. */
public final class ReadingsForm {
    private ReadingsForm() {}

    /** The file. */
    public static String write(TestPlan plan) {
        StringBuilder text = new StringBuilder();
        line(
                text,
                "# %s: torsion test, case %s. Fill in the readings, then: tubwright rig read DIR FILE",
                plan.tub(),
                plan.loading().name());
        line(text, "# A reading is positive when the gauge point moves up. Cycle 1 is the bed-in.");
        line(text, "test, tub only");
        line(text, "# mass, ... kg (weigh the tub, fill in, take away the #)");
        line(text, "held station, %.0f mm", 1000 * plan.heldStation());
        line(text, "loaded station, %.0f mm", 1000 * plan.pairs().get(1).station());
        line(
                text,
                "arm, %.0f mm, %.1f mm",
                1000 * plan.means().arm(),
                1000 * plan.means().armUncertainty());
        line(text, "torque uncertainty, %.2f %%", 100 * plan.means().scaleUncertainty());
        line(text, "gauge spacing uncertainty, %.1f mm", 1000 * plan.means().placeUncertainty());
        line(text, "gauge resolution, %.3f mm", 1000 * plan.means().resolution());
        StringBuilder header = new StringBuilder("cycle, load [N]");
        int blanks = 0;
        for (GaugePair pair : plan.pairs()) {
            String name = String.format(Locale.ROOT, "%.0f", 1000 * pair.station());
            for (String side : new String[] {"right", "left"}) {
                line(
                        text,
                        "gauge, %s %s, %.0f mm, z, %.0f mm, %.0f mm",
                        name,
                        side,
                        1000 * pair.station(),
                        (side.equals("right") ? 500 : -500) * pair.spacing(),
                        1000 * pair.height());
                header.append(", ").append(name).append(' ').append(side).append(" [mm]");
                blanks++;
            }
        }
        text.append(header).append(", note\n");
        double[] torques = plan.torques();
        for (int cycle = 1; cycle <= plan.means().cycles() + 1; cycle++) {
            for (int i = 0; i < 2 * torques.length - 1; i++) {
                double torque = torques[i < torques.length ? i : 2 * torques.length - 2 - i];
                text.append(String.format(
                        Locale.ROOT, "%d, %.1f", cycle, torque / plan.means().arm()));
                text.append(", ".repeat(blanks + 1).stripTrailing()).append('\n');
            }
        }
        return text.toString();
    }

    private static void line(StringBuilder text, String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
