// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An optimum of a {@link Relaxation} that rows are added to, by the dual simplex method. Candidates not allowed at the
 * beginning are left out of all that is stored.
 */
final class RelaxationSession {
    private static final double PIVOT = 1e-9;
    private static final double FEASIBLE = 1e-9;
    private static final int REFRESH = 60;

    private final double[] cost;
    private final int[] offset;
    private final int sites;
    private final int structural;
    private final boolean[] allowed;
    /** The candidates, in the numbering of everybody else, and where those of each site begin. */
    private final int[] own;

    private final int[] from;
    private final int[] siteOf;
    private final double[] shifted;
    private final List<double[]> rows = new ArrayList<>();
    private final List<Double> least = new ArrayList<>();
    private int m;
    /** Column of each place of the basis; slacks come after the candidates. */
    private int[] basis;

    private boolean[] basic;
    private double[] inverse;
    private double[] x;
    private double[] d;
    private double[] alpha;
    private double[] column;
    private int sinceInverted;

    /**
     * @param relaxation whose candidates these are
     * @param allowed may shrink, but for candidates in use
     * @param standing candidates that may be in the basis though they are not allowed
     */
    RelaxationSession(Relaxation relaxation, boolean[] allowed, int[] standing) {
        cost = relaxation.cost;
        offset = relaxation.offset;
        sites = relaxation.sites;
        structural = relaxation.structural;
        this.allowed = allowed;
        own = IntStream.concat(IntStream.range(0, structural).filter(j -> allowed[j]), Arrays.stream(standing))
                .sorted()
                .distinct()
                .toArray();
        int n = own.length;
        from = new int[sites + 1];
        siteOf = new int[n];
        shifted = new double[n];
        double size = 0;
        for (double c : cost) {
            size = Math.max(size, Math.abs(c));
        }
        for (int k = 0, z = 0; k < n; k++) {
            while (offset[z + 1] <= own[k]) {
                from[++z] = k;
            }
            siteOf[k] = z;
            // Ties are parted by a little, always the same, so that no basis comes back.
            shifted[k] = cost[own[k]] + 1e-9 * size * ((own[k] * 2654435761L & 0xffff) / 65536.0);
        }
        from[sites] = n;
        m = sites;
        basis = new int[m];
        basic = new boolean[n];
        inverse = new double[m * m];
        x = new double[m];
        d = new double[n];
        alpha = new double[n];
        column = new double[m];
        for (int z = 0; z < sites; z++) {
            int lightest = from[z];
            for (int k = from[z]; k < from[z + 1]; k++) {
                lightest = shifted[k] < shifted[lightest] ? k : lightest;
            }
            basis[z] = lightest;
            basic[lightest] = true;
            inverse[z * m + z] = 1;
            x[z] = 1;
            for (int k = from[z]; k < from[z + 1]; k++) {
                d[k] = shifted[k] - shifted[lightest];
            }
        }
    }

    /** Sets the basis to candidates alone; says whether that could be done. */
    boolean stand(int[] standing) {
        Arrays.fill(basic, false);
        for (int p = 0; p < m; p++) {
            basis[p] = Arrays.binarySearch(own, standing[p]);
            basic[basis[p]] = true;
        }
        if (!reinvert()) {
            return false;
        }
        for (int k = 0; k < d.length; k++) {
            if (d[k] < -FEASIBLE && !basic[k] && (k >= own.length || allowed[own[k]])) {
                return false;
            }
        }
        return true;
    }

    /** Which rows hold the optimum up: those without a slack in the basis. */
    boolean[] tight() {
        boolean[] tight = new boolean[rows.size()];
        for (int i = 0; i < tight.length; i++) {
            tight[i] = !basic[own.length + i];
        }
        return tight;
    }

    /** The candidates in the basis, as many as there are sites and tight rows. */
    int[] standing() {
        return Arrays.stream(basis).filter(k -> k < own.length).map(k -> own[k]).toArray();
    }

    /** Adds rows; their slacks stand in the basis. */
    void add(List<Row> more) {
        int old = m;
        int count = more.size();
        m += count;
        basis = Arrays.copyOf(basis, m);
        basic = Arrays.copyOf(basic, basic.length + count);
        x = Arrays.copyOf(x, m);
        d = Arrays.copyOf(d, d.length + count);
        alpha = new double[d.length];
        column = new double[m];
        double[] grown = new double[m * m];
        for (int p = 0; p < old; p++) {
            System.arraycopy(inverse, p * old, grown, p * m, old);
        }
        inverse = grown;
        for (int i = 0; i < count; i++) {
            double[] g = new double[own.length];
            for (int k = 0; k < g.length; k++) {
                g[k] = more.get(i).coefficients()[own[k]];
            }
            int p = old + i;
            basis[p] = own.length + rows.size();
            basic[basis[p]] = true;
            rows.add(g);
            least.add(more.get(i).least());
            double sum = -more.get(i).least();
            for (int q = 0; q < old; q++) {
                double c = basis[q] < g.length ? g[basis[q]] : 0;
                if (c != 0) {
                    sum += c * x[q];
                    for (int k = 0; k < old; k++) {
                        inverse[p * m + k] += c * inverse[q * m + k];
                    }
                }
            }
            inverse[p * m + p] = -1;
            x[p] = sum;
        }
    }

