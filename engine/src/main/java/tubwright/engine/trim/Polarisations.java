// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import tubwright.numerics.eigen.LeadingEigen;

/**
 * Polarisations of one site: stresses M ε of a field's strains, M the main directions of what its candidates want. Where the
 * stress is the same whatever they are, that is C₀(C̄⁻¹ − C_k⁻¹)C̄ more than the mixture has; where the strain is, C_k − C̄.
 */
final class Polarisations {
    /** Directions that matter less than this share of all are left out. */
    private static final double LITTLE = 1e-6;
    /** What candidates a mixture does without count, beside those it has. */
    private static final double OTHERS = 0.3;

    private final LightenProblem problem;
    private final int site;
    private final List<Integer> pieces = new ArrayList<>();
    private final double[][] body;
    /** By polarisation and piece. */
    private final List<double[][]> matrices = new ArrayList<>();

    /**
     * @param body stiffness of the comparison body by piece
     * @param gramians symmetric strain Gramians of the field by piece
     * @param most number of polarisations
     */
    Polarisations(
            LightenProblem problem,
            int site,
            double[][] body,
            double[] mixture,
            boolean[] allowed,
            double[][] gramians,
            int most) {
        this.problem = problem;
        this.site = site;
        this.body = body;
        for (int p = 0; p < problem.pieces.size(); p++) {
            if (decides(problem.pieces.get(p)) && problem.pieces.get(p).sites()[0] == site) {
                pieces.add(p);
            }
        }
        if (pieces.isEmpty()) {
            return;
        }
        int[] candidates = IntStream.range(problem.offset[site], problem.offset[site + 1])
                .filter(j -> allowed[j])
                .toArray();
        int m = 2 * candidates.length;
        double[][][] wanted = new double[m][pieces.size()][];
        double[] weight = new double[m];
        for (int i = 0; i < pieces.size(); i++) {
            Piece piece = problem.pieces.get(pieces.get(i));
            double[] mean = piece.mixed(mixture, problem.offset);
            double[] soft = Constitutive.inverse(mean);
            for (int a = 0; a < candidates.length; a++) {
                int k = candidates[a] - problem.offset[site];
                weight[a] = Math.sqrt(mixture[candidates[a]] + OTHERS / candidates.length);
                weight[candidates.length + a] = weight[a];
                wanted[a][i] = Constitutive.product(
                        Constitutive.product(body[pieces.get(i)], Constitutive.minus(soft, piece.flexibility()[k])),
                        mean);
                wanted[candidates.length + a][i] = Constitutive.minus(piece.stiffness()[k], mean);
            }
        }
        main(wanted, weight, gramians, most);
    }

    /** Whether a piece is decided by one site alone, and is of shells. */
    static boolean decides(Piece piece) {
        return piece.block() >= 0 && piece.sites().length == 1;
    }

    /** The main directions, in the energy that they cost in the comparison body. */
    private void main(double[][][] wanted, double[] weight, double[][] gramians, int most) {
        int m = wanted.length;
        double[][] products = new double[m][m];
        for (int i = 0; i < pieces.size(); i++) {
            int p = pieces.get(i);
            double[] inverse = Constitutive.inverse(body[p]);
            for (int a = 0; a < m; a++) {
                double[] y = Constitutive.product(Constitutive.product(inverse, wanted[a][i]), gramians[p]);
                for (int b = 0; b <= a; b++) {
                    products[a][b] += weight[a] * weight[b] * Constitutive.trace(y, wanted[b][i], 0);
                }
            }
        }
        for (int a = 0; a < m; a++) {
            for (int b = 0; b < a; b++) {
                products[b][a] = products[a][b];
            }
        }
        LeadingEigen eigen = LeadingEigen.of(products, m, Math.min(m, most));
        double all = IntStream.range(0, m).mapToDouble(a -> products[a][a]).sum();
        for (int e = 0; e < eigen.values().length && eigen.values()[e] > LITTLE * all; e++) {
            double[][] sum = new double[pieces.size()][Constitutive.ENTRIES];
            for (int a = 0; a < m; a++) {
                double share = eigen.vectors()[e][a] * weight[a] / Math.sqrt(eigen.values()[e]);
                for (int i = 0; i < pieces.size(); i++) {
                    sum[i] = Constitutive.plus(sum[i], share, wanted[a][i]);
                }
            }
            matrices.add(sum);
        }
    }

    int size() {
        return matrices.size();
    }

    /** Bᵀτ of a polarisation of a field, nothing on held unknowns. */
    double[] force(int polarisation, LoadedTub tub, double[] u) {
        double[] forces = new double[u.length];
        double[] nothing = new double[Constitutive.ENTRIES];
        for (int i = 0; i < pieces.size(); i++) {
            int block = problem.pieces.get(pieces.get(i)).block();
            tub.visits().forces(block, matrices.get(polarisation)[i], nothing, u, forces);
        }
        tub.release(forces);
        return forces;
    }

    /**
     * Σ w τ_rᵀ(C₀ − C_k)⁻¹τ_c of all pairs.
     *
     * @param k number of the candidate at the site
     * @param gramians of the field the polarisations are of, by piece
     */
    double[] costs(int k, double[][] gramians) {
        int b = matrices.size();
        double[] sum = new double[b * b];
        for (int i = 0; i < pieces.size(); i++) {
            int p = pieces.get(i);
            double[] inverse = gap(p, k);
            for (int r = 0; r < b; r++) {
                double[] y = Constitutive.product(Constitutive.product(inverse, matrices.get(r)[i]), gramians[p]);
                for (int c = 0; c < b; c++) {
                    double half = 0.5 * Constitutive.trace(y, matrices.get(c)[i], 0);
                    sum[r * b + c] += half;
                    sum[c * b + r] += half;
                }
            }
        }
        return sum;
    }

    /**
     * Σ w τ̄ᵀ(C₀ − C_k)⁻¹τ of all polarisations, and behind them that of τ̄ with itself, τ̄ = step · ε of another field.
     *
     * @param steps by piece
     * @param crossed Σ w ε_field ε_otherᵀ by piece
     * @param gramians of the other field by piece, symmetric
     */
    double[] common(int k, double[][] steps, double[][] crossed, double[][] gramians) {
        int b = matrices.size();
        double[] sum = new double[b + 1];
        for (int i = 0; i < pieces.size(); i++) {
            int p = pieces.get(i);
            double[] half = Constitutive.product(steps[p], gap(p, k));
            sum[b] += Constitutive.trace(Constitutive.product(half, steps[p]), gramians[p], 0);
            for (int r = 0; r < b; r++) {
                double[] product = Constitutive.product(half, matrices.get(r)[i]);
                sum[r] += Constitutive.trace(Constitutive.transposed(product, 0), crossed[p], 0);
            }
        }
        return sum;
    }

    /** (C₀ − C_k)⁻¹ at a piece. */
    private double[] gap(int p, int k) {
        return Constitutive.inverse(
                Constitutive.minus(body[p], problem.pieces.get(p).stiffness()[k]));
    }
}
