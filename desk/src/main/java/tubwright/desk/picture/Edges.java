// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.mesh.Region;

/** The edges of a mesh that a draughtsman would draw. */
public final class Edges {
    /** What an edge is, from the boldest to the faintest. */
    public enum Kind {
        /** Edge of an opening, or a free end of the tub. */
        RIM,
        /** Boundary between pieces. */
        SEAM,
        /** Where a wall meets the skin. */
        WALL,
        /** Sharp bend of the surface. */
        CREASE,
        /** Boundary between zones on smooth surface. */
        ZONE
    }

    /**
     * One edge.
     *
     * @param a node
     * @param b node
     * @param kind what it is
     * @param onWall whether it belongs to a wall only
     * @param element one of the elements beside it
     */
    public record Edge(int a, int b, Kind kind, boolean onWall, int element) {}

    private static final double SHARP = Math.cos(Math.toRadians(24));

    private Edges() {}

    /** All edges of {@code mesh} worth drawing, faintest kinds first. */
    public static List<Edge> of(Mesh mesh) {
        int elements = mesh.elementCount();
        long[] keys = new long[4 * elements];
        int count = 0;
        for (int e = 0; e < elements; e++) {
            int corners = mesh.cornerCount(e);
            for (int i = 0; i < corners; i++) {
                count++;
                keys[count - 1] = key(mesh.elementNodes()[4 * e + i], mesh.elementNodes()[4 * e + (i + 1) % corners]);
            }
        }
        // Sorting positions by key brings the elements that share an edge together. Node pairs fit 64 bits; the
        // element's number rides in a second array sorted along by packing ranks.
        long[] distinct = Arrays.copyOf(keys, count);
        Arrays.sort(distinct);
        int[] first = new int[count];
        int[] second = new int[count];
        int[] uses = new int[count];
        int at = 0;
        for (int e = 0; e < elements; e++) {
            int corners = mesh.cornerCount(e);
            for (int i = 0; i < corners; i++) {
                int slot = lowest(distinct, keys[at++]);
                if (uses[slot] == 0) {
                    first[slot] = e;
                } else if (uses[slot] == 1) {
                    second[slot] = e;
                }
                uses[slot]++;
            }
        }
        Map<Long, MeshLine.Kind> named = named(mesh);
        List<Edge> edges = new ArrayList<>();
        for (int slot = 0; slot < count; slot++) {
            if (uses[slot] > 0) {
                add(mesh, distinct[slot], uses[slot], first[slot], second[slot], named, edges);
            }
        }
        edges.sort((p, q) -> q.kind().compareTo(p.kind()));
        return edges;
    }

    private static void add(
            Mesh mesh, long key, int uses, int first, int second, Map<Long, MeshLine.Kind> named, List<Edge> edges) {
        boolean firstWall = mesh.region(first).surface() == Region.Surface.WALL;
        boolean onWall = firstWall && (uses < 2 || mesh.region(second).surface() == Region.Surface.WALL);
        Kind kind = null;
        MeshLine.Kind line = named.get(key);
        if (line == MeshLine.Kind.OPENING_EDGE) {
            kind = Kind.RIM;
        } else if (line == MeshLine.Kind.SEAM) {
            kind = Kind.SEAM;
        } else if (line == MeshLine.Kind.WALL_EDGE) {
            kind = Kind.WALL;
        } else if (uses == 1) {
            kind = onWall ? Kind.WALL : Kind.RIM;
        } else if (firstWall != (mesh.region(second).surface() == Region.Surface.WALL) || uses > 2) {
            kind = Kind.WALL;
        } else if (bend(mesh, first, second) < SHARP) {
            kind = Kind.CREASE;
        } else if (!mesh.region(first).zone().equals(mesh.region(second).zone())
                || !mesh.region(first).patches().equals(mesh.region(second).patches())) {
            kind = Kind.ZONE;
        }
        if (kind != null) {
            edges.add(new Edge((int) (key >>> 32), (int) key, kind, onWall, first));
        }
    }

    private static Map<Long, MeshLine.Kind> named(Mesh mesh) {
        Map<Long, MeshLine.Kind> result = new HashMap<>();
        for (MeshLine line : mesh.lines()) {
            boolean wanted = switch (line.kind()) {
                case OPENING_EDGE, SEAM, WALL_EDGE -> true;
                case CORNER, STATION -> false;
            };
            if (!wanted) {
                continue;
            }
            for (int[] chain : line.chains()) {
                for (int i = 1; i < chain.length; i++) {
                    result.put(key(chain[i - 1], chain[i]), line.kind());
                }
            }
        }
        return result;
    }

    /** Cosine of the angle between the faces of two elements. */
    private static double bend(Mesh mesh, int e, int f) {
        double[] n = facing(mesh, e);
        double[] m = facing(mesh, f);
        return n[0] * m[0] + n[1] * m[1] + n[2] * m[2];
    }

    private static double[] facing(Mesh mesh, int e) {
        double[] x = mesh.nodes();
        int a = 3 * mesh.elementNodes()[4 * e];
        int b = 3 * mesh.elementNodes()[4 * e + 1];
        int c = 3 * mesh.elementNodes()[4 * e + 2];
        int d = mesh.isTriangle(e) ? a : 3 * mesh.elementNodes()[4 * e + 3];
        double px = x[c] - x[a];
        double py = x[c + 1] - x[a + 1];
        double pz = x[c + 2] - x[a + 2];
        double qx = x[d] - x[b];
        double qy = x[d + 1] - x[b + 1];
        double qz = x[d + 2] - x[b + 2];
        double nx = py * qz - pz * qy;
        double ny = pz * qx - px * qz;
        double nz = px * qy - py * qx;
        double length = Math.max(1e-300, Math.sqrt(nx * nx + ny * ny + nz * nz));
        return new double[] {nx / length, ny / length, nz / length};
    }

    private static int lowest(long[] sorted, long key) {
        int low = 0;
        int high = sorted.length - 1;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < key) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static long key(int a, int b) {
        return (long) Math.min(a, b) << 32 | Math.max(a, b);
    }
}
