// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.StabilityWords;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;

/** Buckling and natural frequencies on the console. */
final class StabilitySummary {
    private static final int CASES = 12;
    private static final int MODES = 6;
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private StabilitySummary() {}

    static List<String> lines(Terminal terminal, Stability stability) {
        List<String> lines = new ArrayList<>();
        if (!stability.buckling().isEmpty()) {
            lines.add("");
            lines.add("Buckling (lowest factor on the loads of the case)");
            TextTable table = new TextTable(true, true, true);
            for (CaseBuckling each : stability
                    .buckling()
                    .subList(0, Math.min(CASES, stability.buckling().size()))) {
                table.row(
                        each.load(),
                        StabilityWords.factor(each, GAP),
                        each.lowest().map(StabilityWords::where).orElse(""));
            }
            lines.addAll(table.lines(terminal));
            quiet(terminal, StabilityWords.BUCKLING + " " + StabilityWords.COUNTED, lines);
        }
        stability.free().ifPresent(v -> vibrations(terminal, "free in space", v, lines));
        stability.held().ifPresent(v -> vibrations(terminal, "held", v, lines));
        if (stability.free().isPresent()) {
            quiet(terminal, StabilityWords.VIBRATION, lines);
        }
        return lines;
    }

    private static void vibrations(Terminal terminal, String how, Vibrations vibrations, List<String> lines) {
        lines.add("");
        lines.add("Natural frequencies, " + how);
        TextTable table = new TextTable(true, true);
        for (Mode.Motion motion : StabilityWords.motions()) {
            table.row("first " + motion.words(), StabilityWords.first(vibrations, motion, GAP));
        }
        List<Mode> elastic = vibrations.modes().elastic();
        for (Mode mode : elastic.subList(0, Math.min(MODES, elastic.size()))) {
            table.row("  " + mode.name(), significant(mode.frequency(), 4, GAP) + " Hz");
        }
        lines.addAll(table.lines(terminal));
        quiet(terminal, StabilityWords.counted(vibrations, GAP), lines);
    }

    private static void quiet(Terminal terminal, String text, List<String> lines) {
        for (String line : Wrap.lines(text, "  ", WIDTH)) {
            lines.add(terminal.look(Terminal.Look.QUIET, line));
        }
    }
}
