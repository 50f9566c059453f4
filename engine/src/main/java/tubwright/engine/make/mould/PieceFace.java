// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * The outer face of a piece: the elements of a mesh that belong to it.
 *
 * @param piece name
 * @param mesh whole
 * @param elements of it
 */
public record PieceFace(String piece, Mesh mesh, int[] elements) {
    /** The pieces of a mesh, in the order in which they come. */
    public static List<PieceFace> all(Mesh mesh) {
        Map<String, List<Integer>> byPiece = new LinkedHashMap<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            byPiece.computeIfAbsent(mesh.region(e).piece(), p -> new ArrayList<>())
                    .add(e);
        }
        return byPiece.entrySet().stream()
                .map(p -> new PieceFace(
                        p.getKey(),
                        mesh,
                        p.getValue().stream().mapToInt(Integer::intValue).toArray()))
                .toList();
    }

    /** Whether it is a flat wall, made on a plate. */
    public boolean plate() {
        return Arrays.stream(elements).allMatch(e -> mesh.region(e).surface() == Region.Surface.WALL);
    }

    /** Area, m². */
    public double area() {
        return Arrays.stream(elements).mapToDouble(mesh::area).sum();
    }

    /** The piece as a mesh of its own, its points numbered anew. */
    public Mesh alone() {
        int[] number = new int[mesh.nodeCount()];
        Arrays.fill(number, -1);
        int count = 0;
        double[] nodes = new double[mesh.nodes().length];
        int[] corners = new int[4 * elements.length];
        double[] normals = new double[12 * elements.length];
        double[] references = new double[3 * elements.length];
        int[] regions = new int[elements.length];
        for (int i = 0; i < elements.length; i++) {
            int e = elements[i];
            corners[4 * i + 3] = -1;
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                int node = mesh.elementNodes()[4 * e + k];
                if (number[node] < 0) {
                    number[node] = count;
                    System.arraycopy(mesh.nodes(), 3 * node, nodes, 3 * count++, 3);
                }
                corners[4 * i + k] = number[node];
            }
            System.arraycopy(mesh.cornerNormals(), 12 * e, normals, 12 * i, 12);
            System.arraycopy(mesh.referenceDirections(), 3 * e, references, 3 * i, 3);
            regions[i] = mesh.elementRegions()[e];
        }
        return new Mesh(
                Arrays.copyOf(nodes, 3 * count), corners, normals, references, regions, mesh.regions(), List.of());
    }

    /**
     * Size along three directions, m: across twice, then along the last, which is kept; the first two are turned about it
     * so that the first lies along the tub as far as it can.
     */
    public double[] size(double[] along) {
        double[] first = {1 - along[0] * along[0], -along[0] * along[1], -along[0] * along[2]};
        double l = Math.sqrt(dot(first, first));
        if (l < 0.1) {
            first = new double[] {-along[1] * along[0], 1 - along[1] * along[1], -along[1] * along[2]};
            l = Math.sqrt(dot(first, first));
        }
        for (int i = 0; i < 3; i++) {
            first[i] /= l;
        }
        double[] second = {
            along[1] * first[2] - along[2] * first[1],
            along[2] * first[0] - along[0] * first[2],
            along[0] * first[1] - along[1] * first[0]
        };
        double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
        double[] high = {-Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        double[][] axes = {first, second, along};
        for (int e : elements) {
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                int n = 3 * mesh.elementNodes()[4 * e + k];
                for (int i = 0; i < 3; i++) {
                    double v = mesh.nodes()[n] * axes[i][0]
                            + mesh.nodes()[n + 1] * axes[i][1]
                            + mesh.nodes()[n + 2] * axes[i][2];
                    low[i] = Math.min(low[i], v);
                    high[i] = Math.max(high[i], v);
                }
            }
        }
        return new double[] {high[0] - low[0], high[1] - low[1], high[2] - low[2]};
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
