// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What a symmetric system is at some of its unknowns B when all others I are left to themselves (Guyan 1965):
 * S = K_BB − K_BI K_II⁻¹ K_IB, and of a load p what arrives at B.
 *
 * @param matrix S, row-major, symmetric
 * @param load p_B − K_BI K_II⁻¹ p_I
 * @param give p_Iᵀ K_II⁻¹ p_I
 */
public record Condensed(double[] matrix, double[] load, double give) {
    private static final int AT_ONCE = 64;

    /** By solving for the columns of B, many at once; what any solver can do. */
    static Condensed bySolving(DirectSolver solver, SymmetricMatrix whole, int[] kept, double[] load) {
        boolean[] held = new boolean[whole.order()];
        Arrays.stream(kept).forEach(i -> held[i] = true);
        ConstrainedSystem system = ConstrainedSystem.constrain(whole, held);
        try (Factorisation factor = solver.factorise(system.matrix(), Definiteness.POSITIVE_DEFINITE)) {
            double[] u = system.solve(factor, load);
            double[] reactions = system.reactions(u, load);
            double give = 0;
            for (int i = 0; i < u.length; i++) {
                give += load[i] * u[i];
            }
            double[] reduced =
                    Arrays.stream(kept).mapToDouble(i -> -reactions[i]).toArray();
            double[] matrix = columns(system, factor, kept);
            even(matrix, kept.length);
            return new Condensed(matrix, reduced, give);
        }
    }

    private static double[] columns(ConstrainedSystem system, Factorisation factor, int[] kept) {
        int n = kept.length;
        double[] matrix = new double[n * n];
        ConstrainedSystem.Couplings couplings = system.couplings(kept);
        double[][] fields = new double[Math.min(n, AT_ONCE)][factor.order()];
        for (int from = 0; from < n; from += AT_ONCE) {
            int first = from;
            int count = Math.min(n - from, AT_ONCE);
            double[][] some = count == fields.length ? fields : Arrays.copyOf(fields, count);
            for (int j = 0; j < count; j++) {
                Arrays.fill(some[j], 0);
                couplings.subtract(from + j, some[j]);
            }
            factor.solveInPlace(some);
            IntStream.range(0, count).parallel().forEach(j -> {
                some[j][kept[first + j]] = 1;
                for (int i = 0; i < n; i++) {
                    matrix[i * n + first + j] = couplings.reaction(i, some[j]);
                }
            });
        }
        return matrix;
    }

    private static void even(double[] matrix, int n) {
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                double mean = 0.5 * (matrix[i * n + j] + matrix[j * n + i]);
                matrix[i * n + j] = mean;
                matrix[j * n + i] = mean;
            }
        }
    }
}
