// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The lowest reserve factor of every element over all load cases: fibres (yield of metals) and sandwich at design values.
 * First cracks between fibres, joints and inserts are not in it.
 *
 * @param factor per element; infinite where nothing fails
 * @param mode per element, index into {@code modes}; -1 where nothing fails
 * @param load per element, index into {@code loads}; -1 likewise
 * @param modes manners of giving way that occur, the one that governs most elements first
 * @param loads the load cases
 */
public record ReserveMap(double[] factor, int[] mode, int[] load, List<String> modes, List<String> loads) {
    public ReserveMap {
        modes = List.copyOf(modes);
        loads = List.copyOf(loads);
    }

    /** Collects the lowest. */
    static final class Builder {
        private final double[] factor;
        private final int[] mode;
        private final int[] load;
        private final List<String> modes = new ArrayList<>();
        private final List<String> loads;

        Builder(int elements, List<String> loads) {
            factor = new double[elements];
            mode = new int[elements];
            load = new int[elements];
            Arrays.fill(factor, Double.POSITIVE_INFINITY);
            Arrays.fill(mode, -1);
            Arrays.fill(load, -1);
            this.loads = loads;
        }

        /** A factor found at an element in a case, kept if it is the lowest so far. */
        void lower(int element, int c, double value, String words) {
            if (value < factor[element]) {
                factor[element] = value;
                load[element] = c;
                int index = modes.indexOf(words);
                if (index < 0) {
                    index = modes.size();
                    modes.add(words);
                }
                mode[element] = index;
            }
        }

        /** The map, with the modes that are left ordered by the number of elements they govern. */
        ReserveMap build() {
            int[] count = new int[modes.size()];
            for (int m : mode) {
                if (m >= 0) {
                    count[m]++;
                }
            }
            List<Integer> order = new ArrayList<>();
            for (int m = 0; m < count.length; m++) {
                if (count[m] > 0) {
                    order.add(m);
                }
            }
            order.sort((a, b) -> Integer.compare(count[b], count[a]));
            int[] sorted = new int[mode.length];
            for (int e = 0; e < mode.length; e++) {
                sorted[e] = mode[e] < 0 ? -1 : order.indexOf(mode[e]);
            }
            return new ReserveMap(
                    factor, sorted, load, order.stream().map(modes::get).toList(), loads);
        }
    }
}
