// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tubwright.engine.make.surface.Neighbours;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** Where the pieces of a skin end: along which neighbour each edge runs, or that it is open. */
public final class SplitLines {
    private static final double ONE = 1e-6;

    private final Mesh mesh;
    private final int[] across;
    private final Map<Place, Set<String>> piecesAt = new HashMap<>();
    private final double front;
    private final double rear;

    /** For all pieces of a mesh. */
    public SplitLines(Mesh mesh) {
        this.mesh = mesh;
        across = Neighbours.of(mesh);
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (int e = 0; e < mesh.elementCount(); e++) {
            if (mesh.region(e).surface() != Region.Surface.SKIN) {
                continue;
            }
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                int node = mesh.elementNodes()[4 * e + k];
                piecesAt.computeIfAbsent(place(node), p -> new LinkedHashSet<>())
                        .add(mesh.region(e).piece());
                from = Math.min(from, mesh.nodes()[3 * node]);
                to = Math.max(to, mesh.nodes()[3 * node]);
            }
        }
        front = from;
        rear = to;
    }

    private record Place(long x, long y, long z) {}

    private Place place(int node) {
        double[] x = mesh.nodes();
        return new Place(
                Math.round(x[3 * node] / ONE), Math.round(x[3 * node + 1] / ONE), Math.round(x[3 * node + 2] / ONE));
    }

    /**
     * An edge of a piece between two of its nodes.
     *
     * @param from node
     * @param to node
     * @param beside the neighbouring piece, "front end", "rear end" or "opening"
     */
    public record Edge(int from, int to, String beside) {}

    /** The edges of a piece, anticlockwise seen from outside. */
    public List<Edge> of(PieceFace piece) {
        Set<Integer> own = new HashSet<>();
        for (int e : piece.elements()) {
            own.add(e);
        }
        List<Edge> edges = new ArrayList<>();
        for (int e : piece.elements()) {
            int sides = mesh.cornerCount(e);
            for (int k = 0; k < sides; k++) {
                int other = across[4 * e + k];
                if (other < 0 || !own.contains(other)) {
                    int a = mesh.elementNodes()[4 * e + k];
                    int b = mesh.elementNodes()[4 * e + (k + 1) % sides];
                    edges.add(new Edge(a, b, beside(piece.piece(), a, b)));
                }
            }
        }
        return edges;
    }

    private String beside(String piece, int a, int b) {
        Set<String> both = new LinkedHashSet<>(piecesAt.getOrDefault(place(a), Set.of()));
        both.retainAll(piecesAt.getOrDefault(place(b), Set.of()));
        both.remove(piece);
        if (!both.isEmpty()) {
            return both.iterator().next();
        }
        double xa = mesh.nodes()[3 * a];
        double xb = mesh.nodes()[3 * b];
        if (Math.max(xa, xb) < front + ONE) {
            return "front end";
        }
        return Math.min(xa, xb) > rear - ONE ? "rear end" : "opening";
    }

    /** Length of the edges of a piece by what lies beside them, m. */
    public Map<String, Double> lengths(PieceFace piece) {
        Map<String, Double> lengths = new LinkedHashMap<>();
        double[] x = mesh.nodes();
        for (Edge each : of(piece)) {
            int a = 3 * each.from();
            int b = 3 * each.to();
            double dx = x[b] - x[a];
            double dy = x[b + 1] - x[a + 1];
            double dz = x[b + 2] - x[a + 2];
            lengths.merge(each.beside(), Math.sqrt(dx * dx + dy * dy + dz * dz), Double::sum);
        }
        return lengths;
    }
}
