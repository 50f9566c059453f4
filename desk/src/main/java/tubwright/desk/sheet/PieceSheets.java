// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.PackWords;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.structure.Hardpoint;

/** What a ply book says of a piece before its first step: cover, reference directions, drawing, table of plies, record, drop-offs. */
final class PieceSheets {
    private static final String GAP = " ";

    private final PackAnswer answer;
    private final Paper paper;

    PieceSheets(PackAnswer answer, Paper paper) {
        this.answer = answer;
        this.paper = paper;
    }

    /** Cover, reference directions and drawing. */
    void cover(String name, List<DrapedPly> plies, int steps) {
        PieceDrawing drawing = new PieceDrawing(paper, answer.laid().mesh(), plies);
        double[] size = drawing.size();
        List<Hardpoint> points = hardpoints(plies);
        paper.page();
        paper.title(name);
        paper.paragraph("Piece of " + answer.tub() + ", issue " + answer.issue() + " of " + answer.date() + ". " + steps
                + " steps, " + Math.round(1e3 * size[0]) + " × " + Math.round(1e3 * size[1]) + " × "
                + Math.round(1e3 * size[2]) + " mm along, across and up, "
                + fixed(plies.stream().mapToDouble(PackAnswer::mass).sum(), 3, GAP) + " kg of plies, film and core.");
        paper.table(
                new float[] {0.1f, 0.16f, 0.5f, 0.24f},
                List.of(
                        List.of("issue", "date", "what changed on this piece", "released by"),
                        List.of(answer.issue(), answer.date(), "", ""),
                        List.of("", "", "", "")),
                16);
        paper.heading("Reference directions (0°): from line to dot");
        float low = paper.room(230);
        drawing.draw(Paper.MARGIN, low, Paper.WIDTH, 226, List.of(), true);
        paper.paragraph(PackWords.REFERENCE);
        paper.heading("Piece and hardpoints by number");
        low = paper.room(210);
        drawing.draw(Paper.MARGIN, low, Paper.WIDTH, 206, points, false);
        if (points.isEmpty()) {
            paper.paragraph("No hardpoints on this piece.");
        } else {
            List<String> names = new ArrayList<>();
            for (int i = 0; i < points.size(); i++) {
                names.add(i + 1 + " " + points.get(i).name());
            }
            paper.paragraph(String.join("; ", names) + ". Places and sizes: sheet \"Holes and inserts\".");
        }
    }

