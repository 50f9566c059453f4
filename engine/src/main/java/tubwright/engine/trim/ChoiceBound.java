// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Arrays;
import java.util.stream.IntStream;
import tubwright.numerics.eigen.DenseEigen;

/**
 * A lower bound on compliance, linear in the choice, from amounts a_k of polarisations that each candidate may choose:
 *
 * <p>c(λ) ≥ ‖m − Σ_z T_z d_z‖² − Σ λ_k (a_kᵀR_k a_k + 2 l_kᵀa_k + s_k), d_z = a_k(z) − ā_z.
 *
 * <p>‖Σ T d‖² is at least Σ_z d_zᵀQ_z d_z for every block diagonal Q ⪯ TᵀK₀T, and then all is a sum over the sites. ā and
 * a_k are the best for a mixture; the bound holds for any.
 */
final class ChoiceBound {
    /** Right-hand sides give way by this share of what was summed up, for rounding. */
    private static final double ROUNDING = 1e-9;

    /** Added to R, which is one or more, so that R − Q is never singular; a higher cost only lowers the bound. */
    private static final double DEARER = 1e-6;

    private final int[] offset;
    private final int[] first;
    private final int sites;
    private final int n;
    /** TᵀK₀T of all polarisations, those of one site orthonormal. */
    private final double[] gramian;
    /** By site how the polarisations given are combined to that end, in rows. */
    private final double[][][] rows;
    /** R_k by candidate; empty where not allowed. */
    private final double[][] costs;
    /** Q_z. */
    private final double[][] square;
    /** (R_k − Q)⁻¹ by candidate; empty where not allowed. */
    private final double[][] responses;
    /** ‖u₀ − t̄‖². */
    private double load;
    /** Tᵀ K₀ (u₀ − t̄). */
    private double[] loads = new double[0];
    /** l_k. */
    private double[][] linear = new double[0][];
    /** s_k. */
    private double[] common = new double[0];

