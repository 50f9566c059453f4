// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * What fields do with each other in single blocks and joints: Gramians Σ w ε_i ε_jᵀ and works v_iᵀ K_part v_j of every
 * pair. Field 0 is the nominal solution. Immutable.
 */
final class PairTable {
    private final int count;
    private final Map<Field, Integer> index = new HashMap<>();
    private final Map<Integer, double[]> strains = new TreeMap<>();
    private final Map<Integer, double[]> works = new TreeMap<>();

    private PairTable(List<Field> fields) {
        count = fields.size() + 1;
        for (Field field : fields) {
            index.put(field, index.size() + 1);
        }
    }

    /** Computes the pairs of fields of a tub in the blocks and joints given. */
    static PairTable of(LoadedTub tub, List<Field> fields, Set<Integer> blocks, Set<Integer> joints) {
        PairTable table = new PairTable(fields);
        double[][] all = new double[table.count][];
        all[0] = tub.displacements();
        for (int i = 1; i < all.length; i++) {
            all[i] = fields.get(i - 1).displacements();
        }
        int[] list = blocks.stream().mapToInt(Integer::intValue).toArray();
        double[][] gramians = tub.gramians(list, all);
        for (int k = 0; k < list.length; k++) {
            table.strains.put(list[k], gramians[k]);
        }
        int[] parts = joints.stream().mapToInt(Integer::intValue).toArray();
        double[][] works = new double[parts.length][];
        IntStream.range(0, parts.length)
                .parallel()
                .forEach(k -> works[k] = tub.members().between(parts[k], all));
        for (int k = 0; k < parts.length; k++) {
            table.works.put(parts[k], works[k]);
        }
        return table;
    }

    /** Whether it knows all these fields, blocks and joints. */
    boolean covers(List<Field> fields, Set<Integer> blocks, Set<Integer> joints) {
        return index.keySet().containsAll(fields)
                && strains.keySet().containsAll(blocks)
                && works.keySet().containsAll(joints);
    }

    /** Places of fields in the table, the nominal one first. */
    int[] places(List<Field> fields) {
        int[] places = new int[fields.size() + 1];
        for (int i = 1; i < places.length; i++) {
            places[i] = index.get(fields.get(i - 1));
        }
        return places;
    }

    /** Gramians of a block, 41 numbers at 41 times {@link #pair}. */
    double[] strains(int block) {
        return strains.get(block);
    }

    /** Works of a joint at {@link #pair}. */
    double[] works(int part) {
        return works.get(part);
    }

    /** Where the pair of the fields at places i ≤ j stands. */
    int pair(int i, int j) {
        return i * count - i * (i - 1) / 2 + j - i;
    }

    /** Bytes it holds. */
    long bytes() {
        return 8
                * (strains.values().stream().mapToLong(s -> s.length).sum()
                        + works.values().stream().mapToLong(w -> w.length).sum());
    }
}
