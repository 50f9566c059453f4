// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Gathers elements of all parts into one {@link Mesh}: gives every piece its own nodes along seams, and strings edges
 * into named lines.
 */
final class MeshBuilder {
    /** Edges of a named line that is being gathered: base nodes and piece of the element beside each. */
    private static final class Gathered {
        final MeshLine.Kind kind;
        final String from;
        final String onto;
        final Ints edges = new Ints();

        Gathered(MeshLine.Kind kind, String from, String onto) {
            this.kind = kind;
            this.from = from;
            this.onto = onto;
        }
    }

    private double[] nodes = new double[3 * 1024];
    private int nodeCount;
    private int[] corners = new int[4 * 1024];
    private double[] normals = new double[12 * 1024];
    private double[] directions = new double[3 * 1024];
    private int[] regions = new int[1024];
    private int[] pieces = new int[1024];
    private int elementCount;
    private final Map<Region, Integer> regionNumber = new LinkedHashMap<>();
    private final Map<String, Integer> pieceNumber = new LinkedHashMap<>();
    private final Map<String, Gathered> lines = new LinkedHashMap<>();

    int addNode(double x, double y, double z) {
        if (3 * nodeCount == nodes.length) {
            nodes = Arrays.copyOf(nodes, 2 * nodes.length);
        }
        nodes[3 * nodeCount] = x;
        nodes[3 * nodeCount + 1] = y;
        nodes[3 * nodeCount + 2] = z;
        return nodeCount++;
    }

    int region(Region region) {
        return regionNumber.computeIfAbsent(region, r -> regionNumber.size());
    }

    int piece(String name) {
        return pieceNumber.computeIfAbsent(name, r -> pieceNumber.size());
    }

    int elements() {
        return elementCount;
    }

    int pieceOf(int element) {
        return pieces[element];
    }

    int corner(int element, int i) {
        return corners[4 * element + i];
    }

    /** Adds an element; normals holds 12, direction 3 numbers, copied. */
    void addElement(int[] c, double[] normal, double[] direction, int region, int piece) {
        if (elementCount == regions.length) {
            int n = 2 * elementCount;
            corners = Arrays.copyOf(corners, 4 * n);
            normals = Arrays.copyOf(normals, 12 * n);
            directions = Arrays.copyOf(directions, 3 * n);
            regions = Arrays.copyOf(regions, n);
            pieces = Arrays.copyOf(pieces, n);
        }
        System.arraycopy(c, 0, corners, 4 * elementCount, 4);
        System.arraycopy(normal, 0, normals, 12 * elementCount, 12);
        System.arraycopy(direction, 0, directions, 3 * elementCount, 3);
        regions[elementCount] = region;
        pieces[elementCount] = piece;
        elementCount++;
    }

    /** Adds the edge between two base nodes, as the piece's own, to a line. */
    void addEdge(String line, MeshLine.Kind kind, String from, String onto, int p, int q, int piece) {
        Ints edges = lines.computeIfAbsent(line, n -> new Gathered(kind, from, onto)).edges;
        edges.add(p);
        edges.add(q);
        edges.add(piece);
    }

    /** Finds seams: edges between elements of different pieces among the elements so far. */
    void seams(List<String> order) {
        KeyMap first = new KeyMap(2 * elementCount);
        String[] names = pieceNumber.keySet().toArray(String[]::new);
        for (int e = 0; e < elementCount; e++) {
            int c = corners[4 * e + 3] < 0 ? 3 : 4;
            for (int i = 0; i < c; i++) {
                int p = corners[4 * e + i];
                int q = corners[4 * e + (i + 1) % c];
                long key = KeyMap.pair(p, q);
                int f = first.get(key);
                if (f < 0) {
                    first.put(key, e);
                } else if (pieces[f] != pieces[e]) {
                    String a = names[pieces[e]];
                    String b = names[pieces[f]];
                    boolean swap = order.indexOf(b) < order.indexOf(a);
                    String from = swap ? b : a;
                    String onto = swap ? a : b;
                    addEdge(from + " / " + onto, MeshLine.Kind.SEAM, from, onto, p, q, pieceNumber.get(from));
                }
            }
        }
    }

    Mesh build() {
        int base = nodeCount;
        int[] owner = new int[base];
        Arrays.fill(owner, -1);
        KeyMap own = new KeyMap(1024);
        for (int e = 0; e < elementCount; e++) {
            for (int i = 0; i < 4; i++) {
                int n = corners[4 * e + i];
                if (n < 0) {
                    continue;
                }
                if (owner[n] < 0) {
                    owner[n] = pieces[e];
                } else if (owner[n] != pieces[e]) {
                    long key = (long) n << 20 | pieces[e];
                    int copy = own.get(key);
                    if (copy < 0) {
                        copy = addNode(nodes[3 * n], nodes[3 * n + 1], nodes[3 * n + 2]);
                        own.put(key, copy);
                    }
                    corners[4 * e + i] = copy;
                }
            }
        }
        List<MeshLine> out = new ArrayList<>();
        lines.forEach((name, g) -> {
            int[] edges = new int[g.edges.size / 3 * 2];
            for (int i = 0; i < edges.length / 2; i++) {
                int piece = g.edges.at[3 * i + 2];
                edges[2 * i] = owned(g.edges.at[3 * i], piece, owner, own);
                edges[2 * i + 1] = owned(g.edges.at[3 * i + 1], piece, owner, own);
            }
            out.add(new MeshLine(name, g.kind, g.from, g.onto, Chains.string(edges)));
        });
        return new Mesh(
                Arrays.copyOf(nodes, 3 * nodeCount),
                Arrays.copyOf(corners, 4 * elementCount),
                Arrays.copyOf(normals, 12 * elementCount),
                Arrays.copyOf(directions, 3 * elementCount),
                Arrays.copyOf(regions, elementCount),
                List.copyOf(regionNumber.keySet()),
                out);
    }

    private static int owned(int n, int piece, int[] owner, KeyMap own) {
        return owner[n] == piece ? n : own.get((long) n << 20 | piece);
    }
}
