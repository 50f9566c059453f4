// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Structure;

/**
 * Where the mesh is too coarse for a margin to mean much, and the element size that would settle it.
 *
 * <p>At an insert (inside its footprint or within one element of it) two elements a radius are asked for; on a patch two
 * elements across its narrow way, which is twice its area over its outline (the width of a band, the radius of a disc). These
 * counts are a rule of practice, no source.
 */
final class Resolution {
    private final boolean[] atInsert;
    /** Size that would settle it, m; 0 where the mesh is fine enough. */
    private final float[] asked;

    Resolution(Structure structure) {
        Mesh mesh = structure.mesh();
        int elements = mesh.elementCount();
        atInsert = new boolean[elements];
        asked = new float[elements];
        Map<String, Double> patches = patches(mesh);
        for (int e = 0; e < elements; e++) {
            double size = Math.sqrt(mesh.area(e));
            double[] x = PlyReserves.centre(mesh, e);
            double wanted = Double.POSITIVE_INFINITY;
            for (Hardpoint h : structure.hardpoints()) {
                double[] p = h.position();
                double d = Math.hypot(Math.hypot(x[0] - p[0], x[1] - p[1]), x[2] - p[2]);
                if (d < h.footprintRadius() + size) {
                    atInsert[e] = true;
                    wanted = Math.min(wanted, h.footprintRadius() / 2);
                }
            }
            List<String> own = mesh.region(e).patches();
            for (String patch : own) {
                wanted = Math.min(wanted, patches.getOrDefault(patch, Double.POSITIVE_INFINITY));
            }
            // A mesh of a nominal size has elements a little larger here and there.
            asked[e] = size > 1.15 * wanted ? (float) wanted : 0;
        }
    }

    /** Whether stress at an element depends on the mesh: at an insert always, on a patch where it is coarse for it. */
    boolean doubtful(int element) {
        return atInsert[element] || asked[element] > 0;
    }

    /** Element size that would settle it, m; 0 where no finer mesh is asked for (at an insert a test then). */
    double settledBy(int element) {
        return asked[element];
    }

    /** Area over outline of each patch, m: half its width. */
    private static Map<String, Double> patches(Mesh mesh) {
        Map<String, double[]> sums = new HashMap<>();
        Map<Long, List<String>> open = new HashMap<>();
        Map<Long, Double> lengths = new HashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            List<String> own = mesh.region(e).patches();
            if (own.isEmpty()) {
                continue;
            }
            for (String patch : own) {
                sums.computeIfAbsent(patch, k -> new double[2])[0] += mesh.area(e);
            }
            int corners = mesh.cornerCount(e);
            for (int c = 0; c < corners; c++) {
                int a = mesh.elementNodes()[4 * e + c];
                int b = mesh.elementNodes()[4 * e + (c + 1) % corners];
                long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
                List<String> other = open.remove(key);
                if (other == null) {
                    open.put(key, own);
                    lengths.put(key, length(mesh, a, b));
                } else {
                    outline(sums, own, other, lengths.get(key));
                    outline(sums, other, own, lengths.get(key));
                }
            }
        }
        open.forEach((key, own) -> outline(sums, own, List.of(), lengths.get(key)));
        Map<String, Double> half = new HashMap<>();
        sums.forEach((patch, s) -> half.put(patch, s[1] > 0 ? s[0] / s[1] : Double.POSITIVE_INFINITY));
        return half;
    }

    private static void outline(Map<String, double[]> sums, List<String> own, List<String> beyond, double length) {
        for (String patch : own) {
            if (!beyond.contains(patch)) {
                sums.get(patch)[1] += length;
            }
        }
    }

    private static double length(Mesh mesh, int a, int b) {
        double[] x = mesh.nodes();
        return Math.hypot(Math.hypot(x[3 * a] - x[3 * b], x[3 * a + 1] - x[3 * b + 1]), x[3 * a + 2] - x[3 * b + 2]);
    }
}
