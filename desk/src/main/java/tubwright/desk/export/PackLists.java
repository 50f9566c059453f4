// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static tubwright.desk.text.Figures.fixed;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.build.Schedule;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.ply.LaidPly;

/** The lists of the pack: comma-separated values (RFC 4180) with units in the headings, and the letter that asks for a price. */
public final class PackLists {
    private PackLists() {}

    /** A kit for each piece in the order of laying, with the place of every pattern on its roll. */
    public static String kits(PackAnswer answer) {
        return stamped(kitList(answer), answer).csv();
    }

    /** What is laid and what is bought, one tub. */
    public static String materials(PackAnswer answer) {
        return stamped(bill(answer), answer).csv();
    }

    /** Every hardpoint with its place. */
    public static String hardpoints(PackAnswer answer) {
        return stamped(holes(answer), answer).csv();
    }

    /** When what is done, with the longest path. */
    public static String calendar(PackAnswer answer) {
        return stamped(dates(answer), answer).csv();
    }

    /** The form in which weights, batches and deviations come back, with the plan filled in. */
    public static String form(PackAnswer answer) {
        return stamped(BuiltForm.of(answer), answer).csv();
    }

    /** All lists in one workbook. */
    public static byte[] workbook(PackAnswer answer) throws IOException {
        return ListBook.write(
                List.of(bill(answer), kitList(answer), holes(answer), dates(answer), BuiltForm.of(answer)),
                answer.foot());
    }

    /** Every row says which issue of which design it is of, so that a list keeps it wherever it is copied to. */
    static ListTable stamped(ListTable table, PackAnswer answer) {
        return table.with("issue", answer.issue()).with("date", answer.date()).with("design", answer.fingerprint());
    }

    private static ListTable kitList(PackAnswer answer) {
        Map<String, Nest.Placement> placed = new HashMap<>();
        answer.kits().stream()
                .flatMap(k -> k.nest().stream())
                .forEach(n -> n.placements()
                        .forEach(p -> placed.put(n.pieces().get(p.piece()).label(), p)));
        List<List<String>> rows = new ArrayList<>();
        answer.byPiece()
                .values()
                .forEach(plies -> plies.forEach(p -> {
                    List<CutPiece> cut = answer.cut(p);
                    for (CutPiece each : cut) {
                        Optional<Nest.Placement> at =
                                Optional.ofNullable(placed.get(each.pattern().name()));
                        rows.add(row(
                                p,
                                each.pattern().name(),
                                each.pattern().area(),
                                at.map(a -> fixed(1e3 * a.x(), 1, "")).orElse(""),
                                at.map(a -> fixed(1e3 * a.y(), 1, "")).orElse(""),
                                at.map(a -> Integer.toString(90 * a.quarters())).orElse(""),
                                each.parts() > 1 ? "part " + each.part() + " of " + each.parts() : ""));
                    }
                    if (cut.isEmpty()) {
                        rows.add(row(p, p.ply().name(), p.figures().area(), "", "", "", "no pattern: cut to fit"));
                    }
                }));
        return new ListTable(
                "Kit list",
                List.of(
                        "piece",
                        "step",
                        "pattern",
                        "what",
                        "material",
                        "angle (deg)",
                        "area (m²)",
                        "mass (g)",
                        "roll x (mm)",
                        "roll y (mm)",
                        "turned (deg)",
                        "note"),
                rows);
    }

    private static List<String> row(
            DrapedPly of, String name, double area, String x, String y, String turned, String note) {
        LaidPly ply = of.ply();
        return List.of(
                ply.piece(),
                Integer.toString(ply.sequence()),
                name,
                DrapeAnswer.words(ply),
                ply.material().name(),
                fixed(Math.toDegrees(ply.angle()), 1, ""),
                fixed(area, 4, ""),
                fixed(1e3 * area * ply.thickness() * ply.material().density(), 1, ""),
                x,
                y,
                turned,
                note);
    }

