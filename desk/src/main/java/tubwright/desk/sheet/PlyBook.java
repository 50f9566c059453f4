// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.PackWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.structure.Hardpoint;

/** The ply book: what a laminator works from, piece by piece and ply by ply, with boxes to sign. */
public final class PlyBook {
    private static final String GAP = " ";
    private static final float DRAWING = 190;

    private final PackAnswer answer;
    private final Paper paper;
    private final PlyDrawing drawing;
    private final PieceSheets sheets;

    private PlyBook(PackAnswer answer, Paper paper) {
        this.answer = answer;
        this.paper = paper;
        drawing = new PlyDrawing(paper, answer.laid().mesh());
        sheets = new PieceSheets(answer, paper);
    }

    /** The whole book as PDF; the same answer gives the same bytes. */
    public static byte[] write(PackAnswer answer) {
        try (Paper paper = new Paper(answer.tub() + ": ply book", answer.foot())) {
            new PlyBook(answer, paper).write();
            return paper.done();
        }
    }

    private void write() {
        cover();
        answer.byPiece().forEach(this::piece);
        hardpoints();
        closing();
    }

    private void cover() {
        paper.title(answer.tub() + ": ply book");
        paper.paragraph("Variant " + answer.variant() + ". Issue " + answer.issue() + " of " + answer.date()
                + ". Made from the design with the fingerprint " + answer.fingerprint()
                + " by Tubwright " + answer.version() + ". Lengths in millimetres.");
        paper.heading("Pieces");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("piece", "steps", "patterns", "mass of plies, kg", "plies that want care"));
        answer.byPiece()
                .forEach((name, plies) -> rows.add(List.of(
                        name,
                        Integer.toString(steps(plies).size()),
                        Integer.toString(plies.size()),
                        fixed(plies.stream().mapToDouble(PackAnswer::mass).sum(), 3, GAP),
                        Long.toString(plies.stream()
                                .filter(p -> !p.advice().isEmpty())
                                .count()))));
        paper.table(new float[] {0.34f, 0.12f, 0.14f, 0.2f, 0.2f}, rows, 15);
        paper.heading("Material");
        List<List<String>> bought = new ArrayList<>();
        bought.add(List.of("material", "cut", "laid, m²", "laid, kg", "roll, m", "bought, kg", "used of the roll"));
        for (PackAnswer.OfMaterial each : answer.materials()) {
            bought.add(List.of(
                    each.material().name(),
                    Integer.toString(each.pieces()),
                    fixed(each.areaLaid(), 2, GAP),
                    fixed(each.massLaid(), 2, GAP),
                    fixed(each.roll(), 2, GAP),
                    fixed(each.bought(), 2, GAP),
                    fixed(100 * each.used(), 0, GAP) + " %"));
        }
        paper.table(new float[] {0.34f, 0.08f, 0.11f, 0.11f, 0.11f, 0.12f, 0.13f}, bought, 15);
        paper.paragraph("For one tub. "
                + String.join(
                        "; ",
                        answer.shop().rolls().entrySet().stream()
                                .map(e -> e.getKey().word() + " "
                                        + fixed(1e3 * e.getValue().width(), 0, GAP) + " wide")
                                .toList())
                + ".");
        paper.heading("Changes");
        paper.table(
                new float[] {0.1f, 0.16f, 0.5f, 0.24f},
                List.of(
                        List.of("issue", "date", "what changed", "released by"),
                        List.of(answer.issue(), answer.date(), "", ""),
                        List.of("", "", "", ""),
                        List.of("", "", "", "")),
                18);
        paper.heading("Before you begin");
        PackWords.RULES.forEach(paper::paragraph);
        paper.paragraph(RunAnswer.CAUTION);
    }

    private void piece(String name, List<DrapedPly> plies) {
        Map<Integer, List<DrapedPly>> steps = steps(plies);
        sheets.cover(name, plies, steps.size());
        sheets.tables(steps);
        sheets.dropOffs(plies);
        weigh(plies);
        steps.forEach((step, here) -> step(plies, step, steps.size(), here));
        cure(plies);
    }

    private void weigh(List<DrapedPly> plies) {
        double mass = plies.stream().mapToDouble(PackAnswer::mass).sum();
        paper.paragraph("Weigh the kit before laying: plies, film and core of this piece should weigh "
                + fixed(mass, 3, GAP) + " kg without backing. Weighed: ____________ kg   by: ____________");
    }

    private void step(List<DrapedPly> piece, int step, int steps, List<DrapedPly> here) {
        paper.page();
        paper.heading("Step " + step + " of " + steps + ": "
                + DrapeAnswer.words(here.getFirst().ply())
                + (here.getFirst().ply().patch().isEmpty()
                        ? ""
                        : ", " + here.getFirst().ply().patch()));
        paper.paragraph("Zones: "
                + String.join(
                        ", ",
                        here.stream()
                                .flatMap(p -> p.ply().zones().stream())
                                .distinct()
                                .toList()) + ".");
        for (DrapedPly p : here) {
            float low = paper.room(DRAWING + 16);
            paper.label(
                    Paper.MARGIN + Paper.WIDTH / 2, low + DRAWING + 8, p.ply().name());
            if (!p.flat().outlines().isEmpty()) {
                drawing.pattern(p.flat(), answer.cut(p), Paper.MARGIN, low, Paper.WIDTH * 0.56f, DRAWING);
            }
            drawing.place(piece, p, Paper.MARGIN + Paper.WIDTH * 0.6f, low, Paper.WIDTH * 0.4f, DRAWING);
            p.advice().forEach(a -> paper.paragraph("Care: " + a + "."));
        }
        String key = PackWords.marks(here);
        if (!key.isEmpty()) {
            paper.paragraph(key);
        }
        if (PackWords.debulk(step, steps, here.getFirst().ply())) {
            paper.paragraph("Debulk after this step. " + PackWords.DEBULK);
        }
        paper.table(
                new float[] {0.2f, 0.2f, 0.2f, 0.2f, 0.2f},
                List.of(
                        List.of("batch and roll", "backing off, both", "laid by", "seen by", "time out of the cold"),
                        List.of("", "", "", "", "")),
                22);
    }

    private void cure(List<DrapedPly> plies) {
        boolean core = plies.stream().anyMatch(p -> p.ply().role() == LayerRole.CORE);
        paper.page();
        paper.heading("Cure of this piece");
        int number = 1;
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("", "what", "cycle used", "lagging, leading °C", "weight, kg", "signed"));
        for (String each : core ? PackWords.SANDWICH_CURE : PackWords.SOLID_CURE) {
            rows.add(List.of(Integer.toString(number++), each, "", "", "", ""));
        }
        paper.table(new float[] {0.05f, 0.43f, 0.14f, 0.16f, 0.1f, 0.12f}, rows, 22);
        paper.paragraph(PackWords.CYCLE);
        sheets.witness(plies);
        paper.heading("Out of the mould");
        paper.table(
                new float[] {0.5f, 0.25f, 0.25f},
                List.of(
                        List.of("inspection", "found", "signed"),
                        List.of("weight, kg", "", ""),
                        List.of("bag side: wrinkles, bridging, dry places", "", ""),
                        List.of("tap test over all core and bond faces", "", ""),
                        List.of("thickness at the edges, mm", "", ""),
                        List.of("witness panels laid and cured along", "", "")),
                18);
    }

    private void hardpoints() {
        paper.page();
        paper.title("Holes and inserts");
        paper.paragraph(
                "Centres on the outer face before anything is machined, from the design's datum: x aft, y to the"
                        + " right, z up.");
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("hardpoint", "on", "x", "y", "z", "potting or block Ø", "g", "done", "seen"));
        for (Hardpoint h : answer.laid().tub().hardpoints()) {
            rows.add(List.of(
                    h.name(),
                    h.part(),
                    fixed(1e3 * h.position()[0], 1, GAP),
                    fixed(1e3 * h.position()[1], 1, GAP),
                    fixed(1e3 * h.position()[2], 1, GAP),
                    fixed(2e3 * h.footprintRadius(), 0, GAP),
                    fixed(1e3 * h.mass(), 0, GAP),
                    "",
                    ""));
        }
        paper.table(new float[] {0.26f, 0.16f, 0.09f, 0.09f, 0.09f, 0.12f, 0.07f, 0.06f, 0.06f}, rows, 13);
    }

    private void closing() {
        paper.page();
        paper.title("Bonding, test panels, limits");
        paper.heading("Joints");
        List<List<String>> joints = new ArrayList<>();
        joints.add(List.of("line", "how", "mixed, time", "signed"));
        answer.laid().tub().joints().forEach(j -> joints.add(List.of(j.line(), j.description(), "", "")));
        paper.table(new float[] {0.3f, 0.4f, 0.16f, 0.14f}, joints, 16);
        PackWords.BONDING.forEach(paper::paragraph);
        paper.heading("Test panels, laid from the same batches and cured along");
        List<List<String>> panels = new ArrayList<>(PackWords.PANELS);
        panels.addFirst(List.of("panel", "test", "standard", "batch", "result"));
        paper.table(new float[] {0.3f, 0.26f, 0.2f, 0.12f, 0.12f}, panels, 16);
        paper.heading("Limits unless agreed otherwise");
        List<List<String>> limits = new ArrayList<>(PackWords.LIMITS);
        limits.addFirst(List.of("what", "limit"));
        paper.table(new float[] {0.6f, 0.4f}, limits, 14);
        paper.paragraph(PackWords.LIMITS_SOURCE);
        paper.paragraph(RunAnswer.CAUTION);
    }

    private static Map<Integer, List<DrapedPly>> steps(List<DrapedPly> plies) {
        Map<Integer, List<DrapedPly>> steps = new TreeMap<>();
        plies.forEach(p -> steps.computeIfAbsent(p.ply().sequence(), k -> new ArrayList<>())
                .add(p));
        return steps;
    }
}
