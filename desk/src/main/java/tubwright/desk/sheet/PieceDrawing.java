// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Hardpoint;

/** Draws a piece in three views on one scale: its edges and zones, where reference directions run, its hardpoints by number, its size. */
final class PieceDrawing {
    private static final float BETWEEN = 26;
    private static final int TICKS = 90;

    private final Paper paper;
    private final Mesh mesh;
    private final int[] elements;
    private final double[] box = {1e9, 1e9, 1e9, -1e9, -1e9, -1e9};

    PieceDrawing(Paper paper, Mesh mesh, List<DrapedPly> piece) {
        this.paper = paper;
        this.mesh = mesh;
        elements = piece.stream()
                .flatMapToInt(p -> Arrays.stream(p.ply().elements()))
                .distinct()
                .sorted()
                .toArray();
        for (int e : elements) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                for (int d = 0; d < 3; d++) {
                    double v = mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d];
                    box[d] = Math.min(box[d], v);
                    box[3 + d] = Math.max(box[3 + d], v);
                }
            }
        }
    }

    /** Largest sizes along x, y and z, m. */
    double[] size() {
        return new double[] {box[3] - box[0], box[4] - box[1], box[5] - box[2]};
    }

    /**
     * Side and front beside each other, from above underneath.
     *
     * @param numbered hardpoints of the piece, told by their numbers
     * @param ticks whether reference directions are drawn
     */
    void draw(float x, float low, float width, float height, List<Hardpoint> numbered, boolean ticks) {
        double across = size()[0] + size()[1];
        double tall = size()[2] + size()[1];
        float scale = (float) Math.min(
                (width - BETWEEN - 20) / Math.max(1e-6, across), (height - BETWEEN - 30) / Math.max(1e-6, tall));
        float upper = low + 16 + scale * (float) size()[1] + BETWEEN;
        float front = x + scale * (float) size()[0] + BETWEEN;
        view(new View(0, 2, x, upper, scale), numbered, ticks, "from the right");
        view(new View(1, 2, front, upper, scale), numbered, ticks, "from the front");
        view(new View(0, 1, x, low + 16, scale), numbered, ticks, "from above, right-hand side up");
    }

    private void view(View view, List<Hardpoint> numbered, boolean ticks, String name) {
        edges(view);
        if (ticks) {
            int every = Math.max(1, elements.length / TICKS);
            for (int i = every / 2; i < elements.length; i += every) {
                tick(view, elements[i]);
            }
        }
        for (int i = 0; i < numbered.size(); i++) {
            double[] at = numbered.get(i).position();
            paper.dot(view.x(at), view.y(at), 1.6f);
            paper.label(view.x(at) + 6, view.y(at) + 3, Integer.toString(i + 1));
        }
        double w = box[3 + view.right] - box[view.right];
        double h = box[3 + view.up] - box[view.up];
        paper.label(
                view.left + view.scale * (float) w / 2,
                view.low - 10,
                name + ": " + Math.round(1e3 * w) + " × " + Math.round(1e3 * h));
    }

    private void tick(View view, int e) {
        double[] middle = new double[3];
        int corners = mesh.cornerCount(e);
        for (int c = 0; c < corners; c++) {
            for (int d = 0; d < 3; d++) {
                middle[d] += mesh.nodes()[3 * mesh.elementNodes()[4 * e + c] + d] / corners;
            }
        }
        double[] end = middle.clone();
        for (int d = 0; d < 3; d++) {
            end[d] += 9 / view.scale * mesh.referenceDirections()[3 * e + d];
        }
        paper.line(view.x(middle), view.y(middle), view.x(end), view.y(end), 0.7f, 0.25f);
        paper.dot(view.x(end), view.y(end), 0.9f);
    }

    /** Rims, and lines between zones. */
    private void edges(View view) {
        java.util.Map<Long, Integer> first = new java.util.HashMap<>();
        java.util.Set<Long> inner = new java.util.HashSet<>();
        java.util.Set<Long> between = new java.util.HashSet<>();
        for (int e : elements) {
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                long key = key(e, c);
                Integer other = first.putIfAbsent(key, e);
                if (other != null) {
                    inner.add(key);
                    if (!mesh.region(other).zone().equals(mesh.region(e).zone())) {
                        between.add(key);
                    }
                }
            }
        }
        for (int e : elements) {
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                boolean rim = !inner.contains(key(e, c));
                if (rim || between.contains(key(e, c))) {
                    double[] a = node(e, c);
                    double[] b = node(e, (c + 1) % corners);
                    paper.line(view.x(a), view.y(a), view.x(b), view.y(b), rim ? 1 : 0.4f, rim ? 0.1f : 0.65f);
                }
            }
        }
    }

    private double[] node(int e, int c) {
        int n = 3 * mesh.elementNodes()[4 * e + c];
        return Arrays.copyOfRange(mesh.nodes(), n, n + 3);
    }

    private long key(int e, int c) {
        int a = mesh.elementNodes()[4 * e + c];
        int b = mesh.elementNodes()[4 * e + (c + 1) % mesh.cornerCount(e)];
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }

    private final class View {
        private final int right;
        private final int up;
        private final float left;
        private final float low;
        private final float scale;

        View(int right, int up, float left, float low, float scale) {
            this.right = right;
            this.up = up;
            this.left = left;
            this.low = low;
            this.scale = scale;
        }

        float x(double[] p) {
            return left + scale * (float) (p[right] - box[right]);
        }

        float y(double[] p) {
            return low + scale * (float) (p[up] - box[up]);
        }
    }
}
