// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A changed compliance between two sides of a small dense problem, for any change within a set of blocks and joints.
 *
 * <p>Fields: the nominal u₀ and v_j = K₀⁻¹ ΔK_j u₀ of sample changes j. Below: the largest 2fᵀv − vᵀKv over
 * combinations v of all fields. Above: the stresses N₀ = C₀ε(u₀), in equilibrium with the load, and
 * N_j = C₀ε(v_j) − ΔC_j ε(u₀), in equilibrium with none, whatever the layup; the least Σ w NᵀC⁻¹N over N₀ + Σ q_j N_j.
 * Both hold for any coefficients, so rounding in the small systems costs width and not truth. Parts that do not change
 * enter both sides through their nominal energy, which dot products give without visiting them.
 */
final class ReducedModel {
    /** Outward rounding of what is printed, share of the compliance: far above what the solutions carry. */
    private static final double ROUNDING = 1e-9;

    private final LoadedTub tub;
    private final double compliance;
    private final int count;
    /** vᵢᵀK₀vⱼ and Σ w NᵢᵀC₀⁻¹Nⱼ over the whole tub, count × count. */
    private final double[] nominalStiffness;

    private final double[] nominalFlexibility;
    private final double[] loads;
    private final Map<Integer, double[]> strains = new TreeMap<>();
    private final Map<Integer, double[]> stresses = new TreeMap<>();
    private final Map<Integer, double[]> jointStrains = new TreeMap<>();
    private final Map<Integer, double[]> jointStresses = new TreeMap<>();
    private final double[][] fields;
    private final double[][] forces;

    /**
     * @param tub nominal
     * @param samples changes whose derivative fields make the basis
     * @param derivatives K₀⁻¹ ΔK_j u₀ of each
     */
    ReducedModel(LoadedTub tub, List<Change> samples, List<double[]> derivatives) {
        this(tub, samples, derivatives, new Change(new TreeMap<>(), new TreeMap<>()));
    }

    /** The same, ready also for changes of the blocks and joints of one more change. */
    ReducedModel(LoadedTub tub, List<Change> samples, List<double[]> derivatives, Change also) {
        this.tub = tub;
        compliance = tub.compliance();
        count = samples.size() + 1;
        fields = new double[count][];
        forces = new double[count][];
        fields[0] = tub.displacements();
        forces[0] = tub.loads();
        for (int j = 1; j < count; j++) {
            fields[j] = derivatives.get(j - 1);
            forces[j] = tub.forces(samples.get(j - 1), fields[0]);
        }
        TreeSet<Integer> blocks = new TreeSet<>(also.laminates().keySet());
        TreeSet<Integer> joints = new TreeSet<>(also.joints().keySet());
        samples.forEach(s -> {
            blocks.addAll(s.laminates().keySet());
            joints.addAll(s.joints().keySet());
        });
        int[] list = blocks.stream().mapToInt(Integer::intValue).toArray();
        double[][] gramians = tub.gramians(list, fields);
        for (int k = 0; k < list.length; k++) {
            strains.put(list[k], gramians[k]);
            stresses.put(list[k], stresses(list[k], gramians[k], samples));
        }
        for (int part : joints) {
            double[] work = new double[pairs()];
            for (int i = 0, at = 0; i < count; i++) {
                for (int j = i; j < count; j++) {
                    work[at++] = tub.members().between(part, fields[i], fields[j]);
                }
            }
            jointStrains.put(part, work);
            jointStresses.put(part, jointStresses(part, work, samples));
        }
        nominalStiffness = new double[count * count];
        loads = new double[count];
        for (int i = 0; i < count; i++) {
            loads[i] = i == 0 ? compliance : LoadedTub.dot(fields[i], forces[0]);
            for (int j = i; j < count; j++) {
                double work = i == 0 && j == 0 ? compliance : LoadedTub.dot(fields[i], forces[j]);
                nominalStiffness[i * count + j] = work;
                nominalStiffness[j * count + i] = work;
            }
        }
        nominalFlexibility = nominalFlexibility(samples);
    }

    private int pairs() {
        return count * (count + 1) / 2;
    }

    private int pair(int i, int j) {
        return i * count - i * (i - 1) / 2 + j - i;
    }

