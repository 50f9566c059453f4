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
    private static final double PIVOT = 1e-9;
    private static final double FEASIBLE = 1e-9;
    private static final int REFRESH = 60;
    /** Far more than sums of a thousand terms lose, share of their size. */
    private static final double ROUNDING = 1e-12;

    private final double[] cost;
    private final int[] offset;
    private final int sites;
    private final int structural;

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
        return new Run(allowed, rows).run();
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

    private final class Run {
        private final boolean[] allowed;
        private final List<Row> rows;
        private final int m;
        private final int n;
        /** Column of each place of the basis; slacks come after the candidates. */
        private final int[] basis;

        private final boolean[] basic;
        private final double[] inverse;
        private final double[] x;
        private final double[] d;
        private final double[] shifted;
        private final double[] alpha;
        private final double[] column;

        Run(boolean[] allowed, List<Row> rows) {
            this.allowed = allowed;
            this.rows = rows;
            m = sites + rows.size();
            n = structural + rows.size();
            basis = new int[m];
            basic = new boolean[n];
            inverse = new double[m * m];
            x = new double[m];
            d = new double[n];
            alpha = new double[n];
            column = new double[m];
            shifted = cost.clone();
            double size = 0;
            for (double c : cost) {
                size = Math.max(size, Math.abs(c));
            }
            for (int j = 0; j < structural; j++) {
                // Ties are parted by a little, always the same, so that no basis comes back.
                shifted[j] += 1e-9 * size * ((j * 2654435761L & 0xffff) / 65536.0);
            }
            for (int z = 0; z < sites; z++) {
                int lightest = -1;
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    if (allowed[j] && (lightest < 0 || shifted[j] < shifted[lightest])) {
                        lightest = j;
                    }
                }
                basis[z] = lightest;
                inverse[z * m + z] = 1;
                for (int i = 0; i < rows.size(); i++) {
                    inverse[(sites + i) * m + z] = rows.get(i).coefficients()[lightest];
                }
            }
            for (int i = 0; i < rows.size(); i++) {
                basis[sites + i] = structural + i;
                inverse[(sites + i) * m + sites + i] = -1;
            }
            for (int b : basis) {
                basic[b] = true;
            }
        }

        Answer run() {
            refresh();
            int most = 50 * (m + 10);
            for (int pivot = 1; pivot <= most; pivot++) {
                int leaving = -1;
                double worst = -FEASIBLE;
                for (int p = 0; p < m; p++) {
                    if (x[p] < worst) {
                        worst = x[p];
                        leaving = p;
                    }
                }
                if (leaving < 0) {
                    break;
                }
                int entering = entering(leaving);
                if (entering < 0) {
                    return new Answer(false, mixture(), multipliers(), ray(leaving));
                }
                pivot(leaving, entering);
                if (pivot % REFRESH == 0 && !reinvert()) {
                    break;
                }
            }
            return new Answer(true, mixture(), multipliers(), new double[0]);
        }

        private int entering(int leaving) {
            int from = leaving * m;
            for (int j = 0; j < structural; j++) {
                alpha[j] = 0;
            }
            for (int z = 0; z < sites; z++) {
                double r = inverse[from + z];
                if (r != 0) {
                    for (int j = offset[z]; j < offset[z + 1]; j++) {
                        alpha[j] = r;
                    }
                }
            }
            for (int i = 0; i < rows.size(); i++) {
                double r = inverse[from + sites + i];
                alpha[structural + i] = -r;
                if (r != 0) {
                    double[] g = rows.get(i).coefficients();
                    for (int j = 0; j < structural; j++) {
                        alpha[j] += r * g[j];
                    }
                }
            }
            int entering = -1;
            double least = Double.POSITIVE_INFINITY;
            for (int j = 0; j < n; j++) {
                if (alpha[j] < -PIVOT && !basic[j] && (j >= structural || allowed[j])) {
                    double ratio = Math.max(0, d[j]) / -alpha[j];
                    if (ratio < least - 1e-14 || ratio <= least + 1e-14 && alpha[j] < alpha[entering]) {
                        least = Math.min(least, ratio);
                        entering = j;
                    }
                }
            }
            return entering;
        }

        private void pivot(int leaving, int entering) {
            column(entering);
            double w = column[leaving];
            double theta = x[leaving] / w;
            double step = d[entering] / alpha[entering];
            for (int j = 0; j < n; j++) {
                d[j] -= step * alpha[j];
            }
            d[entering] = 0;
            d[basis[leaving]] = -step;
            for (int k = 0; k < m; k++) {
                inverse[leaving * m + k] /= w;
            }
            for (int p = 0; p < m; p++) {
                double f = column[p];
                if (p != leaving && f != 0) {
                    x[p] -= theta * f;
                    for (int k = 0; k < m; k++) {
                        inverse[p * m + k] -= f * inverse[leaving * m + k];
                    }
                }
            }
            x[leaving] = theta;
            basic[basis[leaving]] = false;
            basic[entering] = true;
            basis[leaving] = entering;
        }

        /** B⁻¹ times the column of a variable. */
        private void column(int j) {
            if (j >= structural) {
                for (int p = 0; p < m; p++) {
                    column[p] = -inverse[p * m + sites + j - structural];
                }
                return;
            }
            int z = site(j);
            for (int p = 0; p < m; p++) {
                double sum = inverse[p * m + z];
                for (int i = 0; i < rows.size(); i++) {
                    sum += inverse[p * m + sites + i] * rows.get(i).coefficients()[j];
                }
                column[p] = sum;
            }
        }

        private int site(int j) {
            int z = 0;
            while (offset[z + 1] <= j) {
                z++;
            }
            return z;
        }

        /** Values and reduced costs from the inverse at hand. */
        private void refresh() {
            for (int p = 0; p < m; p++) {
                double sum = 0;
                for (int z = 0; z < sites; z++) {
                    sum += inverse[p * m + z];
                }
                for (int i = 0; i < rows.size(); i++) {
                    sum += inverse[p * m + sites + i] * rows.get(i).least();
                }
                x[p] = sum;
            }
            double[] y = prices();
            for (int z = 0; z < sites; z++) {
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    d[j] = shifted[j] - y[z];
                }
            }
            for (int i = 0; i < rows.size(); i++) {
                double[] g = rows.get(i).coefficients();
                d[structural + i] = y[sites + i];
                if (y[sites + i] != 0) {
                    for (int j = 0; j < structural; j++) {
                        d[j] -= y[sites + i] * g[j];
                    }
                }
            }
            for (int b : basis) {
                d[b] = 0;
            }
        }

        private double[] prices() {
            double[] y = new double[m];
            for (int p = 0; p < m; p++) {
                double c = basis[p] < structural ? shifted[basis[p]] : 0;
                if (c != 0) {
                    for (int k = 0; k < m; k++) {
                        y[k] += c * inverse[p * m + k];
                    }
                }
            }
            return y;
        }

        /** The inverse anew, by elimination with row exchanges. */
        private boolean reinvert() {
            double[] a = new double[m * m];
            for (int p = 0; p < m; p++) {
                int j = basis[p];
                if (j >= structural) {
                    a[(sites + j - structural) * m + p] = -1;
                } else {
                    a[site(j) * m + p] = 1;
                    for (int i = 0; i < rows.size(); i++) {
                        a[(sites + i) * m + p] = rows.get(i).coefficients()[j];
                    }
                }
            }
            double[] b = new double[m * m];
            for (int i = 0; i < m; i++) {
                b[i * m + i] = 1;
            }
            for (int c = 0; c < m; c++) {
                int best = c;
                for (int i = c + 1; i < m; i++) {
                    best = Math.abs(a[i * m + c]) > Math.abs(a[best * m + c]) ? i : best;
                }
                if (Math.abs(a[best * m + c]) < 1e-13) {
                    return false;
                }
                if (best != c) {
                    swap(a, c, best);
                    swap(b, c, best);
                }
                double pivot = 1 / a[c * m + c];
                for (int k = 0; k < m; k++) {
                    a[c * m + k] *= pivot;
                    b[c * m + k] *= pivot;
                }
                for (int i = 0; i < m; i++) {
                    double f = a[i * m + c];
                    if (i != c && f != 0) {
                        for (int k = 0; k < m; k++) {
                            a[i * m + k] -= f * a[c * m + k];
                            b[i * m + k] -= f * b[c * m + k];
                        }
                    }
                }
            }
            System.arraycopy(b, 0, inverse, 0, b.length);
            refresh();
            return true;
        }

        private void swap(double[] a, int i, int j) {
            for (int k = 0; k < m; k++) {
                double t = a[i * m + k];
                a[i * m + k] = a[j * m + k];
                a[j * m + k] = t;
            }
        }

        private double[] mixture() {
            double[] mixture = new double[structural];
            for (int p = 0; p < m; p++) {
                if (basis[p] < structural) {
                    mixture[basis[p]] = Math.max(0, x[p]);
                }
            }
            for (int z = 0; z < sites; z++) {
                double sum = 0;
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    mixture[j] = mixture[j] < 1e-9 ? 0 : mixture[j];
                    sum += mixture[j];
                }
                for (int j = offset[z]; j < offset[z + 1]; j++) {
                    mixture[j] /= sum;
                }
            }
            return mixture;
        }

        private double[] multipliers() {
            double[] y = new double[rows.size()];
            for (int i = 0; i < y.length; i++) {
                y[i] = Math.max(0, basic[structural + i] ? 0 : d[structural + i]);
            }
            return y;
        }

        private double[] ray(int leaving) {
            double[] ray = new double[rows.size()];
            for (int i = 0; i < ray.length; i++) {
                ray[i] = Math.max(0, -inverse[leaving * m + sites + i]);
            }
            return ray;
        }
    }
}
