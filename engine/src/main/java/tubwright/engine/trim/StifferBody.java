// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import tubwright.engine.structure.ShellIntegral;
import tubwright.numerics.eigen.DenseEigen;

/** A body that is stiffer everywhere than whatever may be chosen there. */
final class StifferBody {
    /** Stiffer than every candidate by this share, so that C₀ − C_k can be inverted without great numbers. */
    private static final double MORE = 0.05;

    private static final int[] SIZES = {6, 2, 1};

    private StifferBody() {}

    /**
     * Its stiffness by piece.
     *
     * @param mixture begun from, so that the body is no stiffer than it need be
     * @param allowed candidates that may be chosen
     */
    static double[][] of(LightenProblem problem, double[] mixture, boolean[] allowed) {
        double[][] body = problem.stiffness(mixture);
        for (int p = 0; p < body.length; p++) {
            Piece piece = problem.pieces.get(p);
            for (int c = 0; c < piece.stiffness().length; c++) {
                if (piece.allowed(c, allowed, problem.offset)) {
                    raise(body[p], piece.stiffness()[c]);
                }
            }
            for (int k = 0; k < body[p].length && piece.block() >= 0; k++) {
                body[p][k] *= 1 + MORE;
            }
            if (piece.block() >= 0) {
                // Drilling follows A66 in every structure that is assembled.
                body[p][Constitutive.ENTRIES - 1] = ShellIntegral.drilling(Constitutive.matrix(body[p], false));
            }
        }
        return body;
    }

    private static void raise(double[] body, double[] over) {
        if (body.length == 1) {
            body[0] = Math.max(body[0], over[0]);
            return;
        }
        int from = 0;
        for (int size : SIZES) {
            raise(body, over, from, size);
            from += size * size;
        }
    }

    /** B ← L max(L⁻¹ C L⁻ᵀ, 1) Lᵀ with B = L Lᵀ: at least B and at least C. */
    private static void raise(double[] body, double[] over, int from, int n) {
        double[][] root = root(body, from, n);
        double[][] a = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                a[i][j] = over[from + i * n + j];
            }
        }
        forward(root, a);
        transpose(a);
        forward(root, a);
        DenseEigen eigen = DenseEigen.of(a, n);
        for (int e = 0; e < n; e++) {
            double more = eigen.values()[e] - 1;
            if (more > 0) {
                double[] x = new double[n];
                for (int i = 0; i < n; i++) {
                    for (int k = 0; k <= i; k++) {
                        x[i] += root[i][k] * eigen.vectors()[e][k];
                    }
                }
                for (int i = 0; i < n; i++) {
                    for (int j = 0; j < n; j++) {
                        body[from + i * n + j] += more * x[i] * x[j];
                    }
                }
            }
        }
    }

    private static double[][] root(double[] body, int from, int n) {
        double[][] root = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = body[from + i * n + j];
                for (int k = 0; k < j; k++) {
                    sum -= root[i][k] * root[j][k];
                }
                root[i][j] = i == j ? Math.sqrt(sum) : sum / root[j][j];
            }
        }
        return root;
    }

    /** A ← L⁻¹ A. */
    private static void forward(double[][] root, double[][] a) {
        int n = root.length;
        for (int c = 0; c < n; c++) {
            for (int i = 0; i < n; i++) {
                double sum = a[i][c];
                for (int k = 0; k < i; k++) {
                    sum -= root[i][k] * a[k][c];
                }
                a[i][c] = sum / root[i][i];
            }
        }
    }

    private static void transpose(double[][] a) {
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < i; j++) {
                double keep = a[i][j];
                a[i][j] = a[j][i];
                a[j][i] = keep;
            }
        }
    }
}
