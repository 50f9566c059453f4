// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tubwright.desk.answer.RulesAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.safety.rules.Finding;

/** A tub held against rules, in a few lines. */
public final class RulesSummary {
    private static final int WIDTH = 78;

    private RulesSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, RulesAnswer answer) {
        List<String> lines = new ArrayList<>();
        for (RulesAnswer.Held held : answer.sets()) {
            lines.add("");
            lines.add(terminal.look(Look.STRONG, held.set().name()) + "  "
                    + held.set().source());
            lines.add("  " + held.count());
            for (Finding f : held.findings()) {
                lines.add("");
                lines.addAll(Wrap.lines(
                        f.clause().number() + "  " + f.clause().says() + " ["
                                + f.clause().provenance().trust().mark() + "]",
                        "  ",
                        WIDTH));
                String reserve =
                        Double.isFinite(f.reserve()) ? String.format(Locale.ROOT, ", reserve %.2f", f.reserve()) : "";
                if (!f.found().isEmpty()) {
                    lines.addAll(Wrap.lines(f.found() + reserve, "      ", WIDTH));
                }
                List<String> verdict = Wrap.lines(RulesAnswer.comesTo(f), "    = ", WIDTH);
                verdict.forEach(
                        v -> lines.add(f.verdict() == Finding.Verdict.NOT_MET ? terminal.look(Look.BAD, v) : v));
            }
            if (!held.panels().isEmpty()) {
                lines.add("");
                lines.add("  Test panels, 275 mm wide on 400 mm, foretold");
                held.panels()
                        .forEach(p -> lines.addAll(Wrap.lines(p.laminate() + ": " + p.words() + ".", "    ", WIDTH)));
            }
        }
        lines.add("");
        lines.addAll(Wrap.lines(RulesAnswer.ASIDE, "  ", WIDTH));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }
}
