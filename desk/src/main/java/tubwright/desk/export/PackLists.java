// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static tubwright.desk.text.Figures.fixed;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.structure.Hardpoint;

/** The lists of the pack: comma-separated values (RFC 4180) with units in the headings, and the letter that asks for a price. */
public final class PackLists {
    private PackLists() {}

    /** A kit for each piece in the order of laying, with the place of every pattern on its roll. */
    public static String kits(PackAnswer answer) {
        Map<String, Nest.Placement> placed = new HashMap<>();
        answer.kits().stream()
                .flatMap(k -> k.nest().stream())
                .forEach(n -> n.placements()
                        .forEach(p -> placed.put(n.pieces().get(p.piece()).label(), p)));
        StringBuilder text = new StringBuilder(
                "piece,step,pattern,what,material,angle (deg),area (m²),mass (g),roll x (mm),roll y (mm),turned (deg),note\r\n");
        answer.byPiece()
                .values()
                .forEach(plies -> plies.forEach(p -> {
                    List<CutPiece> cut = answer.cut(p);
                    for (CutPiece each : cut) {
                        Optional<Nest.Placement> at =
                                Optional.ofNullable(placed.get(each.pattern().name()));
                        row(
                                text,
                                p,
                                each.pattern().name(),
                                each.pattern().area(),
                                at.map(a -> fixed(1e3 * a.x(), 1, "")).orElse(""),
                                at.map(a -> fixed(1e3 * a.y(), 1, "")).orElse(""),
                                at.map(a -> Integer.toString(90 * a.quarters())).orElse(""),
                                each.parts() > 1 ? "part " + each.part() + " of " + each.parts() : "");
                    }
                    if (cut.isEmpty()) {
                        row(text, p, p.ply().name(), p.figures().area(), "", "", "", "no pattern: cut to fit");
                    }
                }));
        return text.toString();
    }

    private static void row(
            StringBuilder text,
            DrapedPly of,
            String name,
            double area,
            String x,
            String y,
            String turned,
            String note) {
        LaidPly ply = of.ply();
        row(
                text,
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

    /** What is laid and what is bought, one tub. */
    public static String materials(PackAnswer answer) {
        StringBuilder text = new StringBuilder(
                "material,description,cut,laid (m²),laid (kg),roll used (m),bought (kg),used of the roll (%)\r\n");
        for (PackAnswer.OfMaterial each : answer.materials()) {
            row(
                    text,
                    each.material().name(),
                    each.material().description(),
                    Integer.toString(each.pieces()),
                    fixed(each.areaLaid(), 3, ""),
                    fixed(each.massLaid(), 3, ""),
                    fixed(each.roll(), 3, ""),
                    fixed(each.bought(), 3, ""),
                    fixed(100 * each.used(), 1, ""));
        }
        return text.toString();
    }

    /** Every hardpoint with its place. */
    public static String hardpoints(PackAnswer answer) {
        StringBuilder text =
                new StringBuilder("hardpoint,on,x (mm),y (mm),z (mm),potting or block diameter (mm),mass (g)\r\n");
        for (Hardpoint h : answer.laid().tub().hardpoints()) {
            row(
                    text,
                    h.name(),
                    h.part(),
                    fixed(1e3 * h.position()[0], 2, ""),
                    fixed(1e3 * h.position()[1], 2, ""),
                    fixed(1e3 * h.position()[2], 2, ""),
                    fixed(2e3 * h.footprintRadius(), 1, ""),
                    fixed(1e3 * h.mass(), 1, ""));
        }
        return text.toString();
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

                Enclosed: ply-book.pdf (steps, drawings, holes and inserts, bonding, test panels, limits), kits.csv,
                materials.csv, hardpoints.csv, patterns/ (DXF and SVG, full size in mm), nests/ (SVG).

                Ask before you change a material, a splice, a cure or the order of steps. Parts are accepted by the limits in
                the ply book; deviations are written down and released by the designer before the next step.

                """);
        return text.append(RunAnswer.CAUTION).append('\n').toString();
    }

    private static void row(StringBuilder text, String... cells) {
        text.append(String.join(
                        ",", List.of(cells).stream().map(PackLists::quoted).toList()))
                .append("\r\n");
    }

    private static String quoted(String cell) {
        return cell.matches("[^\",\r\n]*") ? cell : '"' + cell.replace("\"", "\"\"") + '"';
    }
}
