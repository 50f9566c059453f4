// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.mesh.Mesh;

/** Draws a ply on paper: its pattern with warp and reference direction, and where it lies on the piece. */
final class PlyDrawing {
    private static final float ARROW = 34;
    /** Of a dashed line, points. */
    private static final double DASH = 4;

    private final Paper paper;
    private final Mesh mesh;

    PlyDrawing(Paper paper, Mesh mesh) {
        this.paper = paper;
        this.mesh = mesh;
    }

    /** The pattern into a box, points; words underneath. */
    void pattern(FlatPattern flat, List<CutPiece> cut, float x, float y, float width, float height) {
        double[] box = box(flat.outlines());
        double scale =
                Math.min(width / Math.max(1e-9, box[2] - box[0]), (height - 12) / Math.max(1e-9, box[3] - box[1]));
        float left = x + (float) (width - scale * (box[2] - box[0])) / 2;
        float low = y + 12 + (float) (height - 12 - scale * (box[3] - box[1])) / 2;
        Frame frame = new Frame(left, low, scale, box[0], box[1]);
        flat.lines().forEach(l -> frame.path(l, false, 0.3f, 0.65f));
        // Parts of a spliced ply, each with its own edge: between two of them lies the overlap.
        cut.stream()
                .filter(c -> c.parts() > 1)
                .forEach(c -> c.pattern().outlines().forEach(o -> frame.path(o, true, 0.5f, 0.4f)));
        flat.outlines().forEach(o -> frame.path(o, true, 0.9f, 0.1f));
        flat.marks(Mark.Kind.CHAMFER).forEach(m -> frame.dashed(m, 0.5f, 0.35f));
        flat.marks(Mark.Kind.POTTING).forEach(m -> frame.path(m, false, 0.5f, 0.2f));
        flat.marks(Mark.Kind.NOTCH).forEach(m -> frame.tick(m, 5));
        float sx = frame.x(flat.start()[0]);
        float sy = frame.y(flat.start()[1]);
        paper.dot(sx, sy, 2);
        arrow(sx, sy, 0, 0.1f);
        arrow(sx, sy, flat.reference(), 0.55f);
        paper.label(
                x + width / 2,
                y,
                Math.round(1e3 * flat.length()) + " × " + Math.round(1e3 * flat.width()) + " mm"
                        + (cut.size() > 1 ? ", cut in " + cut.size() + " parts" : ""));
    }

    private void arrow(float x, float y, double angle, float grey) {
        float tx = x + ARROW * (float) Math.cos(angle);
        float ty = y + ARROW * (float) Math.sin(angle);
        paper.line(x, y, tx, ty, 1.1f, grey);
        for (double side : new double[] {2.7, -2.7}) {
            paper.line(
                    tx,
                    ty,
                    tx + 6 * (float) Math.cos(angle + side),
                    ty + 6 * (float) Math.sin(angle + side),
                    1.1f,
                    grey);
        }
    }

    /** Where it lies on its piece, from the side and from above on one scale. */
    void place(List<DrapedPly> piece, DrapedPly ply, float x, float y, float width, float height) {
        int[] all = piece.stream()
                .flatMapToInt(p -> java.util.Arrays.stream(p.ply().elements()))
                .distinct()
                .toArray();
        double[] box = bounds(all);
        double tall = box[5] - box[2] + box[4] - box[1];
        double scale = Math.min(width / Math.max(1e-9, box[3] - box[0]), (height - 24) / Math.max(1e-9, tall));
        float left = x + (float) (width - scale * (box[3] - box[0])) / 2;
        Frame above = new Frame(left, y + 12, scale, box[0], box[1]);
        Frame side = new Frame(left, y + 18 + (float) (scale * (box[4] - box[1])), scale, box[0], box[2]);
        edges(all, above, side, 0.4f, 0.7f);
        edges(ply.ply().elements(), above, side, 1.1f, 0.1f);
        paper.dot(above.x(ply.start()[0]), above.y(ply.start()[1]), 2);
        paper.dot(side.x(ply.start()[0]), side.y(ply.start()[2]), 2);
        paper.label(x + width / 2, y, "from the side and from above, front to the left");
    }

