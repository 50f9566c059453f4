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

    /** What the energy of a pair of fields is good to, of that of the two: solutions, Gramians and differences together. */
    private static final double PAIRS = 1e-12;

    /** How much the diagonal of the small systems is lifted, tried in turn until rounding is nothing to speak of. */
    private static final double[] LIFTS = {1e-13, 1e-10, 1e-7, 1e-4};

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
        double[] size = new double[2 * count];
        for (int i = 0; i < count; i++) {
            double nominal = Math.abs(nominalStiffness[i * count + i]);
            size[i] = nominal;
            size[count + i] = 2 * nominal + Math.abs(nominalFlexibility[i * count + i]);
        }
        for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
            addBlock(each.getKey(), each.getValue(), stiffness, flexibility, size);
        }
        for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
            addJoint(each.getKey(), each.getValue(), stiffness, flexibility, size);
        }
        for (int i = 0; i < count; i++) {
            for (int j = 0; j < i; j++) {
                stiffness[i * count + j] = stiffness[j * count + i];
                flexibility[i * count + j] = flexibility[j * count + i];
            }
        }
        Best low = most(stiffness, size);
        Best high = least(flexibility, size);
        return new Instant(
                new Interval(low.value, Math.max(high.value, low.value)).outward(ROUNDING), low.coefficients);
    }

    /** A bound and the coefficients that give it. */
    private record Best(double value, double[] coefficients) {}

    /** The most of 2fᵀv − vᵀKv, less what rounding may have added. */
    private Best most(double[] a, double[] size) {
        Best best = new Best(Double.NEGATIVE_INFINITY, new double[count]);
        for (double lift : LIFTS) {
            double[] q = SmallSystem.nearSolution(a, loads, count, lift);
            double value = 0;
            for (int i = 0; i < count; i++) {
                value += 2 * loads[i] * q[i];
                for (int j = 0; j < count; j++) {
                    value -= q[i] * a[i * count + j] * q[j];
                }
            }
            double blur = blur(q, 0, size, 0);
            if (value - blur > best.value) {
                best = new Best(value - blur, q);
            }
            if (blur <= ROUNDING * Math.abs(value)) {
                break;
            }
        }
        return best;
    }

    /** The least of the quadratic form with the first coefficient one, and what rounding may have taken away. */
    private Best least(double[] a, double[] size) {
        int n = count - 1;
        double[] rest = new double[n * n];
        double[] right = new double[n];
        for (int i = 0; i < n; i++) {
            right[i] = -a[(i + 1) * count];
            System.arraycopy(a, (i + 1) * count + 1, rest, i * n, n);
        }
        double[] nothing = new double[n];
        Best best = new Best(a[0] + blur(nothing, 1, size, count), nothing);
        for (double lift : LIFTS) {
            double[] q = SmallSystem.nearSolution(rest, right, n, lift);
            double value = a[0];
            for (int i = 0; i < n; i++) {
                value -= 2 * right[i] * q[i];
                for (int j = 0; j < n; j++) {
                    value += q[i] * rest[i * n + j] * q[j];
                }
            }
            double blur = blur(q, 1, size, count);
            if (value + blur < best.value) {
                best = new Best(value + blur, q);
            }
            if (blur <= ROUNDING * Math.abs(value)) {
                break;
            }
        }
        return best;
    }

    /**
     * What rounding may do to a quadratic form: fields all but dependent come with large coefficients that cancel, and
     * what is left over from the cancelling counts for nothing. Energies of pairs are good to {@link #PAIRS} of the
     * energies of their fields, so the form is good to that share of (Σ |q_i| √size_i)².
     *
     * @param first number of leading coefficients that are one and not among q
     * @param from where the sizes begin
     */
    private double blur(double[] q, int first, double[] size, int from) {
        double sum = 0;
        for (int i = 0; i < first + q.length; i++) {
            sum += (i < first ? 1 : Math.abs(q[i - first])) * Math.sqrt(size[from + i]);
        }
        return PAIRS * sum * sum;
    }

    /**
     * What a block's new laminate C adds to the upper triangles: tr(ΔC G_ij) below; above, with W = C⁻¹ − C₀⁻¹ and
     * N_i = C₀ε_i − Δ_iε₀, tr(W H_ij) = tr(C₀WC₀ G_ij) − tr(Δ_iWC₀ G_0j) − tr(Δ_jWC₀ G_0i) + tr(Δ_iWΔ_j G_00).
     */
    private void addBlock(int block, double[] laminate, double[] stiffness, double[] flexibility, double[] size) {
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
        double[][] extent = new double[count][];
        for (int i = 0; i < count; i++) {
            extent[i] = Constitutive.extent(g, pair(i, i) * Constitutive.ENTRIES);
            size[i] += Constitutive.magnitude(step, extent[i], extent[i]);
            size[count + i] += Constitutive.magnitude(dual, extent[i], extent[i]);
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
            size[count + i] += 2 * Constitutive.magnitude(own, extent[0], extent[i])
                    + Constitutive.magnitude(Constitutive.product(half, steps[i]), extent[0], extent[0]);
            for (int j = i; j < count; j++) {
                if (steps[j].length > 0) {
                    flexibility[i * count + j] += Constitutive.trace(Constitutive.product(half, steps[j]), g, 0);
                }
            }
        }
    }

    /** The same for a joint at a factor of its stiffness. */
    private void addJoint(int part, double factor, double[] stiffness, double[] flexibility, double[] size) {
        double[] work = table.works(part);
        double weight = 1 / factor - 1;
        double[] steps = new double[count];
        for (int i = 1; i < count; i++) {
            steps[i] = fields.get(i - 1).change().joints().getOrDefault(part, 1.0) - 1;
        }
        for (int i = 0; i < count; i++) {
            double own = Math.sqrt(Math.abs(work[pair(i, i)]));
            double all = own + Math.abs(steps[i]) * Math.sqrt(Math.abs(work[0]));
            size[i] += Math.abs(factor - 1) * own * own;
            size[count + i] += Math.abs(weight) * all * all;
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
