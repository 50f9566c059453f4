// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.answer.MouldWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.picture.DraftPicture;
import tubwright.desk.picture.Png;
import tubwright.desk.picture.View.From;
import tubwright.engine.make.mould.SplitLines;
import tubwright.engine.mesh.Mesh;

/** Drawings of the pieces with their split lines, their draft, and lists of bends, cold sizes and tooling, on paper. */
public final class MouldSheets {
    private static final String GAP = " ";
    private static final float DRAWING = 250;
    /** Height of a flat piece on paper, points. */
    private static final float PLATE = 230;
    /** Stations are told apart this finely in the outline from the side, m. */
    private static final double SLICE = 0.025;

    private final MouldAnswer answer;
    private final Paper paper;

    private MouldSheets(MouldAnswer answer, Paper paper) {
        this.answer = answer;
        this.paper = paper;
    }

    /**
     * The sheets as PDF; the same answer gives the same bytes.
     *
     * @param foot of every page: issue, date, units, fingerprint
     */
    public static byte[] write(MouldAnswer answer, String foot) {
        try (Paper paper = new Paper(answer.tub() + ": pieces and moulds", foot)) {
            new MouldSheets(answer, paper).write();
            return paper.done();
        }
    }

    private void write() {
        paper.title(answer.tub() + ": pieces and moulds");
        paper.paragraph(
                "Outer faces, as the moulds have them. Lengths in millimetres; x aft, y to the right, z up. Draft"
                        + " asked for " + fixed(Math.toDegrees(answer.wanted()), 1, "") + "°.");
        paper.heading("Pieces");
        table(
                new float[] {0.14f, 0.17f, 0.07f, 0.18f, 0.14f, 0.1f, 0.09f, 0.11f},
                MouldWords.PIECE_HEAD,
                MouldWords.pieces(answer, GAP),
                14);
        answer.pieces().stream()
                .map(MouldWords::edges)
                .filter(e -> !e.isEmpty())
                .forEach(paper::paragraph);
        List<String> advice = MouldWords.advice(answer);
        paper.heading("Out of the mould");
        paper.paragraph(
                advice.isEmpty()
                        ? "Every piece comes out of its mould as one."
                        : "Not every piece comes out of its mould as one. What would help:");
        advice.forEach(paper::paragraph);
        answer.pieces().stream().filter(p -> p.draft().isPresent()).forEach(this::piece);
        List<MouldAnswer.Piece> flat =
                answer.pieces().stream().filter(p -> p.draft().isEmpty()).toList();
        if (!flat.isEmpty()) {
            paper.page();
            paper.heading("Flat pieces, from the front");
            flat.forEach(this::plate);
        }
        paper.page();
        paper.title("Bends, cold sizes, tooling");
        paper.heading("Bends");
        paper.paragraph(
                "A bend closes when the part cools: open the mould by so much. Of a sandwich it is that of the outer"
                        + " skin alone; friction and thinning are not in it.");
        table(
                new float[] {0.17f, 0.15f, 0.12f, 0.11f, 0.12f, 0.09f, 0.09f, 0.15f},
                MouldWords.BEND_HEAD,
                MouldWords.bends(answer, GAP),
                13);
        paper.heading("Cold size of moulds");
        if (answer.factors().isEmpty()) {
            paper.paragraph("Not known: needs the expansion of the laminates.");
        } else {
            paper.paragraph("Part and mould agree where the part freezes, " + fixed(answer.change(), 0, "")
                    + " K above the room. Cut the mould to this size when cold.");
            table(
                    new float[] {0.46f, 0.18f, 0.18f, 0.18f},
                    MouldWords.FACTOR_HEAD,
                    MouldWords.factors(answer, GAP),
                    13);
        }
        paper.heading("Tooling");
        MouldWords.tooling(answer, GAP)
                .forEach(t -> paper.paragraph(t.get(0) + ", " + t.get(1) + ": " + t.get(2)
                        + (t.get(3).isEmpty() ? "" : ", about " + t.get(3) + " kg") + "; " + t.get(4) + "."));
        paper.paragraph(
                "Flange, strips and wall: common practice, no source. The mould maker decides how moulds are made.");
        paper.paragraph(RunAnswer.CAUTION);
    }

    private void table(float[] shares, List<String> head, List<List<String>> rows, float height) {
        List<List<String>> all = new ArrayList<>(List.of(head));
        all.addAll(rows);
        paper.table(shares, all, height);
    }

    private void piece(MouldAnswer.Piece piece) {
        paper.page();
        paper.heading(piece.name());
        views(piece);
        paper.paragraph(
                "Thick: split lines to neighbouring pieces; thin: open edges. From the side, from above and from"
                        + " the front, on one scale. Surfaces as triangles and the frames' curves are in surfaces/.");
        paper.heading("Draft along the pull: " + fixed(Math.toDegrees(DraftPicture.PLENTY), 0, "")
                + "° and more is pale, upright red, undercut dark");
        var picture = DraftPicture.of(piece.face(), piece.draft().orElseThrow(), From.THREE_QUARTER_FRONT, 900);
        paper.picture(
                Png.encode(picture.image()),
                picture.image().width(),
                picture.image().height());
    }

