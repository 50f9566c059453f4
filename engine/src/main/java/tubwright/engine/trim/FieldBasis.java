// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A reduced model of one case for mixtures of candidates: solved fields of designs and mixtures, made orthonormal in the
 * nominal energy as they come, with their strain Gramians piece by piece. The best combination of them is a field like
 * any other, so the cut it gives holds; no solution is needed for it.
 */
final class FieldBasis {
    /** A field of which the basis already spans all but this share of its energy brings nothing. */
    private static final double NEW = 1e-8;

    private static final int PARALLEL = 40;
    /** Pairs there is room for at first. */
    private static final int ROOM = 64;
    /** Unknowns worked on together, so that they stay in the cache. */
    private static final int PORTION = 4096;

    private final LoadedTub tub;
    private final List<Piece> pieces;
    private final List<double[]> fields = new ArrayList<>();
    private final List<double[]> forces = new ArrayList<>();
    /** vᵢᵀK₀vⱼ of pairs i ≤ j, j after j: all but the unit matrix. */
    private double[] work = new double[0];

    private double[] loads = new double[0];
    /**
     * Gramians by piece, entry and pair, with room for more pairs. They are only ever traced with symmetric matrices, so
     * that ij may stand for ji and the entries are {@linkplain Constitutive#folded folded}.
     */
    private final double[][][] gramians;

    FieldBasis(LoadedTub tub, List<Piece> pieces) {
        this.tub = tub;
        this.pieces = pieces;
        gramians = new double[pieces.size()][][];
        for (int p = 0; p < gramians.length; p++) {
            gramians[p] = new double[folded(pieces.get(p))][ROOM];
        }
        add(tub.displacements(), tub.loads());
    }

    int size() {
        return fields.size();
    }

    /**
     * Takes in a field.
     *
     * @param u displacements
     * @param nominalForces K₀u
     */
    void add(double[] u, double[] nominalForces) {
        double[] v = u.clone();
        double[] f = nominalForces.clone();
        double whole = LoadedTub.dot(v, f);
        for (int pass = 0; pass < 2; pass++) {
            for (int i = 0; i < fields.size(); i++) {
                double share = LoadedTub.dot(fields.get(i), f);
                subtract(v, share, fields.get(i));
                subtract(f, share, forces.get(i));
            }
        }
        double left = LoadedTub.dot(v, f);
        if (!(left > NEW * whole)) {
            return;
        }
        double scale = 1 / Math.sqrt(left);
        for (int i = 0; i < v.length; i++) {
            v[i] *= scale;
            f[i] *= scale;
        }
        fields.add(v);
        forces.add(f);
        int n = fields.size();
        loads = Arrays.copyOf(loads, n);
        loads[n - 1] = LoadedTub.dot(tub.loads(), v);
        work = Arrays.copyOf(work, n * (n + 1) / 2);
        for (int i = 0; i < n; i++) {
            work[n * (n - 1) / 2 + i] = LoadedTub.dot(fields.get(i), f);
        }
        IntStream.range(0, pieces.size()).parallel().forEach(p -> {
            double[] with = pieces.get(p).gramiansWith(tub, v, fields);
            int entries = pieces.get(p).entries();
            for (int e = 0; e < gramians[p].length && gramians[p][e].length < work.length; e++) {
                gramians[p][e] = Arrays.copyOf(gramians[p][e], 2 * work.length);
            }
            for (int i = 0; i < n; i++) {
                double[] one = entries == 1 ? new double[] {with[i]} : Constitutive.folded(with, i * entries);
                for (int e = 0; e < one.length; e++) {
                    gramians[p][e][work.length - n + i] = one[e];
                }
            }
        });
    }

    private static void subtract(double[] a, double factor, double[] b) {
        for (int i = 0; i < a.length; i++) {
            a[i] -= factor * b[i];
        }
    }

    /**
     * The best field for a mixture.
     *
     * @param compliance fᵀv of it, at most the mixture's compliance, J
     * @param coefficients of the fields
     * @param nominal vᵀK₀v, J
     * @param gramians Σ w εεᵀ by piece
     */
    record Reduced(double compliance, double[] coefficients, double nominal, double[][] gramians) {}

    /**
     * Solves the reduced model.
     *
     * @param stiffness of each piece
     */
    Reduced solve(double[][] stiffness) {
        int n = fields.size();
        double[] packed = work.clone();
        double[][] parts = new double[pieces.size()][];
        IntStream each = IntStream.range(0, pieces.size());
        // Small tasks are not worth handing out.
        (n > PARALLEL ? each.parallel() : each).forEach(p -> {
            double[] step = stiffness[p].clone();
            double[] nominal = pieces.get(p).nominal(tub);
            for (int k = 0; k < step.length; k++) {
                step[k] -= nominal[k];
            }
            parts[p] = traces(p, step);
        });
        for (double[] part : parts) {
            for (int k = 0; k < packed.length; k++) {
                packed[k] += part[k];
            }
        }
        double[] a = new double[n * n];
        for (int j = 0, at = 0; j < n; j++) {
            for (int i = 0; i <= j; i++, at++) {
                a[i * n + j] = packed[at];
                a[j * n + i] = packed[at];
            }
        }
        double[] q = SmallSystem.nearSolution(a, loads, n);
        double[] weights = new double[work.length];
        for (int j = 0, at = 0; j < n; j++) {
            for (int i = 0; i <= j; i++, at++) {
                weights[at] = (i == j ? 1 : 2) * q[i] * q[j];
            }
        }
        // Σ qᵢqⱼ Gᵢⱼ
        double[][] sums = new double[pieces.size()][];
        for (int p = 0; p < sums.length; p++) {
            double[] sum = Arrays.stream(gramians[p])
                    .mapToDouble(g -> LoadedTub.dot(weights, g))
                    .toArray();
            sums[p] = sum.length == 1 ? sum : Constitutive.unfolded(sum);
        }
        return new Reduced(LoadedTub.dot(loads, q), q, LoadedTub.dot(weights, work), sums);
    }

    private static int folded(Piece piece) {
        return piece.entries() == 1 ? 1 : Constitutive.UPPER.length;
    }

    /** tr(ΔC Gᵢⱼ) of all pairs. */
    private double[] traces(int p, double[] step) {
        double[] result = new double[work.length];
        for (int e = 0; e < gramians[p].length; e++) {
            double factor = step.length == 1 ? step[0] : step[Constitutive.UPPER[e]];
            double[] g = gramians[p][e];
            for (int k = 0; k < result.length; k++) {
                result[k] += factor * g[k];
            }
        }
        return result;
    }

    /** Displacements of a reduced answer, 6 per node. */
    double[] displacements(double[] coefficients) {
        double[] u = new double[fields.getFirst().length];
        int portions = (u.length + PORTION - 1) / PORTION;
        IntStream.range(0, portions).parallel().forEach(k -> {
            int end = Math.min(u.length, (k + 1) * PORTION);
            for (int j = 0; j < coefficients.length; j++) {
                double[] field = fields.get(j);
                for (int i = k * PORTION; i < end; i++) {
                    u[i] += coefficients[j] * field[i];
                }
            }
        });
        return u;
    }

    /** Displacements of a reduced answer and the nominal forces that go with them, for solving on. */
    Resolve.Start start(double[] coefficients) {
        double[] u = new double[fields.getFirst().length];
        double[] f = new double[u.length];
        for (int j = 0; j < coefficients.length; j++) {
            subtract(u, -coefficients[j], fields.get(j));
            subtract(f, -coefficients[j], forces.get(j));
        }
        return new Resolve.Start(u, f);
    }
}