    /** Gramians Σ w NᵢNⱼᵀ from those of the strains. */
    private double[] stresses(int block, double[] g, List<Change> samples) {
        double[] nominal = tub.laminate(block);
        double[] result = new double[pairs() * Constitutive.ENTRIES];
        double[][] steps = new double[count][];
        double[][] withNominal = new double[count][];
        for (int j = 0; j < count; j++) {
            double[] changed = j == 0 ? nominal : samples.get(j - 1).laminates().getOrDefault(block, nominal);
            steps[j] = Constitutive.minus(changed, nominal);
            withNominal[j] = slice(g, pair(0, j));
        }
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                // (C₀εᵢ − Δᵢε₀)(C₀εⱼ − Δⱼε₀)ᵀ summed up.
                double[] left = Constitutive.product(nominal, slice(g, pair(i, j)));
                left = Constitutive.minus(left, Constitutive.product(steps[i], withNominal[j]));
                double[] right = Constitutive.product(nominal, Constitutive.transposed(withNominal[i], 0));
                right = Constitutive.minus(right, Constitutive.product(steps[i], withNominal[0]));
                double[] h =
                        Constitutive.minus(Constitutive.product(left, nominal), Constitutive.product(right, steps[j]));
                System.arraycopy(h, 0, result, pair(i, j) * Constitutive.ENTRIES, Constitutive.ENTRIES);
            }
        }
        return result;
    }

    /** The same for a joint, in units of its nominal stiffness. */
    private double[] jointStresses(int part, double[] work, List<Change> samples) {
        double[] result = new double[pairs()];
        double[] steps = new double[count];
        for (int j = 1; j < count; j++) {
            steps[j] = samples.get(j - 1).joints().getOrDefault(part, 1.0) - 1;
        }
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                result[pair(i, j)] = work[pair(i, j)]
                        - steps[i] * work[pair(0, j)]
                        - steps[j] * work[pair(0, i)]
                        + steps[i] * steps[j] * work[0];
            }
        }
        return result;
    }

    /** ∫NᵢC₀⁻¹Nⱼ = vᵢᵀK₀vⱼ − 2 terms alike + what the samples' own blocks say; N₀ is square to all others. */
    private double[] nominalFlexibility(List<Change> samples) {
        double[] result = new double[count * count];
        result[0] = compliance;
        double[][] inverse = new double[tub.blocks().all().size()][];
        strains.keySet().forEach(b -> inverse[b] = Constitutive.inverse(tub.laminate(b)));
        for (int i = 1; i < count; i++) {
            for (int j = i; j < count; j++) {
                double sum = -nominalStiffness[i * count + j];
                for (Map.Entry<Integer, double[]> each :
                        samples.get(i - 1).laminates().entrySet()) {
                    int b = each.getKey();
                    double[] other = samples.get(j - 1).laminates().get(b);
                    if (other != null) {
                        double[] weight = Constitutive.product(
                                Constitutive.product(Constitutive.minus(each.getValue(), tub.laminate(b)), inverse[b]),
                                Constitutive.minus(other, tub.laminate(b)));
                        sum += Constitutive.trace(weight, strains.get(b), 0);
                    }
                }
                for (Map.Entry<Integer, Double> each :
                        samples.get(i - 1).joints().entrySet()) {
                    Double other = samples.get(j - 1).joints().get(each.getKey());
                    if (other != null) {
                        sum += (each.getValue() - 1)
                                * (other - 1)
                                * jointStrains.get(each.getKey())[0];
                    }
                }
                result[i * count + j] = sum;
                result[j * count + i] = sum;
            }
        }
        return result;
    }

    private static double[] slice(double[] g, int pair) {
        return java.util.Arrays.copyOfRange(g, pair * Constitutive.ENTRIES, (pair + 1) * Constitutive.ENTRIES);
    }

    /** Whether a change keeps to the blocks and joints the model was made for. */
    boolean covers(Change change) {
        return strains.keySet().containsAll(change.laminates().keySet())
                && jointStrains.keySet().containsAll(change.joints().keySet());
    }

    /**
     * An instant answer.
     *
     * @param compliance bounds
     * @param coefficients of the fields in the displacements that give the lower one
     */
    record Instant(Interval compliance, double[] coefficients) {}

    /** Bounds on the compliance after a change the model covers. */
    Instant answer(Change change) {
        double[] stiffness = nominalStiffness.clone();
        double[] flexibility = nominalFlexibility.clone();
        for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
            int b = each.getKey();
            double[] nominal = tub.laminate(b);
            add(Constitutive.minus(each.getValue(), nominal), strains.get(b), stiffness);
            add(
                    Constitutive.minus(Constitutive.inverse(each.getValue()), Constitutive.inverse(nominal)),
                    stresses.get(b),
                    flexibility);
        }
        for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
            addJoint(each.getValue() - 1, jointStrains.get(each.getKey()), stiffness);
            addJoint(1 / each.getValue() - 1, jointStresses.get(each.getKey()), flexibility);
        }
        double[] q = SmallSystem.nearSolution(stiffness, loads, count);
        double low = 0;
        for (int i = 0; i < count; i++) {
            low += 2 * loads[i] * q[i];
            for (int j = 0; j < count; j++) {
                low -= q[i] * stiffness[i * count + j] * q[j];
            }
        }
        return new Instant(new Interval(low, least(flexibility)).outward(ROUNDING), q);
    }

    /** The least of the quadratic form with the first coefficient one. */
    private double least(double[] a) {
        int n = count - 1;
        double[] rest = new double[n * n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            right[i] = -a[(i + 1) * count];
            System.arraycopy(a, (i + 1) * count + 1, rest, i * n, n);
        }
        double[] q = SmallSystem.nearSolution(rest, right, n);
        double sum = a[0];
        for (int i = 0; i < n; i++) {
            sum -= 2 * right[i] * q[i];
            for (int j = 0; j < n; j++) {
                sum += q[i] * rest[i * n + j] * q[j];
            }
        }
        return Math.min(sum, a[0]);
    }

    private void add(double[] weight, double[] gramians, double[] matrix) {
        int at = 0;
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                double value = Constitutive.trace(weight, gramians, at);
                at += Constitutive.ENTRIES;
                matrix[i * count + j] += value;
                if (i != j) {
                    matrix[j * count + i] += value;
                }
            }
        }
    }

    private void addJoint(double weight, double[] work, double[] matrix) {
        int at = 0;
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                double value = weight * work[at++];
                matrix[i * count + j] += value;
                if (i != j) {
                    matrix[j * count + i] += value;
                }
            }
        }
    }

    /** Displacements of an answer and the nominal forces that go with them, for solving on. */
    Resolve.Start start(Instant answer) {
        double[] u = new double[fields[0].length];
        double[] f = new double[u.length];
        List<Integer> used = new ArrayList<>();
        for (int j = 0; j < count; j++) {
            if (answer.coefficients()[j] != 0) {
                used.add(j);
            }
        }
        for (int j : used) {
            double q = answer.coefficients()[j];
            for (int i = 0; i < u.length; i++) {
                u[i] += q * fields[j][i];
                f[i] += q * forces[j][i];
            }
        }
        return new Resolve.Start(u, f);
    }
}
