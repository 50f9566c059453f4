// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * A changed compliance between two sides of a small dense problem, for any change within a set of blocks and joints.
 *
 * <p>Fields: the nominal u₀ and v_j = K₀⁻¹ ΔK_j u₀ of sample changes j. Below: the largest 2fᵀv − vᵀKv over
 * combinations v of all fields. Above: the stresses N₀ = C₀ε(u₀), in equilibrium with the load, and
 * N_j = C₀ε(v_j) − ΔC_j ε(u₀), in equilibrium with none, whatever the layup; the least Σ w NᵀC⁻¹N over N₀ + Σ q_j N_j.
 * Both hold for any coefficients, so rounding in the small systems costs width and not truth. Parts that do not change
 * enter both sides through their nominal energy, which the samples' own blocks give: vᵢᵀK₀vⱼ = vᵢᵀΔK_j u₀. Immutable.
 */
final class ReducedModel {
    /** Outward rounding of what is printed, share of the compliance: far above what the solutions carry. */
    private static final double ROUNDING = 1e-9;

    private final LoadedTub tub;
    private final List<Field> fields;
    private final PairTable table;
    private final int[] places;
    private final int count;
    /** vᵢᵀK₀vⱼ and Σ w NᵢᵀC₀⁻¹Nⱼ over the whole tub, count × count. */
    private final double[] nominalStiffness;

    private final double[] nominalFlexibility;
    private final double[] loads;
    private final Set<Integer> blocks = new TreeSet<>();
    private final Set<Integer> joints = new TreeSet<>();

    /**
     * @param tub nominal
     * @param fields of the basis
     * @param table of these fields, or more, in all blocks and joints that the fields' samples change
     */
    ReducedModel(LoadedTub tub, List<Field> fields, PairTable table) {
        this.tub = tub;
        this.fields = List.copyOf(fields);
        this.table = table;
        places = table.places(fields);
        count = places.length;
        for (Field field : fields) {
            blocks.addAll(field.change().laminates().keySet());
            joints.addAll(field.change().joints().keySet());
        }
        loads = new double[count];
        loads[0] = tub.compliance();
        for (int i = 1; i < count; i++) {
            loads[i] = fields.get(i - 1).load();
        }
        nominalStiffness = table.energies(places, table.stiffness());
        nominalFlexibility = table.energies(places, table.flexibility());
    }

    private int pair(int i, int j) {
        return places[i] <= places[j] ? table.pair(places[i], places[j]) : table.pair(places[j], places[i]);
    }

    /** Whether a change keeps to the blocks and joints the model was made for. */
    boolean covers(Change change) {
        return blocks.containsAll(change.laminates().keySet())
                && joints.containsAll(change.joints().keySet());
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
            addBlock(each.getKey(), each.getValue(), stiffness, flexibility);
        }
        for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
            addJoint(each.getKey(), each.getValue(), stiffness, flexibility);
        }
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                stiffness[i * count + j] = stiffness[j * count + i];
                flexibility[i * count + j] = flexibility[j * count + i];
            }
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

    /**
     * What a block's new laminate C adds to the upper triangles: tr(ΔC G_ij) below; above, with W = C⁻¹ − C₀⁻¹ and
     * N_i = C₀ε_i − Δ_iε₀, tr(W H_ij) = tr(C₀WC₀ G_ij) − tr(Δ_iWC₀ G_0j) − tr(Δ_jWC₀ G_0i) + tr(Δ_iWΔ_j G_00).
     */
    private void addBlock(int block, double[] laminate, double[] stiffness, double[] flexibility) {
        double[] nominal = tub.laminate(block);
        double[] step = Constitutive.minus(laminate, nominal);
        double[] weight = Constitutive.minus(Constitutive.inverse(laminate), tub.inverse(block));
        double[] weightNominal = Constitutive.product(weight, nominal);
        double[] dual = Constitutive.product(nominal, weightNominal);
        double[] g = table.strains(block);
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                int at = pair(i, j) * Constitutive.ENTRIES;
                stiffness[i * count + j] += Constitutive.trace(step, g, at);
                flexibility[i * count + j] += Constitutive.trace(dual, g, at);
            }
        }
        double[][] steps = new double[count][];
        for (int i = 1; i < count; i++) {
            double[] changed = fields.get(i - 1).change().laminates().get(block);
            steps[i] = changed == null ? new double[0] : Constitutive.minus(changed, nominal);
        }
        for (int i = 1; i < count; i++) {
            if (steps[i].length == 0) {
                continue;
            }
            double[] own = Constitutive.product(steps[i], weightNominal);
            for (int j = 0; j < count; j++) {
                double cross = Constitutive.trace(own, g, pair(0, j) * Constitutive.ENTRIES);
                flexibility[Math.min(i, j) * count + Math.max(i, j)] -= i == j ? 2 * cross : cross;
            }
            double[] half = Constitutive.product(steps[i], weight);
            for (int j = i; j < count; j++) {
                if (steps[j].length > 0) {
                    flexibility[i * count + j] += Constitutive.trace(Constitutive.product(half, steps[j]), g, 0);
                }
            }
        }
    }

    /** The same for a joint at a factor of its stiffness. */
    private void addJoint(int part, double factor, double[] stiffness, double[] flexibility) {
        double[] work = table.works(part);
        double weight = 1 / factor - 1;
        double[] steps = new double[count];
        for (int i = 1; i < count; i++) {
            steps[i] = fields.get(i - 1).change().joints().getOrDefault(part, 1.0) - 1;
        }
        for (int i = 0; i < count; i++) {
            for (int j = i; j < count; j++) {
                double w = work[pair(i, j)];
                stiffness[i * count + j] += (factor - 1) * w;
                flexibility[i * count + j] += weight
                        * (w
                                - steps[i] * work[pair(0, j)]
                                - steps[j] * work[pair(0, i)]
                                + steps[i] * steps[j] * work[0]);
            }
        }
    }

    /** Displacements of an answer and the nominal forces that go with them, for solving on. */
    Resolve.Start start(Instant answer) {
        double[] q = answer.coefficients();
        double[] u = new double[tub.displacements().length];
        TreeMap<Integer, double[]> laminates = new TreeMap<>();
        TreeMap<Integer, Double> factors = new TreeMap<>();
        add(q[0], tub.displacements(), u);
        for (int j = 1; j < count; j++) {
            double share = q[j];
            if (share == 0) {
                continue;
            }
            Field field = fields.get(j - 1);
            add(share, field.displacements(), u);
            // K₀v_j = ΔK_j u₀, and that is linear in the sample: one visit does for all of them.
            field.change()
                    .laminates()
                    .forEach((b, c) -> laminates.merge(
                            b,
                            Constitutive.plus(tub.laminate(b), share, Constitutive.minus(c, tub.laminate(b))),
                            (a, x) -> Constitutive.plus(a, 1, Constitutive.minus(x, tub.laminate(b)))));
            field.change().joints().forEach((p, f) -> factors.merge(p, 1 + share * (f - 1), (a, x) -> a + x - 1));
        }
        double[] forces = tub.forces(new Change(laminates, factors), tub.displacements());
        add(q[0], tub.loads(), forces);
        return new Resolve.Start(u, forces);
    }

    private static void add(double factor, double[] from, double[] to) {
        for (int i = 0; i < to.length; i++) {
            to[i] += factor * from[i];
        }
    }
}