    private static ListTable bill(PackAnswer answer) {
        return new ListTable(
                "Bill of materials",
                List.of(
                        "material",
                        "description",
                        "cut",
                        "laid (m²)",
                        "laid (kg)",
                        "roll used (m)",
                        "bought (kg)",
                        "used of the roll (%)"),
                answer.materials().stream()
                        .map(each -> List.of(
                                each.material().name(),
                                each.material().description(),
                                Integer.toString(each.pieces()),
                                fixed(each.areaLaid(), 3, ""),
                                fixed(each.massLaid(), 3, ""),
                                fixed(each.roll(), 3, ""),
                                fixed(each.bought(), 3, ""),
                                fixed(100 * each.used(), 1, "")))
                        .toList());
    }

    private static ListTable holes(PackAnswer answer) {
        return new ListTable(
                "Holes and inserts",
                List.of("hardpoint", "on", "x (mm)", "y (mm)", "z (mm)", "potting or block diameter (mm)", "mass (g)"),
                answer.laid().tub().hardpoints().stream()
                        .map(h -> List.of(
                                h.name(),
                                h.part(),
                                fixed(1e3 * h.position()[0], 2, ""),
                                fixed(1e3 * h.position()[1], 2, ""),
                                fixed(1e3 * h.position()[2], 2, ""),
                                fixed(2e3 * h.footprintRadius(), 1, ""),
                                fixed(1e3 * h.mass(), 1, "")))
                        .toList());
    }

    private static ListTable dates(PackAnswer answer) {
        Schedule schedule = answer.build().plan().schedule();
        return new ListTable(
                "Calendar",
                List.of("what", "kind", "where", "begins", "done", "at the latest", "work (h)", "on the longest path"),
                schedule.placed().stream()
                        .filter(p -> p.activity().seconds() > 0)
                        .map(p -> List.of(
                                p.activity().name(),
                                p.activity().step(),
                                p.activity().lane(),
                                p.start().toString().replace('T', ' '),
                                p.finish().toString().replace('T', ' '),
                                p.latestFinish().toString().replace('T', ' '),
                                p.activity().work() > 0 ? fixed(p.activity().work() / 3600, 1, "") : "",
                                schedule.chain().contains(p) ? "yes" : ""))
                        .toList());
    }

    /** A letter that asks for a price. */
    public static String letter(PackAnswer answer) {
        StringBuilder text = new StringBuilder();
        text.append(answer.foot())
                .append("\n\nRequest for quotation\n\nWe ask for your price and time for the parts of ")
                .append(answer.tub())
                .append(", one set and each further set:\n\n");
        answer.byPiece()
                .forEach((piece, plies) -> text.append("  - ")
                        .append(piece)
                        .append(": ")
                        .append(plies.stream()
                                .map(p -> p.ply().sequence())
                                .distinct()
                                .count())
                        .append(" steps, ")
                        .append(fixed(
                                plies.stream().mapToDouble(PackAnswer::mass).sum(), 2, ""))
                        .append(" kg of plies, film and core\n"));
        text.append("""

                Please quote apart: patterns and moulds; material; cutting and laying; cures; trimming, drilling and inserts;
                bonding; test panels; delivery. Say which materials you would use instead, if any, and with whose data.

                Enclosed: ply-book.pdf (steps, drawings, holes and inserts, bonding, test panels, limits), calendar.pdf (what we
                think must be done when: please put your own times in its place), lists.xlsx with the same lists as kits.csv,
                materials.csv, hardpoints.csv and calendar.csv, patterns/ (DXF and SVG, full size in mm), nests/ (SVG), and
                as-built.csv, the form in which weights, batches and deviations come back to us.

                Ask before you change a material, a splice, a cure or the order of steps. Parts are accepted by the limits in
                the ply book; deviations are written down and released by the designer before the next step.

                """);
        return text.append(RunAnswer.CAUTION).append('\n').toString();
    }
}
