// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.IntStream;

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
    /** Decades by which residuals fall in a step at most, as far as seen: so long there is no need to look. */
    private static final double DECADES = 1.6;
    /** Ritz values below this share of the largest are those of the null space. */
    private static final double NOTHING = 1e-11;

    private final Product b;
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
    BlockLanczos(Product b, Operator operator, int block, Wanted wanted, long seed) {
        this.b = b;
        this.operator = operator;
        this.block = Math.max(1, Math.min(block, b.order()));
        this.wanted = wanted;
        random = new SplittableRandom(seed);
        basis = new Basis(b);
        most = wanted.all() + Math.max(wanted.all(), 24) + 12 * this.block;
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
        begin(known, start);
        return goOn(restarts, thorough);
    }

    private void begin(Ritz known, List<double[]> start) {
        List<double[]> first = new ArrayList<>();
        for (int k = 0; k < known.values.length; k++) {
            if (known.residuals[k] > wanted.tolerance) {
                first.add(known.vectors[k]);
                continue;
            }
            h[basis.size()][basis.size()] = known.values[k];
            basis.addOrthonormal(known.vectors[k], b.of(known.vectors[k]));
        }
        processed = basis.size();
        first.addAll(start);
        int given = Math.min(first.size(), block);
        first = new ArrayList<>(first.subList(0, given));
        first.addAll(List.of(random(block - given)));
        for (double[] v : first) {
            basis.orthogonalise(v, new double[h.length]);
        }
    }

    /**
     * Goes on from where the iteration stands until the wanted pairs have converged.
     *
     * @param restarts allowed
     * @param thorough whether the space is filled before anything is believed
     */
    Ritz goOn(int restarts, boolean thorough) {
        boolean filling = thorough;
        int wait = 0;
        for (int restart = 0; ; restart++) {
            boolean exhausted = false;
            while (!exhausted && processed + block <= most) {
                exhausted = !step();
                if (!filling && !exhausted && processed >= wanted.all() + block && --wait <= 0) {
                    DenseEigen ritz = project();
                    boolean[] among = among(ritz.values());
                    double distance = count(among) < wanted.all() ? Double.POSITIVE_INFINITY : distance(ritz, among);
                    if (distance <= 1) {
                        return result(ritz, among, true);
                    }
                    wait = (int) Math.min(4, Math.log10(distance) / DECADES);
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

    /**
     * What a run knows before anything has converged, in falling order of the operator's eigenvalues.
     *
     * @param values estimates of all that could be wanted; positive ones are not above, negative ones not below the truth
     * @param residuals over the values
     * @param exhausted whether there is no more to come
     */
    record Rough(double[] values, double[] residuals, boolean exhausted) {}

    /**
     * Begins a run, and leaves it where enough is known.
     *
     * @param known pairs to keep
     * @param enough asked after every step
     */
    Rough sketch(Ritz known, Predicate<Rough> enough) {
        begin(known, List.of());
        while (true) {
            boolean room = processed + block <= most;
            boolean exhausted = room && !step();
            if (room && !exhausted && processed <= wanted.all()) {
                continue;
            }
            DenseEigen ritz = project();
            boolean[] among = among(ritz.values());
            double[] values = new double[count(among)];
            double[] residuals = new double[values.length];
            int next = 0;
            for (int k = 0; k < among.length; k++) {
                if (among[k]) {
                    values[next] = ritz.values()[k];
                    residuals[next++] = residual(ritz.vectors()[k]) / Math.abs(ritz.values()[k]);
                }
            }
            Rough rough = new Rough(values, residuals, exhausted);
            if (!room || exhausted || enough.test(rough)) {
                return rough;
            }
        }
    }

    /** Vectors the operator was applied to so far. */
    int solves() {
        return solves;
    }

    /**
     * The same space seen by another operator, C = s (I - δA)⁻¹A, A the one of this run: nothing learnt is lost and nothing
     * need be solved (rational Krylov, Ruhe 1998, SIAM J. Sci. Comput. 19:1535). With A V = [V, W] [T; B] and QR = [I - δT; -δB], C
     * sends the first vectors of [V, W] Q to all of them times s Qᵀ [T; B] R⁻¹. Of the pairs of C the best are kept. This run
     * is left as it is.
     *
     * @param delta δ; 1/δ no eigenvalue of A seen here
     * @param scale s
     */
    BlockLanczos turned(double delta, double scale, Operator other, Wanted asked, long seed) {
        DenseEigen ritz = project();
        int k = processed;
        int all = basis.size();
        double[][] image = new double[k][all];
        double[][] columns = new double[k][all];
        for (int j = 0; j < k; j++) {
            double[] c = coupling(ritz.vectors()[j]);
            image[j][j] = ritz.values()[j];
            columns[j][j] = 1 - delta * ritz.values()[j];
            for (int r = 0; r < c.length; r++) {
                image[j][k + r] = c[r];
                columns[j][k + r] = -delta * c[r];
            }
        }
        Reflections q = Reflections.of(columns);
        for (int j = 0; j < k; j++) {
            q.transposed(image[j]);
            for (int i = 0; i < j; i++) {
                subtract(columns[j][i], image[i], image[j]);
            }
            for (int r = 0; r < all; r++) {
                image[j][r] /= columns[j][j];
            }
        }
        double[][] t = new double[k][k];
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < k; j++) {
                t[i][j] = 0.5 * scale * (image[i][j] + image[j][i]);
            }
        }
        DenseEigen now = DenseEigen.of(t, k);
        BlockLanczos next = new BlockLanczos(b, other, block, asked, seed);
        List<double[]> rows = new ArrayList<>();
        int[] kept = next.kept(k);
        for (int i : kept) {
            rows.add(Arrays.copyOf(now.vectors()[i], all));
        }
        for (int r = k; r < all; r++) {
            double[] unit = new double[all];
            unit[r] = 1;
            rows.add(unit);
        }
        double[][] inBasis = new double[rows.size()][all];
        for (int i = 0; i < inBasis.length; i++) {
            double[] row = rows.get(i);
            q.plain(row);
            System.arraycopy(row, k, inBasis[i], k, all - k);
            for (int j = 0; j < k; j++) {
                subtract(-row[j], ritz.vectors()[j], inBasis[i]);
            }
        }
        double[][] vectors = basis.combine(inBasis, false);
        double[][] products = basis.combine(inBasis, true);
        for (int i = 0; i < vectors.length; i++) {
            next.basis.addOrthonormal(vectors[i], products[i]);
        }
        for (int i = 0; i < kept.length; i++) {
            next.h[i][i] = now.values()[kept[i]];
            double[] s = now.vectors()[kept[i]];
            for (int r = k; r < all; r++) {
                double sum = 0;
                for (int j = 0; j < k; j++) {
                    sum += image[j][r] * s[j];
                }
                next.h[kept.length + r - k][i] = scale * sum;
            }
        }
        next.processed = kept.length;
        return next;
    }

    /** Subtracts a multiple of a short vector from the beginning of another. */
    private static void subtract(double factor, double[] v, double[] from) {
        for (int i = 0; i < v.length; i++) {
            from[i] -= factor * v[i];
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
        return operator.apply(v, b.of(v));
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
        return distance(ritz, among) <= 1;
    }

    /** The largest residual of the wanted pairs over what it may be. */
    private double distance(DenseEigen ritz, boolean[] among) {
        double floor = 1e-14 * largest(ritz.values());
        double distance = 0;
        for (int k = 0; k < among.length; k++) {
            double value = ritz.values()[k];
            int fromEnd = among.length - 1 - k;
            boolean rough = value > 0 ? k >= wanted.high - wanted.highRough : fromEnd >= wanted.low - wanted.lowRough;
            double tolerance = rough ? ROUGH : wanted.tolerance;
            if (among[k]) {
                double allowed = Math.max(tolerance * Math.abs(value), floor);
                distance = Math.max(distance, residual(ritz.vectors()[k]) / allowed);
            }
        }
        return distance;
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

    /** Which of n Ritz vectors in falling order of their values a restart keeps. */
    private int[] kept(int n) {
        int high = wanted.high;
        int low = wanted.low;
        int spare = Math.max(block, (most - high - low - block) / 3);
        return IntStream.range(0, n)
                .filter(k -> k < high + (low > 0 ? spare / 2 : spare) || (low > 0 && k >= n - low - spare / 2))
                .toArray();
    }

    /** Replaces the processed vectors by the best Ritz vectors. */
    private void compress(DenseEigen ritz) {
        int n = processed;
        List<double[]> rows = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        for (int k : kept(n)) {
            rows.add(ritz.vectors()[k]);
            values.add(ritz.values()[k]);
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