    /** A flat piece: square to itself, since it may lean. */
    private void plate(MouldAnswer.Piece piece) {
        double[][] box = box(piece);
        double run = Math.hypot(box[1][0] - box[0][0], box[1][2] - box[0][2]);
        double wide = box[1][1] - box[0][1];
        double scale = Math.min(Paper.WIDTH / Math.max(1e-6, wide), (PLATE - 30) / Math.max(1e-6, run));
        // Every plate on the page at most at a third of life size, small ones not blown up.
        scale = Math.min(scale, Paper.WIDTH / 1.5);
        float bottom = paper.room((float) (scale * run) + 40) + 18;
        float left = Paper.MARGIN + (float) (Paper.WIDTH - scale * wide) / 2;
        double[] nodes = piece.face().mesh().nodes();
        for (SplitLines.Edge edge : new SplitLines(piece.face().mesh()).of(piece.face())) {
            float[] x = new float[2];
            float[] y = new float[2];
            for (int i = 0; i < 2; i++) {
                int n = 3 * (i == 0 ? edge.from() : edge.to());
                x[i] = left + (float) (scale * (nodes[n + 1] - box[0][1]));
                double up = nodes[n + 2] - box[0][2];
                y[i] = bottom + (float) (scale * (up * run / Math.max(1e-9, box[1][2] - box[0][2])));
            }
            paper.line(x[0], y[0], x[1], y[1], 0.9f, 0.1f);
        }
        paper.label(
                Paper.MARGIN + Paper.WIDTH / 2,
                bottom - 11,
                piece.name() + ": " + mm(wide) + " wide, " + mm(run) + " high in its own plane");
    }

    /** Least and largest coordinates. */
    private static double[][] box(MouldAnswer.Piece piece) {
        Mesh mesh = piece.face().mesh();
        double[][] box = {{1e9, 1e9, 1e9}, {-1e9, -1e9, -1e9}};
        for (int e : piece.face().elements()) {
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                for (int d = 0; d < 3; d++) {
                    double v = mesh.nodes()[3 * mesh.elementNodes()[4 * e + k] + d];
                    box[0][d] = Math.min(box[0][d], v);
                    box[1][d] = Math.max(box[1][d], v);
                }
            }
        }
        return box;
    }

    /** Edges of the piece in three views on one scale, with its main sizes. */
    private void views(MouldAnswer.Piece piece) {
        Mesh mesh = piece.face().mesh();
        List<SplitLines.Edge> edges = new SplitLines(mesh).of(piece.face());
        double[] low = box(piece)[0];
        double[] high = box(piece)[1];
        double[] span = {high[0] - low[0], high[1] - low[1], high[2] - low[2]};
        float gap = 26;
        double scale = Math.min(
                (Paper.WIDTH - gap) / Math.max(1e-6, span[0] + span[1]),
                (DRAWING - gap) / Math.max(1e-6, span[1] + span[2]));
        float bottom = paper.room(DRAWING + 14) + 14;
        float left = Paper.MARGIN;
        float up = bottom + gap + (float) (scale * span[1]);
        float right = left + gap + (float) (scale * span[0]);
        for (SplitLines.Edge edge : edges) {
            boolean split = !edge.beside().equals("opening") && !edge.beside().endsWith(" end");
            float width = split ? 1.3f : 0.5f;
            float grey = split ? 0.1f : 0.35f;
            line(mesh, edge, 0, 2, low, scale, left, up, width, grey);
            line(mesh, edge, 0, 1, low, scale, left, bottom, width, grey);
            line(mesh, edge, 1, 2, low, scale, right, up, width, grey);
        }
        outline(piece, low, scale, left, up);
        paper.label(left + (float) (scale * span[0] / 2), up - 10, mm(span[0]) + " long, " + mm(span[2]) + " high");
        paper.label(left + (float) (scale * span[0] / 2), bottom - 10, mm(span[1]) + " wide");
    }

    private static String mm(double length) {
        return fixed(1e3 * length, 0, GAP);
    }

    private void line(
            Mesh mesh,
            SplitLines.Edge edge,
            int across,
            int up,
            double[] low,
            double scale,
            float left,
            float bottom,
            float width,
            float grey) {
        int a = 3 * edge.from();
        int b = 3 * edge.to();
        paper.line(
                left + (float) (scale * (mesh.nodes()[a + across] - low[across])),
                bottom + (float) (scale * (mesh.nodes()[a + up] - low[up])),
                left + (float) (scale * (mesh.nodes()[b + across] - low[across])),
                bottom + (float) (scale * (mesh.nodes()[b + up] - low[up])),
                width,
                grey);
    }

    /** The lowest and highest line of the piece from the side, where no edge of it is. */
    private void outline(MouldAnswer.Piece piece, double[] low, double scale, float left, float up) {
        Mesh mesh = piece.face().mesh();
        Map<Long, double[]> spans = new TreeMap<>();
        for (int e : piece.face().elements()) {
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                int n = 3 * mesh.elementNodes()[4 * e + k];
                double[] span =
                        spans.computeIfAbsent(Math.round(mesh.nodes()[n] / SLICE), s -> new double[] {1e9, -1e9});
                double z = mesh.nodes()[n + 2];
                span[0] = Math.min(span[0], z);
                span[1] = Math.max(span[1], z);
            }
        }
        List<Map.Entry<Long, double[]>> all = List.copyOf(spans.entrySet());
        for (int s = 1; s < all.size(); s++) {
            for (int i = 0; i < 2; i++) {
                paper.line(
                        left + (float) (scale * (all.get(s - 1).getKey() * SLICE - low[0])),
                        up + (float) (scale * (all.get(s - 1).getValue()[i] - low[2])),
                        left + (float) (scale * (all.get(s).getKey() * SLICE - low[0])),
                        up + (float) (scale * (all.get(s).getValue()[i] - low[2])),
                        0.4f,
                        0.6f);
            }
        }
    }
}
