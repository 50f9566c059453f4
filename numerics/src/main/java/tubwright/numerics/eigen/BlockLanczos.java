// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import tubwright.numerics.SymmetricMatrix;

/**
 * Block Lanczos with thick restart for an operator that is self-adjoint in the inner product of a positive
 * semi-definite matrix B (Grimes, Lewis and Simon 1994, SIAM J. Matrix Anal. Appl. 15:228; Wu and Simon 2000, SIAM J.
 * Matrix Anal. Appl. 22:602). All vectors are kept orthogonal in B, so that converged Ritz vectors stay locked and the
 * projected matrix can be taken from the coefficients of orthogonalisation.
 */
final class BlockLanczos {
    /** An operator that is self-adjoint in the inner product of B. */
    @FunctionalInterface
    interface Operator {
        /** Images of the vectors v, as new arrays; {@code bv} holds their products with B. Neither may be changed. */
        double[][] apply(double[][] v, double[][] bv);
    }

    /**
     * Which eigenvalues are wanted.
     *
     * @param high how many of the largest positive ones
     * @param highRough how many of these, the smallest, need only be found roughly: they show where the next one lies, so
     *     that a count can be placed before it
     * @param low how many of the most negative ones
     * @param lowRough how many of these need only be found roughly
     * @param tolerance residual over eigenvalue up to which the others are taken; the error of eigenvalues goes with its
     *     square
     */
    record Wanted(int high, int highRough, int low, int lowRough, double tolerance) {
        int all() {
            return high + low;
        }
    }

    /**
     * What a run found, in falling order of the operator's eigenvalues.
     *
     * @param values eigenvalues of the operator
     * @param vectors of unit norm in B
     * @param converged whether all wanted ones are to the tolerance
     * @param residuals over the eigenvalues
     * @param solves vectors the operator was applied to
     */
    record Ritz(double[] values, double[][] vectors, boolean converged, double[] residuals, int solves) {
        /** Nothing known. */
        static final Ritz NONE = new Ritz(new double[0], new double[0][], true, new double[0], 0);
    }

    /** Residual over eigenvalue of pairs wanted only roughly. */
    private static final double ROUGH = 1e-3;
    /** Ritz values below this share of the largest are those of the null space. */
    private static final double NOTHING = 1e-11;

    private final SymmetricMatrix b;
    private final Operator operator;
    private final int block;
    private final Wanted wanted;
    private final int most;
    private final SplittableRandom random;
    private final Basis basis;
    private final double[][] h;
    private int processed;
    /** First of the vectors along which the next images will mostly lie. */
    private int local;

    private int solves;

    /**
     * @param block vectors advanced at once
     * @param seed of the starting block
     */
    BlockLanczos(SymmetricMatrix b, Operator operator, int block, Wanted wanted, long seed) {
        this.b = b;
        this.operator = operator;
        this.block = Math.max(1, Math.min(block, b.order()));
        this.wanted = wanted;
        random = new SplittableRandom(seed);
        basis = new Basis(b);
        most = wanted.all() + Math.max(wanted.all(), 24) + 8 * this.block;
        h = new double[most + 2 * this.block][most + 2 * this.block];
    }

    /**
     * Runs until the wanted pairs have converged.
     *
     * @param known pairs found before: kept and built upon, or those found only roughly started from
     * @param start vectors to start from; random ones are added to fill the block
     * @param restarts allowed
     */
    Ritz run(Ritz known, List<double[]> start, int restarts) {
        return run(known, start, restarts, known.values.length > 0);
    }

