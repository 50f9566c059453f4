// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;

/** What must hold of every mesh, whatever the shape. */
final class MeshChecks {
    private MeshChecks() {}

    /** Sound elements, edges shared by two that run opposite ways, and no cracks but between pieces. */
    static void assertSound(Mesh mesh, double leastAngle, String what) {
        Map<Long, Integer> edges = new HashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int c = mesh.cornerCount(e);
            for (int i = 0; i < c; i++) {
                int p = mesh.elementNodes()[4 * e + i];
                int q = mesh.elementNodes()[4 * e + (i + 1) % c];
                assertTrue(p != q, what);
                Integer before = edges.put((long) p << 32 | q, e);
                assertTrue(before == null, what + ": an edge is used twice in one direction");
                double angle = angle(mesh, e, i);
                int at = e;
                assertTrue(
                        angle > leastAngle && angle < 180,
                        () -> what + ": angle " + angle + " at corner of " + describe(mesh, at));
            }
        }
        // Nodes in the same place belong to different pieces or to different parts.
        Map<String, Set<String>> places = new HashMap<>();
        Map<Integer, String> owner = new HashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                int n = mesh.elementNodes()[4 * e + i];
                Region r = mesh.region(e);
                owner.put(
                        n, r.surface() == Region.Surface.SKIN ? r.piece() : r.piece() + "#" + r.part() + r.mirrored());
            }
        }
        owner.forEach((n, name) -> {
            String key = Math.round(mesh.nodes()[3 * n] * 1e7) + " " + Math.round(mesh.nodes()[3 * n + 1] * 1e7) + " "
                    + Math.round(mesh.nodes()[3 * n + 2] * 1e7);
            assertTrue(
                    places.computeIfAbsent(key, k -> new HashSet<>()).add(name),
                    what + ": two nodes of " + name + " at " + key);
        });
        assertEquals(mesh.nodeCount(), owner.size(), what + ": loose nodes");
    }

    static String describe(Mesh mesh, int e) {
        StringBuilder s = new StringBuilder(mesh.region(e).toString());
        for (int i = 0; i < mesh.cornerCount(e); i++) {
            int n = 3 * mesh.elementNodes()[4 * e + i];
            s.append(String.format(" (%.5f, %.5f, %.5f)", mesh.nodes()[n], mesh.nodes()[n + 1], mesh.nodes()[n + 2]));
        }
        return s.toString();
    }

    /** Interior angle at corner i in degrees, measured about the true normal there; over 180 or negative when folded. */
    static double angle(Mesh mesh, int e, int i) {
        int c = mesh.cornerCount(e);
        double[] n = mesh.nodes();
        int o = 3 * mesh.elementNodes()[4 * e + i];
        int p = 3 * mesh.elementNodes()[4 * e + (i + c - 1) % c];
        int q = 3 * mesh.elementNodes()[4 * e + (i + 1) % c];
        double[] u = {n[q] - n[o], n[q + 1] - n[o + 1], n[q + 2] - n[o + 2]};
        double[] v = {n[p] - n[o], n[p + 1] - n[o + 1], n[p + 2] - n[o + 2]};
        double[] w = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
        double[] m = mesh.cornerNormals();
        int k = 12 * e + 3 * i;
        double sin = w[0] * m[k] + w[1] * m[k + 1] + w[2] * m[k + 2];
        double norm = Math.sqrt(w[0] * w[0] + w[1] * w[1] + w[2] * w[2]);
        double cos = u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
        return Math.toDegrees(Math.atan2(Math.copySign(norm, sin), cos));
    }

    static double leastAngle(Mesh mesh) {
        double least = 180;
        for (int e = 0; e < mesh.elementCount(); e++) {
            for (int i = 0; i < mesh.cornerCount(e); i++) {
                least = Math.min(least, angle(mesh, e, i));
            }
        }
        return least;
    }

    static double area(Mesh mesh, IntPredicate which) {
        double sum = 0;
        for (int e = 0; e < mesh.elementCount(); e++) {
            sum += which.test(e) ? mesh.area(e) : 0;
        }
        return sum;
    }

    /** Every node has its exact mirror image. */
    static void assertSymmetric(Mesh mesh, String what) {
        Map<String, Integer> count = new HashMap<>();
        for (int n = 0; n < mesh.nodeCount(); n++) {
            count.merge(key(mesh, n, 1), 1, Integer::sum);
        }
        for (int n = 0; n < mesh.nodeCount(); n++) {
            assertEquals(count.get(key(mesh, n, 1)), count.get(key(mesh, n, -1)), what);
        }
    }

    private static String key(Mesh mesh, int n, double sign) {
        return mesh.nodes()[3 * n] + " " + (sign * mesh.nodes()[3 * n + 1] + 0.0) + " " + mesh.nodes()[3 * n + 2];
    }
}
