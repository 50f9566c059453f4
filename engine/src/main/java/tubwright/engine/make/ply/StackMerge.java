// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.ply;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;

/**
 * One order of laying for all zones of a piece: a ply that two zones both have at the same place of their order runs
 * through both. Stacks are matched from the outer face inward up to the core, and from the inner face outward down to it
 * (the longest common subsequence, early matches first); a stack without core is parted at its middle.
 */
final class StackMerge {
    /** A layer of the whole order, with the index of the layer it is in every zone that has it. */
    record Entry(Layer layer, Map<String, Integer> inZone) {}

    private final List<Entry> outer = new ArrayList<>();
    private final List<Entry> cores = new ArrayList<>();
    /** From the inner face outward. */
    private final List<Entry> inner = new ArrayList<>();

    void add(String zone, List<Layer> layers) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).role() == LayerRole.CORE) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        if (first < 0) {
            first = (layers.size() + 1) / 2;
            last = first - 1;
        }
        List<Integer> out = new ArrayList<>();
        List<Integer> mid = new ArrayList<>();
        List<Integer> in = new ArrayList<>();
        for (int i = 0; i < layers.size(); i++) {
            (i < first ? out : i <= last ? mid : in).add(i);
        }
        merge(outer, zone, layers, out);
        merge(cores, zone, layers, mid);
        merge(inner, zone, layers, in.reversed());
    }

    /** From the mould inward. */
    List<Entry> order() {
        List<Entry> all = new ArrayList<>(outer);
        all.addAll(cores);
        all.addAll(inner.reversed());
        return all;
    }

    private static void merge(List<Entry> into, String zone, List<Layer> layers, List<Integer> taken) {
        int n = into.size();
        int m = taken.size();
        int[][] longest = new int[n + 1][m + 1];
        for (int i = n - 1; i >= 0; i--) {
            for (int j = m - 1; j >= 0; j--) {
                longest[i][j] = same(into.get(i).layer(), layers.get(taken.get(j)))
                        ? longest[i + 1][j + 1] + 1
                        : Math.max(longest[i + 1][j], longest[i][j + 1]);
            }
        }
        List<Entry> merged = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < n || j < m) {
            if (i < n && j < m && same(into.get(i).layer(), layers.get(taken.get(j)))) {
                into.get(i).inZone().put(zone, taken.get(j++));
                merged.add(into.get(i++));
            } else if (j == m || i < n && longest[i + 1][j] >= longest[i][j + 1]) {
                merged.add(into.get(i++));
            } else {
                Map<String, Integer> own = new LinkedHashMap<>();
                own.put(zone, taken.get(j));
                merged.add(new Entry(layers.get(taken.get(j++)), own));
            }
        }
        into.clear();
        into.addAll(merged);
    }

    private static boolean same(Layer a, Layer b) {
        return a.material().name().equals(b.material().name())
                && a.role() == b.role()
                && Math.abs(a.thickness() - b.thickness()) < 1e-9
                && Math.abs(Math.IEEEremainder(a.angle() - b.angle(), Math.PI)) < 1e-6;
    }
}