    /**
     * @param offset where the candidates of each site begin, and where the last end
     * @param first the same of polarisations
     * @param gramian of the polarisations' fields in the energy of the comparison body
     * @param costs R_k by candidate; empty where it may not be chosen
     */
    ChoiceBound(int[] offset, int[] first, double[] gramian, double[][] costs) {
        this.offset = offset;
        this.first = first;
        this.gramian = gramian;
        this.costs = costs;
        sites = offset.length - 1;
        n = first[sites];
        rows = new double[sites][][];
        square = new double[sites][];
        responses = new double[costs.length][0];
        for (int s = 0; s < sites; s++) {
            int b = size(s);
            rows[s] = whitening(s);
            square[s] = new double[b * b];
            turn(gramian, n, first[s], rows[s]);
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                if (costs[j].length > 0) {
                    turn(costs[j], b, 0, rows[s]);
                    for (int i = 0; i < b; i++) {
                        costs[j][i * b + i] += DEARER;
                    }
                }
            }
        }
        respond();
    }

    private int size(int site) {
        return first[site + 1] - first[site];
    }

    /**
     * Sets what all candidates have in common.
     *
     * @param load ‖u₀ − t̄‖²
     * @param loads Tᵀ K₀ (u₀ − t̄) of the polarisations as given
     * @param common by candidate l_k of them, and behind it s_k
     */
    void about(double load, double[] loads, double[][] common) {
        this.load = load;
        this.loads = new double[n];
        linear = new double[common.length][];
        this.common = new double[common.length];
        for (int s = 0; s < sites; s++) {
            int b = size(s);
            apply(s, Arrays.copyOfRange(loads, first[s], first[s + 1]), this.loads, first[s]);
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                linear[j] = new double[b];
                if (costs[j].length > 0) {
                    apply(s, common[j], linear[j], 0);
                    this.common[j] = common[j][b];
                }
            }
        }
    }

    private void apply(int site, double[] of, double[] to, int at) {
        for (int r = 0; r < rows[site].length; r++) {
            for (int c = 0; c < rows[site].length; c++) {
                to[at + r] += rows[site][r][c] * of[c];
            }
        }
    }

    /** Rows W with W G Wᵀ = 1 of a site's own part of the Gramian. */
    private double[][] whitening(int site) {
        int b = size(site);
        double[][] own = new double[b][b];
        for (int r = 0; r < b; r++) {
            System.arraycopy(gramian, (first[site] + r) * n + first[site], own[r], 0, b);
        }
        DenseEigen eigen = DenseEigen.of(own, b);
        double[][] result = new double[b][b];
        for (int e = 0; e < b; e++) {
            double scale = 1 / Math.sqrt(Math.max(eigen.values()[e], 1e-9 * eigen.values()[0]));
            for (int i = 0; i < b; i++) {
                result[e][i] = scale * eigen.vectors()[e][i];
            }
        }
        return result;
    }

    /** W A Wᵀ, W the unit matrix but for rows at one place. */
    private static void turn(double[] a, int n, int at, double[][] rows) {
        int b = rows.length;
        double[] column = new double[b];
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < b; i++) {
                column[i] = a[(at + i) * n + j];
            }
            for (int r = 0; r < b; r++) {
                a[(at + r) * n + j] = LoadedTub.dot(rows[r], column);
            }
        }
        for (int i = 0; i < n; i++) {
            System.arraycopy(a, i * n + at, column, 0, b);
            for (int r = 0; r < b; r++) {
                a[i * n + at + r] = LoadedTub.dot(rows[r], column);
            }
        }
    }

    /**
     * Finds how much of the square of deviations may be counted.
     *
     * @param mixture about which
     * @param plausible shares of candidates whose deviations are to count
     */
    void tune(double[] mixture, double[] plausible) {
        double[] worth = new double[n];
        double[][] amounts = amounts(mean(mixture));
        double[][][] axes = new double[sites][][];
        double[] turned = gramian.clone();
        for (int s = 0; s < sites; s++) {
            DenseEigen eigen = DenseEigen.of(spread(s, plausible, amounts), size(s));
            axes[s] = eigen.vectors();
            for (int e = 0; e < size(s); e++) {
                worth[first[s] + e] = Math.max(0, eigen.values()[e]);
            }
            turn(turned, n, first[s], axes[s]);
        }
        double[] q = Minorant.of(turned, worth, n);
        for (int s = 0; s < sites; s++) {
            int b = size(s);
            square[s] = new double[b * b];
            for (int e = 0; e < b; e++) {
                for (int r = 0; r < b; r++) {
                    for (int c = 0; c < b; c++) {
                        square[s][r * b + c] += q[first[s] + e] * axes[s][e][r] * axes[s][e][c];
                    }
                }
            }
        }
        respond();
    }

    private double[][] spread(int s, double[] shares, double[][] amounts) {
        int b = size(s);
        double[] mean = new double[b];
        double[][] spread = new double[b][b];
        for (int j = offset[s]; j < offset[s + 1]; j++) {
            for (int i = 0; i < b; i++) {
                mean[i] += shares[j] * amounts[j][i];
            }
        }
        for (int j = offset[s]; j < offset[s + 1]; j++) {
            for (int r = 0; r < b && shares[j] > 0; r++) {
                for (int c = 0; c < b; c++) {
                    spread[r][c] += shares[j] * (amounts[j][r] - mean[r]) * (amounts[j][c] - mean[c]);
                }
            }
        }
        return spread;
    }

    private void respond() {
        IntStream.range(0, sites).parallel().forEach(s -> {
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                double[] a = costs[j].clone();
                for (int i = 0; i < a.length; i++) {
                    a[i] -= square[s][i];
                }
                responses[j] = a.length > 0 ? SmallSystem.inverse(a, size(s)) : a;
            }
        });
    }

    /** The best ā for a mixture: (S + Q − G) ā = −h − S Σ λ (R − Q)⁻¹l, S = (Σ λ (R_k − Q)⁻¹)⁻¹. */
    private double[] mean(double[] mixture) {
        double[] a = new double[n * n];
        double[] right = new double[n];
        for (int i = 0; i < a.length; i++) {
            a[i] = -gramian[i];
        }
        for (int s = 0; s < sites; s++) {
            int b = size(s);
            double[] sum = new double[b * b];
            double[] drawn = new double[b];
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                double[] each = mixture[j] > 0 ? responses[j] : new double[0];
                for (int i = 0; i < each.length; i++) {
                    sum[i] += mixture[j] * each[i];
                    drawn[i / b] += mixture[j] * each[i] * linear[j][i % b];
                }
            }
            double[] harmonic = SmallSystem.inverse(sum, b);
            for (int r = 0; r < b; r++) {
                right[first[s] + r] -= loads[first[s] + r];
                for (int c = 0; c < b; c++) {
                    a[(first[s] + r) * n + first[s] + c] += harmonic[r * b + c] + square[s][r * b + c];
                    right[first[s] + r] -= harmonic[r * b + c] * drawn[c];
                }
            }
        }
        return SmallSystem.nearSolution(a, right, n);
    }

    /** Tᵀ K₀ m, m = u₀ − t̄ − T ā. */
    private double[] pull(double[] mean) {
        double[] pull = loads.clone();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                pull[i] -= gramian[i * n + j] * mean[j];
            }
        }
        return pull;
    }

    /** a_k by candidate, the best about a mean. */
    private double[][] amounts(double[] mean) {
        double[][] result = new double[offset[sites]][];
        double[] pull = pull(mean);
        for (int s = 0; s < sites; s++) {
            int b = size(s);
            double[] wanted = new double[b];
            for (int r = 0; r < b; r++) {
                wanted[r] = -pull[first[s] + r];
                for (int c = 0; c < b; c++) {
                    wanted[r] -= square[s][r * b + c] * mean[first[s] + c];
                }
            }
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                result[j] = new double[b];
                double[] response = responses[j];
                for (int i = 0; i < response.length; i++) {
                    result[j][i / b] += response[i] * (wanted[i % b] - linear[j][i % b]);
                }
            }
        }
        return result;
    }

    /**
     * The bound about a mixture as a row: what every choice of this compliance or less keeps to.
     *
     * @param most compliance, J
     */
    Row row(double[] mixture, double most) {
        double[] mean = mean(mixture);
        double[] pull = pull(mean);
        double[][] amounts = amounts(mean);
        double constant = load;
        double size = load + most;
        for (int i = 0; i < n; i++) {
            double term = (loads[i] + pull[i]) * mean[i];
            constant -= term;
            size += Math.abs(term);
        }
        double[] coefficients = new double[offset[sites]];
        for (int s = 0; s < sites; s++) {
            for (int j = offset[s]; j < offset[s + 1]; j++) {
                coefficients[j] = costs[j].length > 0 ? cost(s, j, amounts[j], mean, pull) : common[j];
            }
        }
        return new Row(coefficients, constant - most - ROUNDING * size);
    }

    /** What a candidate takes off the bound. */
    private double cost(int s, int j, double[] a, double[] mean, double[] pull) {
        int b = size(s);
        double cost = common[j];
        for (int r = 0; r < b; r++) {
            double d = a[r] - mean[first[s] + r];
            cost += 2 * pull[first[s] + r] * d + 2 * linear[j][r] * a[r];
            for (int c = 0; c < b; c++) {
                cost += a[r] * costs[j][r * b + c] * a[c] - square[s][r * b + c] * d * (a[c] - mean[first[s] + c]);
            }
        }
        return cost;
    }
}
