// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.mesh.Mesh;

/** Where plies end inside their piece, and which of them on one line. */
final class DropOffs {
    /** A later ply is stepped back by so many times its thickness: common practice, no source. */
    static final double STEP = 20;

    /** Share of its inner edge a ply must have in common with another to be said to end with it. */
    private static final double COMMON = 0.3;

    private DropOffs() {}

    /**
     * The inner edge of a ply.
     *
     * @param ply which
     * @param length of it, m
     * @param from least station, m
     * @param to largest, m
     * @param together names of earlier plies that end on the same line
     * @param step back from those, m
     */
    record End(DrapedPly ply, double length, double from, double to, List<String> together, double step) {}

    /** Of all plies of a piece, films left out. */
    static List<End> of(Mesh mesh, List<DrapedPly> piece) {
        Map<Long, Integer> all = new LinkedHashMap<>();
        Set<Integer> seen = new HashSet<>();
        for (DrapedPly p : piece) {
            for (int e : p.ply().elements()) {
                if (seen.add(e)) {
                    count(mesh, e, all);
                }
            }
        }
        Map<DrapedPly, Set<Long>> inner = new LinkedHashMap<>();
        for (DrapedPly p : piece) {
            if (p.ply().role() != LayerRole.PLY) {
                continue;
            }
            Map<Long, Integer> own = new LinkedHashMap<>();
            for (int e : p.ply().elements()) {
                count(mesh, e, own);
            }
            Set<Long> edges = new HashSet<>();
            own.forEach((edge, n) -> {
                if (n == 1 && all.get(edge) > 1) {
                    edges.add(edge);
                }
            });
            if (!edges.isEmpty()) {
                inner.put(p, edges);
            }
        }
        List<End> ends = new ArrayList<>();
        List<DrapedPly> earlier = new ArrayList<>();
        inner.forEach((p, edges) -> {
            double length = 0;
            double from = Double.POSITIVE_INFINITY;
            double to = Double.NEGATIVE_INFINITY;
            // Edges in the order of their numbers, so that sums have the same last digit every time.
            for (long edge : edges.stream().sorted().toList()) {
                int a = 3 * (int) (edge >> 32);
                int b = 3 * (int) edge;
                double[] x = mesh.nodes();
                length += Math.sqrt(square(x[a] - x[b]) + square(x[a + 1] - x[b + 1]) + square(x[a + 2] - x[b + 2]));
                from = Math.min(from, Math.min(x[a], x[b]));
                to = Math.max(to, Math.max(x[a], x[b]));
            }
            List<String> together = earlier.stream()
                    .filter(q -> inner.get(q).stream().filter(edges::contains).count() > COMMON * edges.size())
                    .map(q -> q.ply().name())
                    .toList();
            ends.add(new End(p, length, from, to, together, STEP * p.ply().thickness()));
            earlier.add(p);
        });
        return ends;
    }

    private static double square(double v) {
        return v * v;
    }

    private static void count(Mesh mesh, int e, Map<Long, Integer> into) {
        int corners = mesh.cornerCount(e);
        for (int c = 0; c < corners; c++) {
            int a = mesh.elementNodes()[4 * e + c];
            int b = mesh.elementNodes()[4 * e + (c + 1) % corners];
            into.merge((long) Math.min(a, b) << 32 | Math.max(a, b), 1, Integer::sum);
        }
    }
}