    /**
     * As {@link #run(Ritz, List, int)}.
     *
     * @param thorough whether the space is filled before anything is believed, because something was missed before
     */
    Ritz run(Ritz known, List<double[]> start, int restarts, boolean thorough) {
        List<double[]> first = new ArrayList<>();
        for (int k = 0; k < known.values.length; k++) {
            if (known.residuals[k] > wanted.tolerance) {
                first.add(known.vectors[k]);
                continue;
            }
            h[basis.size()][basis.size()] = known.values[k];
            basis.addOrthonormal(known.vectors[k], b.multiply(known.vectors[k]));
        }
        processed = basis.size();
        first.addAll(start);
        int given = Math.min(first.size(), block);
        first = new ArrayList<>(first.subList(0, given));
        first.addAll(List.of(random(block - given)));
        for (double[] v : first) {
            basis.orthogonalise(v, new double[h.length]);
        }
        boolean filling = thorough;
        for (int restart = 0; ; restart++) {
            boolean exhausted = false;
            while (!exhausted && processed + block <= most) {
                exhausted = !step();
                if (!filling && !exhausted && processed >= wanted.all() + block) {
                    DenseEigen ritz = project();
                    boolean[] among = among(ritz.values());
                    if (count(among) == wanted.all() && converged(ritz, among)) {
                        return result(ritz, among, true);
                    }
                }
            }
            DenseEigen ritz = project();
            boolean[] among = among(ritz.values());
            boolean full = count(among) == wanted.all();
            if (exhausted || (converged(ritz, among) && (full || restart > 1))) {
                return result(ritz, among, true);
            }
            if (restart >= restarts) {
                return result(ritz, among, false);
            }
            filling = false;
            compress(ritz);
        }
    }

    /** Applies the operator to the vectors not yet processed. False when the space of B is exhausted. */
    private boolean step() {
        int from = processed;
        int to = basis.size();
        if (from == to) {
            if (!basis.orthogonalise(random(1)[0], new double[h.length])) {
                return false;
            }
            to++;
        }
        double[][] v = new double[to - from][];
        double[][] bv = new double[to - from][];
        for (int k = from; k < to; k++) {
            v[k - from] = basis.vector(k);
            bv[k - from] = basis.product(k);
        }
        double[][] w = operator.apply(v, bv);
        solves += w.length;
        double[][] coefficients = new double[w.length][h.length];
        basis.orthogonalise(w, local, coefficients);
        for (int k = from; k < to; k++) {
            for (int i = 0; i < basis.size(); i++) {
                h[i][k] = coefficients[k - from][i];
            }
        }
        processed = to;
        local = from;
        return true;
    }

    /** Random vectors in the range of the operator: free of what B does not see. */
    private double[][] random(int count) {
        if (count == 0) {
            return new double[0][];
        }
        double[][] v = new double[count][];
        for (int k = 0; k < count; k++) {
            v[k] = random.doubles(b.order(), -1, 1).toArray();
        }
        solves += count;
        return operator.apply(v, b.multiply(v));
    }

    private DenseEigen project() {
        double[][] t = new double[processed][processed];
        for (int i = 0; i < processed; i++) {
            for (int j = 0; j < processed; j++) {
                t[i][j] = 0.5 * (h[i][j] + h[j][i]);
            }
        }
        return DenseEigen.of(t, processed);
    }

    /** Which of the values are among those wanted. */
    private boolean[] among(double[] values) {
        double floor = NOTHING * largest(values);
        boolean[] among = new boolean[values.length];
        for (int k = 0; k < values.length; k++) {
            among[k] =
                    (k < wanted.high && values[k] > floor) || (k >= values.length - wanted.low && values[k] < -floor);
        }
        return among;
    }

    private boolean converged(DenseEigen ritz, boolean[] among) {
        double floor = 1e-14 * largest(ritz.values());
        for (int k = 0; k < among.length; k++) {
            double value = ritz.values()[k];
            int fromEnd = among.length - 1 - k;
            boolean rough = value > 0 ? k >= wanted.high - wanted.highRough : fromEnd >= wanted.low - wanted.lowRough;
            double tolerance = rough ? ROUGH : wanted.tolerance;
            if (among[k] && residual(ritz.vectors()[k]) > Math.max(tolerance * Math.abs(value), floor)) {
                return false;
            }
        }
        return true;
    }

    private double residual(double[] s) {
        double sum = 0;
        for (double r : coupling(s)) {
            sum += r * r;
        }
        return Math.sqrt(sum);
    }

