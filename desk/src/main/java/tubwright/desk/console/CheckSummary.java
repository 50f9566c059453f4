// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.CheckAnswer;
import tubwright.desk.console.Terminal.Look;

/** A design in words. */
public final class CheckSummary {
    private static final int WIDTH = 78;
    private static final int CODE = 34;

    private CheckSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, CheckAnswer answer) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, answer.tub()));
        for (String fact : answer.facts()) {
            lines.addAll(Wrap.lines(fact, "  ", WIDTH));
        }
        for (CheckAnswer.Variant variant : answer.variants()) {
            lines.add("");
            lines.add(terminal.look(Look.STRONG, variant.name()) + ", " + variant.construction());
            TextTable zones = new TextTable(true, true, false, false, false);
            zones.row("zone", "layup", "m²", "mm", "g/m²");
            double area = 0;
            for (CheckAnswer.Zone zone : variant.zones()) {
                if (!zone.patch()) {
                    area += zone.area();
                    row(zones, zone, zone.name());
                }
            }
            zones.row("all zones", "", fixed(area, 3, " "), "", "");
            variant.zones().stream().filter(CheckAnswer.Zone::patch).forEach(z -> row(zones, z, "+ " + z.name()));
            lines.addAll(zones.lines(terminal));
            lines.add("");
            TextTable pieces = new TextTable(true, false);
            pieces.row("piece", "kg");
            variant.pieces().forEach(p -> pieces.row(p.name(), significant(p.mass(), 3, " ")));
            pieces.row("whole tub", significant(variant.mass(), 4, " "));
            lines.addAll(pieces.lines(terminal));
        }
        lines.add("");
        if (answer.warnings().isEmpty()) {
            lines.add("  No warnings.");
        }
        for (String warning : answer.warnings()) {
            for (String line : Wrap.lines(warning, "  ! ", WIDTH)) {
                lines.add(terminal.look(Look.CAREFUL, line));
            }
        }
        return lines;
    }

    private static void row(TextTable table, CheckAnswer.Zone zone, String name) {
        table.row(
                name,
                zone.code().length() > CODE ? zone.code().substring(0, CODE - 1) + "…" : zone.code(),
                fixed(zone.area(), 3, " "),
                fixed(1000 * zone.thickness(), 2, " "),
                fixed(1000 * zone.arealMass(), 0, " "));
    }
}
