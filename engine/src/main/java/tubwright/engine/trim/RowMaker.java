// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/** Rows of weight back: what fields and stresses say about every choice that meets a target. */
final class RowMaker {
    /** Right-hand sides give way by this share of what was summed up, for rounding. */
    private static final double ROUNDING = 1e-9;

    private final LightenProblem problem;
    private final double[] most;

    /**
     * @param most compliance each target allows, in the order of the problem's tubs, J
     */
    RowMaker(LightenProblem problem, double[] most) {
        this.problem = problem;
        this.most = most;
    }

    /** Strain Gramians of a field by piece. */
    double[][] gramians(int target, double[] u) {
        LoadedTub tub = problem.tubs.get(target);
        double[][] result = new double[problem.pieces.size()][];
        java.util.stream.IntStream.range(0, result.length)
                .parallel()
                .forEach(p -> result[p] = problem.pieces.get(p).gramiansWith(tub, u, List.of(u)));
        return result;
    }

    /**
     * vᵀK(λ)v ≥ (fᵀv)²/c_target.
     *
     * @param gramians of v by piece
     * @param nominal vᵀK₀v, J
     * @param load fᵀv, J
     * @param about a choice near which the row is to be sharp
     */
    Row cut(int target, double[][] gramians, double nominal, double load, int[] about) {
        LoadedTub tub = problem.tubs.get(target);
        double[] coefficients = new double[problem.masses.length];
        double fixed = nominal;
        double size = Math.abs(nominal);
        for (int p = 0; p < gramians.length; p++) {
            Piece piece = problem.pieces.get(p);
            double own = piece.trace(piece.nominal(tub), gramians[p]);
            fixed -= own;
            size += Math.abs(own);
            piece.majorant(piece.stiffness(), gramians[p], about, problem.offset, 1, coefficients);
        }
        double least = load * load / most[target];
        return new Row(coefficients, least - fixed - ROUNDING * (size + least));
    }

    /**
     * Σ λ tr(C_k⁻¹ H) ≤ c_target less the fixed part, H of a design's stresses; written with ≥. Enough for whole
     * choices, and equal to the compliance at the design.
     *
     * @param compliance of the design, J
     * @param slack share by which the target may be passed
     */
    Row flexibility(int target, double[][] gramians, double compliance, int[] choice, double slack) {
        double[] coefficients = new double[problem.masses.length];
        double fixed = compliance;
        for (int p = 0; p < gramians.length; p++) {
            Piece piece = problem.pieces.get(p);
            double[] c = piece.stiffness()[piece.combination(choice)];
            fixed -= piece.trace(c, gramians[p]);
            double[] h = piece.stresses(c, gramians[p]);
            piece.majorant(piece.flexibility(), h, choice, problem.offset, -1, coefficients);
        }
        return new Row(coefficients, fixed - most[target] * (1 + slack));
    }

    /**
     * What the candidates cost in compliance under the stresses of a mixture, and how much of it the mixture hides.
     *
     * @param key receives tr(C_k⁻¹ H) of each candidate, J
     * @param ofSite receives Σ λ tr(C_k⁻¹ H) − tr(C̄⁻¹ H), J
     */
    void blur(double[][] gramians, double[] mixture, double share, double[] key, double[] ofSite) {
        int[] about = problem.rounded(mixture);
        for (int p = 0; p < gramians.length; p++) {
            Piece piece = problem.pieces.get(p);
            double[] c = piece.mixed(mixture, problem.offset);
            double[] own = new double[key.length];
            piece.majorant(piece.flexibility(), piece.stresses(c, gramians[p]), about, problem.offset, share, own);
            int site = piece.sites()[0];
            double gap = -share * piece.trace(c, gramians[p]);
            for (int j = 0; j < own.length; j++) {
                key[j] += own[j];
            }
            for (int j = problem.offset[site]; j < problem.offset[site + 1]; j++) {
                gap += mixture[j] * own[j];
            }
            ofSite[site] += gap;
        }
    }
}
