// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import tubwright.engine.mesh.Mesh;

/**
 * What is to be painted.
 *
 * @param mesh the mesh; tells topology, regions and normals
 * @param nodes 3 coordinates per node, m: those of the mesh, or displaced
 * @param values position in the ramp at each of 4 corners per element, 0 to 1
 * @param ramps colours by element, {@link Palette#STEPS} each
 * @param edges the lines to draw
 * @param cut whether the left half is cut away along the middle plane, y = 0
 * @param ghost 3 coordinates per node of a second position whose edges are drawn thinly through everything
 */
record Scene(
        Mesh mesh,
        double[] nodes,
        double[] values,
        IntFunction<int[]> ramps,
        List<Edges.Edge> edges,
        boolean cut,
        Optional<double[]> ghost) {

    private static final int INK = 0x1d2430;

    /** Paints the scene. Where an element is seen its index stands in the owner buffer. */
    Rasteriser paint(View view) {
        Rasteriser painter = new Rasteriser(view);
        double size = size();
        double[] p = new double[12];
        double[] n = new double[12];
        double[] v = new double[4];
        Cut knife = new Cut();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int corners = mesh.cornerCount(e);
            for (int i = 0; i < corners; i++) {
                System.arraycopy(nodes, 3 * mesh.elementNodes()[4 * e + i], p, 3 * i, 3);
                System.arraycopy(mesh.cornerNormals(), 12 * e + 3 * i, n, 3 * i, 3);
                v[i] = values[4 * e + i];
            }
            int[] ramp = ramps.apply(e);
            if (cut) {
                knife.triangle(painter, p, n, v, 0, 1, 2, ramp, e);
                if (corners == 4) {
                    knife.triangle(painter, p, n, v, 0, 2, 3, ramp, e);
                }
            } else {
                knife.whole(painter, p, n, v, 0, 1, 2, ramp, e);
                if (corners == 4) {
                    knife.whole(painter, p, n, v, 0, 2, 3, ramp, e);
                }
            }
        }
        Finish.hollows(painter, 0.035 * size);
        Finish.outlines(painter, 0.012 * size);
        ghost.ifPresent(still -> {
            for (Edges.Edge edge : edges) {
                if (edge.kind() != Edges.Kind.ZONE && !edge.onWall()) {
                    painter.line(
                            at(still, edge.a()), at(still, edge.b()), 0.8, 0x70000000 | INK, 0, Rasteriser.Behind.SEEN);
                }
            }
        });
        for (Edges.Edge edge : edges) {
            draw(painter, edge, size);
        }
        for (double[] line : knife.faces) {
            double[] a = {line[0], line[1], line[2]};
            double[] b = {line[3], line[4], line[5]};
            painter.line(a, b, 2.6, 0xff000000 | INK, 0.004 * size, Rasteriser.Behind.HIDDEN);
        }
        return painter;
    }

    private void draw(Rasteriser painter, Edges.Edge edge, double size) {
        double[] a = at(nodes, edge.a());
        double[] b = at(nodes, edge.b());
        if (cut && (a[1] < -1e-6 || b[1] < -1e-6)) {
            return;
        }
        double bias = 0.0035 * size;
        switch (edge.kind()) {
            case RIM -> painter.line(a, b, 2.0, 0xff000000 | INK, bias, Rasteriser.Behind.HIDDEN);
            case SEAM -> painter.line(a, b, 1.6, 0xd0000000 | INK, bias, Rasteriser.Behind.HIDDEN);
            case WALL ->
                painter.line(
                        a,
                        b,
                        1.1,
                        0x90000000 | INK,
                        bias,
                        edge.onWall() ? Rasteriser.Behind.DASHED : Rasteriser.Behind.HIDDEN);
            case CREASE -> painter.line(a, b, 0.9, 0x90000000 | INK, bias, Rasteriser.Behind.HIDDEN);
            case ZONE -> painter.line(a, b, 0.8, 0x50000000 | INK, bias, Rasteriser.Behind.HIDDEN);
        }
    }

    private static double[] at(double[] nodes, int node) {
        return new double[] {nodes[3 * node], nodes[3 * node + 1], nodes[3 * node + 2]};
    }

    /** Largest extent of the tub, m. */
    private double size() {
        double[] low = {1e300, 1e300, 1e300};
        double[] high = {-1e300, -1e300, -1e300};
        for (int i = 0; i < nodes.length; i++) {
            low[i % 3] = Math.min(low[i % 3], nodes[i]);
            high[i % 3] = Math.max(high[i % 3], nodes[i]);
        }
        return Math.max(high[0] - low[0], Math.max(high[1] - low[1], high[2] - low[2]));
    }

    /** Paints triangles, whole or what of them lies at y ≥ 0, and remembers where the plane cut them. */
    private static final class Cut {
        final List<double[]> faces = new java.util.ArrayList<>();
        private final double[] p = new double[9];
        private final double[] n = new double[9];
        private final double[] v = new double[3];

        void whole(Rasteriser painter, double[] ps, double[] ns, double[] vs, int i, int j, int k, int[] ramp, int id) {
            pick(ps, ns, vs, i, 0);
            pick(ps, ns, vs, j, 1);
            pick(ps, ns, vs, k, 2);
            painter.triangle(p, n, v, ramp, id);
        }

        void triangle(
                Rasteriser painter, double[] ps, double[] ns, double[] vs, int i, int j, int k, int[] ramp, int id) {
            int[] corner = {i, j, k};
            double[] polygon = new double[4 * 7];
            int count = 0;
            double[] face = new double[6];
            int crossings = 0;
            for (int c = 0; c < 3; c++) {
                int a = corner[c];
                int b = corner[(c + 1) % 3];
                double ya = ps[3 * a + 1];
                double yb = ps[3 * b + 1];
                if (ya >= 0) {
                    blend(ps, ns, vs, a, b, 0, polygon, count++);
                }
                if (ya >= 0 != yb >= 0) {
                    blend(ps, ns, vs, a, b, ya / (ya - yb), polygon, count++);
                    if (crossings < 2) {
                        System.arraycopy(polygon, 7 * (count - 1), face, 3 * crossings, 3);
                    }
                    crossings++;
                }
            }
            // A mesh that follows the middle plane has edges on it instead of elements across it.
            if (crossings == 2) {
                faces.add(face);
            }
            for (int t = 2; t < count; t++) {
                int[] fan = {0, t - 1, t};
                for (int c = 0; c < 3; c++) {
                    System.arraycopy(polygon, 7 * fan[c], p, 3 * c, 3);
                    System.arraycopy(polygon, 7 * fan[c] + 3, n, 3 * c, 3);
                    v[c] = polygon[7 * fan[c] + 6];
                }
                painter.triangle(p, n, v, ramp, id);
            }
        }

        private static void blend(
                double[] ps, double[] ns, double[] vs, int a, int b, double s, double[] polygon, int slot) {
            for (int d = 0; d < 3; d++) {
                polygon[7 * slot + d] = ps[3 * a + d] + s * (ps[3 * b + d] - ps[3 * a + d]);
                polygon[7 * slot + 3 + d] = ns[3 * a + d] + s * (ns[3 * b + d] - ns[3 * a + d]);
            }
            polygon[7 * slot + 6] = vs[a] + s * (vs[b] - vs[a]);
        }

        private void pick(double[] ps, double[] ns, double[] vs, int from, int to) {
            System.arraycopy(ps, 3 * from, p, 3 * to, 3);
            System.arraycopy(ns, 3 * from, n, 3 * to, 3);
            v[to] = vs[from];
        }
    }
}
