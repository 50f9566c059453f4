// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.numerics.Analysis;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SingularMatrixException;
import tubwright.numerics.SymmetricMatrix;

/**
 * The second half of a search for the lowest eigenvalues, once a run has told roughly where the last of them lies: a shift
 * is placed just beyond, where the estimates cannot lie below the truth, so that all asked for lie before it. Its
 * factorisation counts them, and about it the iteration goes on with all it has learnt until as many are found.
 */
final class CountedSearch {
    /** A problem with eigenvalues λ that can be sought about any shift σ. */
    interface Problem {
        /** The matrix of the inner product. */
        Product inner();

        /** The matrix whose negative pivots are as many as eigenvalues lie between the origin and σ. */
        SymmetricMatrix at(double shift);

        /** The operator with eigenvalues {@code scale}/(λ - σ). */
        BlockLanczos.Operator about(double shift, Factorisation factor);

        /** What stands over λ - σ. */
        double scale(double shift);

        /** Whether an eigenvalue of the operator is on the side of the origin that was asked about. */
        boolean asked(double value);

        /** The first run, seen about the shift. */
        BlockLanczos turned(BlockLanczos first, double shift, Factorisation factor, BlockLanczos.Wanted wanted);
    }

    /** Where the shift lies over the first estimate that cannot be believed, which is above the truth already. */
    private static final double BEYOND = 1.08;

    private static final int GUARD = 1;
    private static final int RESTARTS = 40;
    /** How many more than twice those asked for may lie before a shift. */
    private static final int SPARE = 8;

    private static final int ATTEMPTS = 12;

    private final Problem problem;
    private final Analysis analysis;
    private final double origin;
    private final int block;
    private final double tolerance;
    private int solves;
    private int factorisations;

    /**
     * @param origin below all eigenvalues sought
     * @param block vectors advanced at once
     * @param tolerance residual over eigenvalue of the operator
     */
    CountedSearch(Problem problem, Analysis analysis, double origin, int block, double tolerance) {
        this.problem = problem;
        this.analysis = analysis;
        this.origin = origin;
        this.block = block;
        this.tolerance = tolerance;
    }

    /**
     * The eigenvalues found, rising, at least those asked for where there are as many, and the count that proves them.
     *
     * @param values eigenvalues
     * @param vectors of unit norm
     * @param cut where they were counted, and how many there are before it
     */
    record Found(double[] values, List<double[]> vectors, Spectrum.Cut cut) {}

    /** What is made of the pairs while the factorisation about the shift is still there. */
    @FunctionalInterface
    interface Finish {
        /** The answer. */
        EigenPairs of(Found found, BlockLanczos.Operator operator);
    }

    int solves() {
        return solves;
    }

    int factorisations() {
        return factorisations;
    }

    /**
     * Places the shift, counts, and iterates.
     *
     * @param first the run so far
     * @param estimates of the lowest eigenvalues, rising, none below the truth
     * @param reliable how many of them can be believed
     */
    EigenPairs run(BlockLanczos first, int count, double[] estimates, int reliable, Finish finish) {
        int inside = Math.min(Math.min(count, reliable), estimates.length);
        double reach = 0.9 * (estimates[0] - origin);
        if (inside > 0) {
            double last = estimates[inside - 1] - origin;
            reach = 1.05 * last;
            if (inside < estimates.length && estimates[inside] - origin > last * (1 + 1e-7)) {
                double next = estimates[inside] - origin;
                reach = inside < count ? Math.max(reach, BEYOND * next) : Math.min(reach, 0.5 * (last + next));
            }
        }
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            double shift = origin + reach;
            try (Factorisation factor = analysis.factorise(problem.at(shift))) {
                factorisations++;
                int before = factor.negativePivots();
                if (before <= 2 * count + SPARE) {
                    BlockLanczos.Operator operator = problem.about(shift, factor);
                    return finish.of(about(shift, before, count, first, factor, operator), operator);
                }
                reach *= attempt < 2 ? 0.8 : 0.4;
            } catch (SingularMatrixException e) {
                reach *= 1 + 1e-4;
            }
        }
        throw disagreement();
    }

    private Found about(
            double shift,
            int before,
            int count,
            BlockLanczos first,
            Factorisation factor,
            BlockLanczos.Operator operator) {
        int low = before;
        int high = before >= count ? 0 : count + GUARD - before;
        BlockLanczos.Ritz ritz = BlockLanczos.Ritz.NONE;
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            BlockLanczos.Wanted wanted = new BlockLanczos.Wanted(high, Math.min(high, GUARD), low, 0, tolerance);
            if (attempt == 0) {
                BlockLanczos turned = problem.turned(first, shift, factor, wanted);
                ritz = turned.goOn(RESTARTS, false);
            } else {
                ritz = new BlockLanczos(problem.inner(), operator, block, wanted, 20 + attempt)
                        .run(ritz, List.of(), RESTARTS);
            }
            solves += ritz.solves();
            if (!ritz.converged() && attempt > 0) {
                throw new EigenException("The lowest eigenvalues did not converge; too many lie close together");
            }
            Found found = found(shift, ritz);
            int reached = (int)
                    Arrays.stream(found.values).filter(value -> value < shift).count();
            if (!ritz.converged() || reached < before) {
                low += before - reached;
                continue;
            }
            if (before >= count) {
                return new Found(found.values, found.vectors, new Spectrum.Cut(shift, before));
            }
            Spectrum.Cut cut = Spectrum.cut(found.values, Math.min(count, found.values.length), origin);
            int counted = cut.below() == before ? before : counted(cut.bound());
            if (counted == cut.below()) {
                return new Found(found.values, found.vectors, cut);
            }
            high += Math.max(0, counted - cut.below());
        }
        throw disagreement();
    }

    private int counted(double bound) {
        for (int attempt = 0; ; attempt++) {
            factorisations++;
            try (Factorisation at = analysis.factorise(problem.at(bound * (1 + 1e-8 * attempt)))) {
                return at.negativePivots();
            } catch (SingularMatrixException e) {
                if (attempt == 3) {
                    throw e;
                }
            }
        }
    }

    private Found found(double shift, BlockLanczos.Ritz ritz) {
        int n = ritz.values().length;
        int firstNegative = 0;
        while (firstNegative < n && ritz.values()[firstNegative] > 0) {
            firstNegative++;
        }
        double[] values = new double[n];
        List<double[]> vectors = new ArrayList<>();
        int count = 0;
        // In falling order the negative ones bring the eigenvalues before the shift, rising; then come those beyond.
        for (int step = 0; step < n; step++) {
            int i = (firstNegative + step) % n;
            double value = ritz.values()[i];
            if (problem.asked(value)) {
                values[count++] = shift + problem.scale(shift) / value;
                vectors.add(ritz.vectors()[i]);
            }
        }
        return new Found(Arrays.copyOf(values, count), vectors, new Spectrum.Cut(origin, 0));
    }

    private static EigenException disagreement() {
        return new EigenException("The count by inertia and the iteration do not agree on the number of eigenvalues");
    }
}
