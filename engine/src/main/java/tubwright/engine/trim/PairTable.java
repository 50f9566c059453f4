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

    /** vᵢᵀK₀vⱼ and Σ w NᵢᵀC₀⁻¹Nⱼ over the whole tub, count × count. */
    private double[] stiffness = new double[0];

    private double[] flexibility = new double[0];

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
        table.stiffness = table.stiffness(tub, fields);
        table.flexibility = table.flexibility(tub, fields);
        return table;
    }

    /** vᵢᵀΔK_j u₀, the mean of both ways round, which differ by rounding. */
    private double[] stiffness(LoadedTub tub, List<Field> fields) {
        double[] result = new double[count * count];
        result[0] = tub.compliance();
        for (int j = 1; j < count; j++) {
            Field field = fields.get(j - 1);
            result[j] = field.load();
            result[j * count] = field.load();
            for (Map.Entry<Integer, double[]> each : field.change().laminates().entrySet()) {
                double[] step = Constitutive.minus(each.getValue(), tub.laminate(each.getKey()));
                double[] g = strains.get(each.getKey());
                for (int i = 1; i < count; i++) {
                    half(i, j, Constitutive.trace(step, g, pair(0, i) * Constitutive.ENTRIES), result);
                }
            }
            for (Map.Entry<Integer, Double> each : field.change().joints().entrySet()) {
                double[] work = works.get(each.getKey());
                for (int i = 1; i < count; i++) {
                    half(i, j, (each.getValue() - 1) * work[pair(0, i)], result);
                }
            }
        }
        return result;
    }

    private void half(int i, int j, double value, double[] to) {
        to[i * count + j] += 0.5 * value;
        to[j * count + i] += 0.5 * value;
    }

    /** ∫NᵢC₀⁻¹Nⱼ = −vᵢᵀK₀vⱼ and what the samples' own blocks say; N₀ is square to all others. */
    private double[] flexibility(LoadedTub tub, List<Field> fields) {
        double[] result = new double[count * count];
        result[0] = tub.compliance();
        for (int i = 1; i < count; i++) {
            for (int j = 1; j < count; j++) {
                result[i * count + j] = -stiffness[i * count + j];
            }
        }
        for (int i = 1; i < count; i++) {
            Change change = fields.get(i - 1).change();
            for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
                int b = each.getKey();
                double[] half =
                        Constitutive.product(Constitutive.minus(each.getValue(), tub.laminate(b)), tub.inverse(b));
                for (int j = 1; j < count; j++) {
                    double[] other = fields.get(j - 1).change().laminates().get(b);
                    if (other != null) {
                        double[] weight = Constitutive.product(half, Constitutive.minus(other, tub.laminate(b)));
                        result[i * count + j] += Constitutive.trace(weight, strains.get(b), 0);
                    }
                }
            }
            for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
                for (int j = 1; j < count; j++) {
                    Double other = fields.get(j - 1).change().joints().get(each.getKey());
                    if (other != null) {
                        result[i * count + j] += (each.getValue() - 1) * (other - 1) * works.get(each.getKey())[0];
                    }
                }
            }
        }
        return result;
    }

    /** vᵢᵀK₀vⱼ over the whole tub. */
    double[] stiffness() {
        return stiffness;
    }

    /** Σ w NᵢᵀC₀⁻¹Nⱼ over the whole tub. */
    double[] flexibility() {
        return flexibility;
    }

    /** The rows and columns of some places. */
    double[] energies(int[] places, double[] of) {
        double[] result = new double[places.length * places.length];
        for (int i = 0; i < places.length; i++) {
            for (int j = 0; j < places.length; j++) {
                result[i * places.length + j] = of[places[i] * count + places[j]];
            }
        }
        return result;
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
