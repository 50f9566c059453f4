// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.PackAnswer;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.ply.LaidPly;

/** The form that goes out with a pack and comes back filled in: a line for each batch, pattern and piece, the plan in it. */
final class BuiltForm {
    private static final int BLANK = 4;

    private BuiltForm() {}

    /** The form. */
    static ListTable of(PackAnswer answer) {
        List<List<String>> rows = new ArrayList<>();
        Map<String, LaidPly> stock = new LinkedHashMap<>();
        answer.laid()
                .plies()
                .forEach(p -> stock.putIfAbsent(
                        p.ply().material().name() + " " + p.ply().thickness(), p.ply()));
        stock.values()
                .forEach(p -> rows.add(List.of(
                        "batch",
                        "",
                        "",
                        p.material().name(),
                        "",
                        "",
                        "",
                        fixed(1e3 * p.thickness() * p.material().density(), 1, ""),
                        "",
                        fixed(1e3 * p.thickness(), 3, ""),
                        "",
                        "",
                        "")));
        answer.byPiece()
                .forEach((piece, plies) -> plies.forEach(p -> {
                    List<CutPiece> cut = answer.cut(p);
                    cut.forEach(c -> rows.add(ply(piece, p, c.pattern().name(), c.mass())));
                    if (cut.isEmpty()) {
                        rows.add(ply(piece, p, p.ply().name(), PackAnswer.mass(p)));
                    }
                }));
        answer.byPiece()
                .forEach((piece, plies) -> rows.add(line(
                        "piece",
                        piece,
                        plies.stream().mapToDouble(PackAnswer::mass).sum())));
        rows.add(List.of("tub", "", "", "", "", "", "", "", "", "", "", "", ""));
        for (String kind : List.of("deviation", "concession")) {
            for (int i = 0; i < BLANK; i++) {
                rows.add(List.of(kind, "", "", "", "", "", "", "", "", "", "", "", ""));
            }
        }
        return new ListTable(
                "As built",
                List.of(
                        "kind",
                        "piece",
                        "pattern",
                        "material",
                        "batch",
                        "planned mass (g)",
                        "mass (g)",
                        "planned areal mass (g/m²)",
                        "areal mass (g/m²)",
                        "planned thickness (mm)",
                        "thickness (mm)",
                        "words",
                        "released by"),
                rows);
    }

    private static List<String> ply(String piece, DrapedPly of, String pattern, double mass) {
        return List.of("ply", piece, pattern, of.ply().material().name(), "", grams(mass), "", "", "", "", "", "", "");
    }

    private static List<String> line(String kind, String piece, double mass) {
        return List.of(kind, piece, "", "", "", grams(mass), "", "", "", "", "", "", "");
    }

    /** A crumb that no scales show has no planned mass. */
    private static String grams(double mass) {
        return 1e3 * mass < 0.05 ? "" : fixed(1e3 * mass, 1, "");
    }
}
