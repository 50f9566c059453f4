// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * The lightest mixture of candidates under rows: min m·λ, Σ λ = 1 at every site, g_i·λ ≥ r_i, λ ≥ 0, by the dual simplex
 * method (Lemke 1954) from the basis of the lightest candidates, which is dual feasible as it stands. Cuts are few and
 * dense, so that the inverse of the basis is kept whole. What is proved with its multipliers is summed up apart
 * ({@link #bound}) and needs none of its accuracy.
 */
final class Relaxation {
    /** Far more than sums of a thousand terms lose, share of their size. */
    private static final double ROUNDING = 1e-12;

    final double[] cost;
    final int[] offset;
    final int sites;
    final int structural;

    /**
     * @param cost of each candidate, sites one after another
     * @param offset where the candidates of each site begin, and where the last end
     */
    Relaxation(double[] cost, int[] offset) {
        this.offset = offset;
        sites = offset.length - 1;
        structural = offset[sites];
        this.cost = cost;
    }

    /**
     * An optimum, or a proof that there is none.
     *
     * @param feasible whether some mixture meets the rows
     * @param mixture the lightest; where there is none, what was reached
     * @param multipliers of the rows, none negative
     * @param ray where there is none: multipliers that show it, when added often enough
     */
    record Answer(boolean feasible, double[] mixture, double[] multipliers, double[] ray) {}

    /** Solves with the candidates allowed; every site has one at least. */
    Answer solve(boolean[] allowed, List<Row> rows) {
        return begin(allowed, rows).answer();
    }

    /**
     * Begins with some rows; more may come, and the optimum before is then gone on from.
     *
     * @param allowed may shrink meanwhile, but for candidates in use
     */
    RelaxationSession begin(boolean[] allowed, List<Row> rows) {
        return begin(allowed, rows, new int[0]);
    }

    /**
     * Begins where another session stood: from its optimum, which stays dual feasible when candidates are struck out.
     *
     * @param standing what {@link RelaxationSession#standing} gave there; the first rows must be its {@link RelaxationSession#tight} ones. From
     *     the lightest candidates where it is empty
     */
    RelaxationSession begin(boolean[] allowed, List<Row> rows, int[] standing) {
        int held = standing.length - sites;
        if (held >= 0) {
            RelaxationSession session = new RelaxationSession(this, allowed, standing);
            session.add(rows.subList(0, held));
            if (session.stand(standing)) {
                session.add(rows.subList(held, rows.size()));
                return session;
            }
        }
        RelaxationSession session = new RelaxationSession(this, allowed, new int[0]);
        session.add(rows);
        return session;
    }

    /**
     * A cost below which no choice of the allowed candidates meets the rows: Σ y_i r_i + Σ_sites min_k (m − Σ y_i g_i),
     * for any y ≥ 0 (Lagrange), rounded down.
     *
     * @param reduced receives m − Σ y_i g_i less the least of its site, of every candidate
     */
    double bound(double[] y, boolean[] allowed, List<Row> rows, double[] reduced) {
        System.arraycopy(cost, 0, reduced, 0, structural);
        double sum = 0;
        double size = 0;
        for (int i = 0; i < y.length; i++) {
            if (y[i] > 0) {
                Row row = rows.get(i);
                sum += y[i] * row.least();
                size += Math.abs(y[i] * row.least());
                for (int j = 0; j < structural; j++) {
                    double term = y[i] * row.coefficients()[j];
                    reduced[j] -= term;
                    size += 1e-3 * Math.abs(term);
                }
            }
        }
        for (int z = 0; z < sites; z++) {
            double least = Double.POSITIVE_INFINITY;
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                if (allowed[j]) {
                    least = Math.min(least, reduced[j]);
                }
            }
            sum += least;
            size += Math.abs(least);
            for (int j = offset[z]; j < offset[z + 1]; j++) {
                reduced[j] -= least;
            }
        }
        return sum - ROUNDING * size;
    }
}
