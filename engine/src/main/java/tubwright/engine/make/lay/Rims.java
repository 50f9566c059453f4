// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tubwright.engine.mesh.Mesh;

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

    private static long key(int a, int b) {
        return ((long) a << 32) | b;
    }
}
