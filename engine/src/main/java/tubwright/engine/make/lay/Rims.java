// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.make.surface.Neighbours;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** The edges of sets of elements of a mesh. */
final class Rims {
    private final Mesh mesh;
    /** Element across each side of each element; −1 where there is none. */
    private final int[] across;

    Rims(Mesh mesh) {
        this.mesh = mesh;
        across = Neighbours.of(mesh);
    }

    /** Closed loops of nodes round the elements, anticlockwise seen from outside round the whole. */
    List<int[]> of(int[] elements) {
        boolean[] in = in(elements);
        Map<Integer, List<Integer>> next = new LinkedHashMap<>();
        for (int e : elements) {
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                if (across[4 * e + k] < 0 || !in[across[4 * e + k]]) {
                    next.computeIfAbsent(node(e, k), a -> new ArrayList<>(1)).add(node(e, (k + 1) % n));
                }
            }
        }
        List<int[]> loops = new ArrayList<>();
        for (Integer start : List.copyOf(next.keySet())) {
            while (!next.getOrDefault(start, List.of()).isEmpty()) {
                List<Integer> loop = new ArrayList<>();
                int at = start;
                do {
                    loop.add(at);
                    at = next.get(at).removeLast();
                } while (at != start);
                loops.add(loop.stream().mapToInt(Integer::intValue).toArray());
            }
        }
        return loops;
    }

    /** The sides of elements that make up those loops: node, next node, element beyond it or −1. */
    List<int[]> edges(int[] elements) {
        boolean[] in = in(elements);
        List<int[]> edges = new ArrayList<>();
        for (int e : elements) {
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                int other = across[4 * e + k];
                if (other < 0 || !in[other]) {
                    edges.add(new int[] {node(e, k), node(e, (k + 1) % n), other});
                }
            }
        }
        return edges;
    }

    /** Chains of nodes along which two zones, or the two halves of the car, meet inside the elements. */
    List<int[]> borders(int[] elements) {
        boolean[] in = in(elements);
        Map<Integer, List<Integer>> next = new TreeMap<>();
        for (int e : elements) {
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                int other = across[4 * e + k];
                if (other > e && in[other] && apart(mesh.region(e), mesh.region(other))) {
                    int a = node(e, k);
                    int b = node(e, (k + 1) % n);
                    next.computeIfAbsent(a, i -> new ArrayList<>()).add(b);
                    next.computeIfAbsent(b, i -> new ArrayList<>()).add(a);
                }
            }
        }
        List<int[]> chains = new ArrayList<>();
        // Ends and forks first, so that a chain is not begun in its middle.
        List<Integer> starts = new ArrayList<>(next.keySet());
        starts.sort(Comparator.comparing(n -> next.get(n).size() == 2));
        for (Integer start : starts) {
            while (!next.get(start).isEmpty()) {
                List<Integer> chain = new ArrayList<>(List.of(start));
                Integer at = start;
                do {
                    Integer to = next.get(at).removeLast();
                    next.get(to).remove(at);
                    chain.add(to);
                    at = to;
                } while (next.get(at).size() == 1);
                chains.add(chain.stream().mapToInt(Integer::intValue).toArray());
            }
        }
        return chains;
    }

    private boolean[] in(int[] elements) {
        boolean[] in = new boolean[mesh.elementCount()];
        Arrays.stream(elements).forEach(e -> in[e] = true);
        return in;
    }

    private int node(int e, int k) {
        return mesh.elementNodes()[4 * e + k];
    }

    private static boolean apart(Region a, Region b) {
        return !a.zone().equals(b.zone()) || a.mirrored() != b.mirrored();
    }
}