    /** Table of plies, and the record of laying them. */
    void tables(Map<Integer, List<DrapedPly>> steps) {
        paper.page();
        paper.heading("Plies in the order of laying");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "step",
                "pattern, issue",
                "material",
                "angle",
                "reference of",
                "start x, y, z",
                "m²",
                "g",
                "parts",
                "shear°",
                "limits",
                "debulk"));
        List<List<String>> record = new ArrayList<>();
        record.add(List.of(
                "step",
                "pattern",
                "batch and roll",
                "g",
                "backing 1",
                "backing 2",
                "laid by",
                "seen by",
                "time",
                "out-time left"));
        steps.forEach((step, here) -> here.forEach(p -> {
            List<CutPiece> cut = answer.cut(p);
            rows.add(List.of(
                    Integer.toString(step),
                    p.ply().name() + ", " + answer.issue(),
                    p.ply().material().name(),
                    switch (p.ply().role()) {
                        case PLY -> Math.round(Math.toDegrees(p.ply().angle())) + "°";
                        case CORE -> fixed(1e3 * p.ply().thickness(), 0, GAP) + " mm";
                        default -> "";
                    },
                    p.ply().zones().isEmpty() ? "" : p.ply().zones().getFirst(),
                    Math.round(1e3 * p.start()[0]) + ", " + Math.round(1e3 * p.start()[1]) + ", "
                            + Math.round(1e3 * p.start()[2]),
                    fixed(p.figures().area(), 3, GAP),
                    fixed(1e3 * PackAnswer.mass(p), 0, GAP),
                    cut.size() > 1
                            ? cut.size() + (p.ply().cloth() ? ", lap 20" : ", butt")
                            : cut.isEmpty() ? "to fit" : "1",
                    p.ply().cloth() ? fixed(Math.toDegrees(p.figures().largestShear()), 0, GAP) : "",
                    p.ply().role() != LayerRole.PLY ? "L2" : p.ply().tape() ? "L1, L3" : "L1, L4",
                    PackWords.debulk(step, steps.size(), p.ply()) ? "after" : ""));
            List<String> names = cut.isEmpty()
                    ? List.of(p.ply().name())
                    : cut.stream().map(c -> c.pattern().name()).toList();
            names.forEach(n -> record.add(List.of(
                    Integer.toString(step),
                    n,
                    "",
                    "",
                    "",
                    p.ply().role() == LayerRole.CORE ? "none" : "",
                    "",
                    "",
                    "",
                    "")));
        }));
        paper.table(
                new float[] {0.045f, 0.14f, 0.2f, 0.06f, 0.09f, 0.125f, 0.055f, 0.045f, 0.075f, 0.05f, 0.06f, 0.055f},
                rows,
                13);
        paper.paragraph(
                "L1 edges ± 2 mm; L2 fit and joints, gap at most 2 mm; L3 direction ± 3°, gap at most 2 mm, overlap at"
                        + " most 1 mm; L4 direction ± 5° where it drapes. Laying begins at the start and goes outward along the warp,"
                        + " fibres or ribbon, then to both sides. Patterns carry the issue of this book.");
        paper.heading("Record of laying");
        paper.table(new float[] {0.05f, 0.16f, 0.15f, 0.07f, 0.08f, 0.08f, 0.11f, 0.11f, 0.09f, 0.1f}, record, 14);
    }

    /** Where plies end inside the piece. */
    void dropOffs(List<DrapedPly> plies) {
        List<DropOffs.End> ends = DropOffs.of(answer.laid().mesh(), plies);
        if (ends.isEmpty()) {
            return;
        }
        paper.heading("Drop-offs: edges of plies inside the piece");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("ply", "edge, mm", "between x", "ends together with", "step back, mm"));
        for (DropOffs.End end : ends) {
            rows.add(List.of(
                    end.ply().ply().name(),
                    fixed(1e3 * end.length(), 0, GAP),
                    Math.round(1e3 * end.from()) + " and " + Math.round(1e3 * end.to()),
                    end.together().isEmpty()
                            ? ""
                            : end.together().getFirst()
                                    + (end.together().size() > 1
                                            ? " and " + (end.together().size() - 1) + " later ones"
                                            : ""),
                    end.together().isEmpty() ? "" : fixed(1e3 * end.step(), 1, GAP)));
        }
        paper.table(new float[] {0.2f, 0.1f, 0.18f, 0.4f, 0.12f}, rows, 13);
        paper.paragraph(
                "Where plies end on one line, the first of them laid ends where it is drawn and each later one is stepped"
                        + " back from it by at least 20 times its thickness (common practice, no source); core edges are chamfered, not"
                        + " stepped.");
    }

    /** Witness panels of a piece, one for every material that is cured in it. */
    void witness(List<DrapedPly> plies) {
        Set<String> materials = new LinkedHashSet<>();
        plies.stream()
                .filter(p -> p.ply().role() == LayerRole.PLY)
                .forEach(p -> materials.add(p.ply().material().name()));
        boolean core = plies.stream().anyMatch(p -> p.ply().role() == LayerRole.CORE);
        paper.heading("Witness panels, laid by the same hands, bagged beside the piece, cured with it");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("panel", "layup", "size, mm", "tests", "batch", "result"));
        int number = 1;
        for (String material : materials) {
            rows.add(List.of("W" + number++, "8 plies 0° of " + material, "150 × 150", "ISO 14127, ISO 14130", "", ""));
        }
        if (core) {
            rows.add(List.of("W" + number, "skins, film and core as in the piece", "200 × 200", "ASTM C297", "", ""));
        }
        paper.table(new float[] {0.07f, 0.35f, 0.13f, 0.2f, 0.12f, 0.13f}, rows, 15);
    }

    /** Hardpoints whose strip, wall or zone the piece has. */
    private List<Hardpoint> hardpoints(List<DrapedPly> plies) {
        Map<String, Boolean> parts = new LinkedHashMap<>();
        plies.forEach(p -> {
            for (int e : p.ply().elements()) {
                parts.put(answer.laid().mesh().region(e).part(), true);
            }
        });
        return answer.laid().tub().hardpoints().stream()
                .filter(h -> parts.containsKey(h.part()))
                .toList();
    }
}