    /** Goes on to the optimum. */
    Relaxation.Answer answer() {
        int most = 50 * (m + 10);
        for (int pivot = 1; pivot <= most; pivot++) {
            int leaving = -1;
            double worst = -FEASIBLE;
            for (int p = 0; p < m; p++) {
                // Candidates struck out meanwhile leave for nothing from above.
                double missing = struck(p) ? -Math.abs(x[p]) : x[p];
                if (missing < worst) {
                    worst = missing;
                    leaving = p;
                }
            }
            if (leaving < 0) {
                break;
            }
            double side = x[leaving] < 0 ? 1 : -1;
            int entering = entering(leaving, side);
            if (entering < 0) {
                return new Relaxation.Answer(false, mixture(), multipliers(), ray(leaving, side));
            }
            pivot(leaving, entering);
            if (++sinceInverted % REFRESH == 0 && !reinvert()) {
                break;
            }
        }
        return new Relaxation.Answer(true, mixture(), multipliers(), new double[0]);
    }

    private boolean struck(int place) {
        return basis[place] < own.length && !allowed[own[basis[place]]];
    }

    /**
     * The candidate or slack to take in; −1 where there is none.
     *
     * @param side 1 where the leaving one is too small, −1 where it is too great
     */
    private int entering(int leaving, double side) {
        int at = leaving * m;
        int n = own.length;
        for (int z = 0; z < sites; z++) {
            Arrays.fill(alpha, from[z], from[z + 1], inverse[at + z]);
        }
        for (int i = 0; i < rows.size(); i++) {
            double r = inverse[at + sites + i];
            alpha[n + i] = -r;
            if (r != 0) {
                double[] g = rows.get(i);
                for (int k = 0; k < n; k++) {
                    alpha[k] += r * g[k];
                }
            }
        }
        int entering = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < d.length; k++) {
            double a = side * alpha[k];
            if (a < -PIVOT && !basic[k] && (k >= n || allowed[own[k]])) {
                double ratio = Math.max(0, d[k]) / -a;
                if (ratio < least - 1e-14 || ratio <= least + 1e-14 && a < side * alpha[entering]) {
                    least = Math.min(least, ratio);
                    entering = k;
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
        for (int j = 0; j < d.length; j++) {
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
        if (j >= own.length) {
            for (int p = 0; p < m; p++) {
                column[p] = -inverse[p * m + sites + j - own.length];
            }
            return;
        }
        double[] g = new double[rows.size()];
        for (int i = 0; i < g.length; i++) {
            g[i] = rows.get(i)[j];
        }
        for (int p = 0; p < m; p++) {
            double sum = inverse[p * m + siteOf[j]];
            for (int i = 0; i < g.length; i++) {
                sum += inverse[p * m + sites + i] * g[i];
            }
            column[p] = sum;
        }
    }

    /** Values and reduced costs from the inverse at hand. */
    private void refresh() {
        int n = own.length;
        for (int p = 0; p < m; p++) {
            double sum = 0;
            for (int z = 0; z < sites; z++) {
                sum += inverse[p * m + z];
            }
            for (int i = 0; i < rows.size(); i++) {
                sum += inverse[p * m + sites + i] * least.get(i);
            }
            x[p] = sum;
        }
        double[] y = prices();
        for (int k = 0; k < n; k++) {
            d[k] = shifted[k] - y[siteOf[k]];
        }
        for (int i = 0; i < rows.size(); i++) {
            double[] g = rows.get(i);
            d[n + i] = y[sites + i];
            if (y[sites + i] != 0) {
                for (int k = 0; k < n; k++) {
                    d[k] -= y[sites + i] * g[k];
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
            double c = basis[p] < own.length ? shifted[basis[p]] : 0;
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
            if (j >= own.length) {
                a[(sites + j - own.length) * m + p] = -1;
            } else {
                a[siteOf[j] * m + p] = 1;
                for (int i = 0; i < rows.size(); i++) {
                    a[(sites + i) * m + p] = rows.get(i)[j];
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
            if (basis[p] < own.length) {
                mixture[own[basis[p]]] = Math.max(0, x[p]);
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
            y[i] = Math.max(0, basic[own.length + i] ? 0 : d[own.length + i]);
        }
        return y;
    }

    private double[] ray(int leaving, double side) {
        double[] ray = new double[rows.size()];
        for (int i = 0; i < ray.length; i++) {
            ray[i] = Math.max(0, -side * inverse[leaving * m + sites + i]);
        }
        return ray;
    }
}
