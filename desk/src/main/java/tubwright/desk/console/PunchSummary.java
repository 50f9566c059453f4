// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.PunchAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.safety.crush.PunchedPanel;

/** A hard body against a panel in a few lines. */
public final class PunchSummary {
    private static final int WIDTH = 78;

    private PunchSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, PunchAnswer answer) {
        List<String> lines = new ArrayList<>();
        PunchedPanel.Body body = answer.body();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.laminate())
                + String.format(
                        Locale.ROOT,
                        "  hit by %.3g kg, %s, %.0f mm wide, at %.1f m/s",
                        body.mass(),
                        body.nose().name().toLowerCase(Locale.ROOT),
                        1e3 * body.diameter(),
                        body.speed()));
        TextTable table = new TextTable(true, true, false, false);
        for (PunchedPanel.Skin skin : answer.panel().skins()) {
            table.row(
                    skin.name(),
                    String.format(Locale.ROOT, "%.2f mm", 1e3 * skin.thickness()),
                    skin.limitSpeed().isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    "just gone through at %.1f m/s",
                                    skin.limitSpeed().getAsDouble())
                            : "–",
                    skin.fastEnergy().isPresent()
                            ? String.format(
                                    Locale.ROOT, "%.0f J", skin.fastEnergy().getAsDouble())
                            : "–");
        }
        lines.addAll(table.lines(terminal));
        lines.addAll(Wrap.lines("Slowly: " + answer.word(answer.slowEnergy()) + ".", "  ", WIDTH));
        lines.addAll(Wrap.lines("Fast: " + answer.word(answer.panel().fastEnergy()) + ".", "  ", WIDTH));
        lines.addAll(Wrap.lines(answer.outcome(), "  ", WIDTH));
        answer.panel().notChecked().forEach(n -> lines.addAll(Wrap.lines(n.toString(), "  ! ", WIDTH)));
        answer.panel().validity().forEach(v -> lines.addAll(Wrap.lines(v + ".", "  - ", WIDTH)));
        lines.add("");
        lines.addAll(Wrap.lines(PunchAnswer.ASIDE, "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }
}