    /** Image of a Ritz vector outside the processed space, in the unprocessed vectors. */
    private double[] coupling(double[] s) {
        double[] c = new double[basis.size() - processed];
        for (int r = 0; r < c.length; r++) {
            for (int k = 0; k < processed; k++) {
                c[r] += h[processed + r][k] * s[k];
            }
        }
        return c;
    }

    /** Replaces the processed vectors by the best Ritz vectors. */
    private void compress(DenseEigen ritz) {
        int n = processed;
        int high = wanted.high;
        int low = wanted.low;
        int spare = Math.max(block, (most - high - low - block) / 3);
        List<double[]> rows = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int k = 0; k < n; k++) {
            boolean top = high > 0 && k < high + (low > 0 ? spare / 2 : spare);
            boolean bottom = low > 0 && k >= n - low - spare / 2;
            if (top || bottom) {
                rows.add(ritz.vectors()[k]);
                values.add(ritz.values()[k]);
            }
        }
        double[][] s = rows.toArray(new double[0][]);
        double[][] vectors = basis.combine(s, false);
        double[][] products = basis.combine(s, true);
        double[][] couplings = new double[s.length][];
        for (int k = 0; k < s.length; k++) {
            couplings[k] = coupling(s[k]);
        }
        List<double[]> next = new ArrayList<>();
        List<double[]> nextProducts = new ArrayList<>();
        for (int k = n; k < basis.size(); k++) {
            next.add(basis.vector(k));
            nextProducts.add(basis.product(k));
        }
        basis.clear();
        for (double[] row : h) {
            Arrays.fill(row, 0);
        }
        for (int k = 0; k < s.length; k++) {
            basis.addOrthonormal(vectors[k], products[k]);
            h[k][k] = values.get(k);
            for (int r = 0; r < couplings[k].length; r++) {
                h[s.length + r][k] = couplings[k][r];
            }
        }
        for (int r = 0; r < next.size(); r++) {
            basis.addOrthonormal(next.get(r), nextProducts.get(r));
        }
        processed = s.length;
        local = 0;
    }

    private Ritz result(DenseEigen ritz, boolean[] among, boolean converged) {
        int count = count(among);
        double[] values = new double[count];
        double[][] s = new double[count][];
        int next = 0;
        for (int k = 0; k < among.length; k++) {
            if (among[k]) {
                values[next] = ritz.values()[k];
                s[next++] = ritz.vectors()[k];
            }
        }
        double[][] vectors = purified(s, values);
        double[] residuals = new double[values.length];
        for (int k = 0; k < residuals.length; k++) {
            residuals[k] = residual(s[k]) / Math.abs(values[k]);
        }
        return new Ritz(values, vectors, converged, residuals, solves);
    }

    /**
     * Ritz vectors after one more application of the operator, which takes out what rounding has put where B sees nothing.
     * It costs no solve: by the recurrence the image of V s is θ V s and the coupling along the vectors that come next
     * (Nour-Omid, Parlett, Ericsson and Jensen 1987, Math. Comput. 48:663).
     */
    private double[][] purified(double[][] s, double[] values) {
        double[][] rows = new double[s.length][];
        for (int k = 0; k < s.length; k++) {
            double[] c = coupling(s[k]);
            rows[k] = Arrays.copyOf(s[k], processed + c.length);
            double square = 1;
            for (int r = 0; r < c.length; r++) {
                rows[k][processed + r] = c[r] / values[k];
                square += rows[k][processed + r] * rows[k][processed + r];
            }
            for (int i = 0; i < rows[k].length; i++) {
                rows[k][i] /= Math.sqrt(square);
            }
        }
        return basis.combine(rows, false);
    }

    private static int count(boolean[] flags) {
        int count = 0;
        for (boolean flag : flags) {
            count += flag ? 1 : 0;
        }
        return count;
    }

    private static double largest(double[] values) {
        return values.length == 0 ? 0 : Math.max(Math.abs(values[0]), Math.abs(values[values.length - 1]));
    }
}
