// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.engine.safety.crush.CrushChain;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushSection;
import tubwright.engine.safety.crush.CrushStructure;

/** Crush structures in sentences, for console, page and dossier alike. */
public final class CrushWords {
    private CrushWords() {}

    /** What comes: "465 kg at 7.0 m/s from the front, 11.4 kJ". */
    public static String impact(CrushStructure structure) {
        return String.format(
                Locale.ROOT,
                "%.0f kg at %.1f m/s from the %s, %.1f kJ",
                structure.impact().mass(),
                structure.impact().speed(),
                structure.hit().name().toLowerCase(Locale.ROOT),
                1e-3 * structure.impact().energy());
    }

    /** What came out: stroke, time, mean and peak. */
    public static String outcome(CrushRun.Answer a) {
        double m = a.impact().mass();
        return String.format(
                Locale.ROOT,
                "%s after %.0f mm and %.0f ms; mean %.1f kN (%.1f g), peak %.1f kN (%.1f g), mean over peak %.2f",
                a.speedLeft() > 0 ? String.format(Locale.ROOT, "used up with %.1f m/s left", a.speedLeft()) : "stops",
                1e3 * a.stroke(),
                1e3 * a.time(),
                1e-3 * a.meanForce(),
                a.meanForce() / m / CrushRun.GRAVITY,
                1e-3 * a.peakForce(),
                a.peakForce() / m / CrushRun.GRAVITY,
                a.efficiency());
    }

    /** Whether what hangs behind the cell stays there. */
    public static List<String> apart(CrushStructure structure, CrushChain.Answer answer) {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < structure.parts().size(); i++) {
            CrushChain.Body part = structure.parts().get(i);
            double peak = answer.peakTies()[i];
            lines.add(answer.parted(part.name())
                    .map(p -> String.format(
                            Locale.ROOT,
                            "%s breaks off after %.1f ms (its tie bears %.1f kN) and goes on at %.1f m/s: where it goes is not"
                                    + " computed.",
                            part.name(),
                            1e3 * p.time(),
                            1e-3 * part.strength(),
                            p.speed()))
                    .orElseGet(() -> String.format(
                            Locale.ROOT,
                            "%s stays: its tie feels at most %.1f kN and bears %.1f kN (twice the steady force, since it"
                                    + " swings).",
                            part.name(),
                            1e-3 * peak,
                            1e-3 * part.strength())));
        }
        lines.add(String.format(
                Locale.ROOT,
                "So the stroke is %.0f mm%s.",
                1e3 * answer.stroke(),
                answer.solid() ? ", all there is" : ""));
        return lines;
    }

    /** How a section crushes and where that comes from. */
    public static String section(CrushSection s) {
        boolean stress = s.data().measure() == tubwright.engine.safety.crush.CrushData.Measure.STRESS;
        return s.data().name() + ": "
                + (stress
                        ? fixed(1e-6 * s.data().value(), 2, " ") + " MPa crush stress"
                        : fixed(1e-3 * s.data().value(), 1, " ") + " kJ/kg")
                + (s.data().dynamicOverStatic().isPresent()
                        ? ", times " + fixed(s.data().dynamicOverStatic().getAsDouble(), 2, " ") + " at speed"
                        : ", factor at speed not known")
                + "; " + s.data().provenance();
    }
}
