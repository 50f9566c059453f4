// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/** The edges of a set of mesh elements. */
final class Rims {
    private Rims() {}

    /** Closed loops of nodes round the elements, anticlockwise seen from outside round the whole. */
    static List<int[]> of(Mesh mesh, int[] elements) {
        Set<Long> sides = new HashSet<>();
        for (int e : elements) {
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                sides.add(key(mesh.elementNodes()[4 * e + k], mesh.elementNodes()[4 * e + (k + 1) % n]));
            }
        }
        Map<Integer, List<Integer>> next = new HashMap<>();
        for (long side : sides) {
            int a = (int) (side >> 32);
            int b = (int) side;
            if (!sides.contains(key(b, a))) {
                next.computeIfAbsent(a, k -> new ArrayList<>()).add(b);
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

    /** Chains of nodes along which two zones, or the two halves of the car, meet inside the elements. */
    static List<int[]> borders(Mesh mesh, int[] elements) {
        Map<Long, Integer> owner = new HashMap<>();
        for (int e : elements) {
            int n = mesh.cornerCount(e);
            for (int k = 0; k < n; k++) {
                owner.put(key(mesh.elementNodes()[4 * e + k], mesh.elementNodes()[4 * e + (k + 1) % n]), e);
            }
        }
        Map<Integer, List<Integer>> next = new TreeMap<>();
        owner.forEach((side, e) -> {
            int a = (int) (side >> 32);
            int b = side.intValue();
            Integer other = owner.get(key(b, a));
            if (other != null && e < other && apart(mesh.region(e), mesh.region(other))) {
                next.computeIfAbsent(a, k -> new ArrayList<>()).add(b);
                next.computeIfAbsent(b, k -> new ArrayList<>()).add(a);
            }
        });
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

    private static boolean apart(Region a, Region b) {
        return !a.zone().equals(b.zone()) || a.mirrored() != b.mirrored();
    }

    private static long key(int a, int b) {
        return ((long) a << 32) | b;
    }
}
