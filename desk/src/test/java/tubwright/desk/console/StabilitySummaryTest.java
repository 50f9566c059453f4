// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.io.PrintStream;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.Mode.Motion;
import tubwright.engine.structure.Modes;
import tubwright.engine.structure.Part;
import tubwright.numerics.eigen.InertiaCount;

/** Buckling and frequencies are told so that nothing missing passes for something found. */
class StabilitySummaryTest {
    private static final InertiaCount ONE = new InertiaCount(3.5, 1, 1);

    private static CaseBuckling bump() {
        Buckle mode = new Buckle(
                2.345,
                Part.Kind.ZONE,
                "cockpit rim",
                0.84,
                "deck",
                0.9,
                new double[] {1.2, 0.2, 0.5},
                new double[0],
                1e-14);
        return new CaseBuckling("bump", true, List.of(mode), ONE, 0.12, "");
    }

    private static CaseBuckling without(String load, String note) {
        return new CaseBuckling(load, true, List.of(), new InertiaCount(0, 0, 0), Double.NaN, note);
    }

    private static Vibrations vibrations() {
        Mode bending = new Mode(
                61.2,
                new double[0],
                new double[6],
                Motion.VERTICAL,
                "first vertical bending",
                Map.of(Motion.VERTICAL, 0.9),
                "floor",
                1e-14);
        double bound = Math.pow(2 * Math.PI * 80, 2);
        Map<Motion, Double> errors = new EnumMap<>(Motion.class);
        errors.put(Motion.VERTICAL, 0.5);
        return new Vibrations(new Modes(List.of(bending), 18, new InertiaCount(bound, 1, 1)), errors);
    }

    private static List<String> lines(Stability stability) {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream());
        Terminal terminal = new Terminal(nowhere, nowhere, false, false, true);
        return StabilitySummary.lines(terminal, stability);
    }

    @Test
    void everyCaseSaysWhatBucklesOrThatNothingDoesOrWhyItIsNotKnown() {
        Stability stability = new Stability(
                List.of(bump(), without("towing", ""), without("kerb", "not computed: stalled")),
                Optional.empty(),
                Optional.empty());
        String text = String.join("\n", lines(stability));
        assertTrue(text.contains("cockpit rim (deck), 84 %"), text);
        assertTrue(text.matches("(?s).*bump +2\\.35 ± 0\\.12.*"), text);
        assertTrue(text.matches("(?s).*towing +does not buckle.*"), text);
        assertTrue(text.matches("(?s).*kerb +not computed: stalled.*"), text);
        assertEquals("bump", stability.first().orElseThrow().load());
    }

    @Test
    void aMotionBeyondTheModesComputedIsToldByItsBound() {
        Stability stability = new Stability(List.of(), Optional.of(vibrations()), Optional.empty());
        List<String> lines = lines(stability);
        String text = String.join("\n", lines);
        assertTrue(text.matches("(?s).*first vertical bending +61\\.20 ± 0\\.50 Hz.*"), text);
        assertTrue(text.contains("above 80.0 Hz, not among the modes computed"), text);
        assertTrue(lines.stream().allMatch(l -> l.length() <= 80));
    }

    @Test
    void nothingAskedIsNothingSaid() {
        assertTrue(lines(Stability.NONE).isEmpty());
    }
}