    private double[] bounds(int[] elements) {
        double[] box = {1e9, 1e9, 1e9, -1e9, -1e9, -1e9};
        for (int e : elements) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                for (int d = 0; d < 3; d++) {
                    double v = mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d];
                    box[d] = Math.min(box[d], v);
                    box[3 + d] = Math.max(box[3 + d], v);
                }
            }
        }
        return box;
    }

    /** The edges that only one of the elements has. */
    private void edges(int[] elements, Frame above, Frame side, float width, float grey) {
        Map<Long, Integer> seen = new HashMap<>();
        for (int e : elements) {
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                seen.merge(key(e, c, corners), 1, Integer::sum);
            }
        }
        // In the order of the elements: the same drawing gives the same bytes.
        for (int e : elements) {
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                if (seen.get(key(e, c, corners)) == 1) {
                    int a = 3 * mesh.elementNodes()[4 * e + c];
                    int b = 3 * mesh.elementNodes()[4 * e + (c + 1) % corners];
                    double[] n = mesh.nodes();
                    paper.line(above.x(n[a]), above.y(n[a + 1]), above.x(n[b]), above.y(n[b + 1]), width, grey);
                    paper.line(side.x(n[a]), side.y(n[a + 2]), side.x(n[b]), side.y(n[b + 2]), width, grey);
                }
            }
        }
    }

    private long key(int e, int c, int corners) {
        int a = mesh.elementNodes()[4 * e + c];
        int b = mesh.elementNodes()[4 * e + (c + 1) % corners];
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }

    private static double[] box(List<double[]> outlines) {
        double[] box = {1e9, 1e9, -1e9, -1e9};
        for (double[] o : outlines) {
            for (int i = 0; i < o.length; i++) {
                box[i % 2] = Math.min(box[i % 2], o[i]);
                box[2 + i % 2] = Math.max(box[2 + i % 2], o[i]);
            }
        }
        return box;
    }

    private final class Frame {
        private final float left;
        private final float low;
        private final double scale;
        private final double x0;
        private final double y0;

        Frame(float left, float low, double scale, double x0, double y0) {
            this.left = left;
            this.low = low;
            this.scale = scale;
            this.x0 = x0;
            this.y0 = y0;
        }

        float x(double v) {
            return left + (float) (scale * (v - x0));
        }

        float y(double v) {
            return low + (float) (scale * (v - y0));
        }

        /** A line in dashes of 4 points. */
        void dashed(double[] points, float width, float grey) {
            double gone = 0;
            for (int i = 0; i + 3 < points.length; i += 2) {
                float ax = x(points[i]);
                float ay = y(points[i + 1]);
                float bx = x(points[i + 2]);
                float by = y(points[i + 3]);
                double length = Math.hypot(bx - ax, by - ay);
                for (double at = 0; at < length; ) {
                    double to = Math.min(length, at + DASH - gone % DASH);
                    if ((long) (gone / DASH) % 2 == 0) {
                        float f = (float) (at / length);
                        float g = (float) (to / length);
                        paper.line(
                                ax + f * (bx - ax),
                                ay + f * (by - ay),
                                ax + g * (bx - ax),
                                ay + g * (by - ay),
                                width,
                                grey);
                    }
                    gone += Math.max(to - at, 1e-6);
                    at = Math.max(to, at + 1e-6);
                }
            }
        }

        /** A notch, a few millimetres long, drawn long enough to be seen. */
        void tick(double[] points, float length) {
            float ax = x(points[0]);
            float ay = y(points[1]);
            double dx = points[2] - points[0];
            double dy = points[3] - points[1];
            double l = Math.max(1e-9, Math.hypot(dx, dy));
            paper.line(ax, ay, ax + (float) (length * dx / l), ay + (float) (length * dy / l), 0.9f, 0.1f);
        }

        void path(double[] points, boolean closed, float width, float grey) {
            int n = points.length / 2;
            for (int i = 0; i < (closed ? n : n - 1); i++) {
                int j = (i + 1) % n;
                paper.line(x(points[2 * i]), y(points[2 * i + 1]), x(points[2 * j]), y(points[2 * j + 1]), width, grey);
            }
        }
    }
}
