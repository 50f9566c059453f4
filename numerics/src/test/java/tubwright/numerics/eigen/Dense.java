// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.eigen;

import java.util.stream.IntStream;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import tubwright.numerics.SymmetricMatrix;

/** Generalised eigenvalues by an independent dense library. */
final class Dense {
    private Dense() {}

    /** Eigenvalues of A x = μ B x, rising, B positive definite: of L⁻¹ A L⁻ᵀ with B = L Lᵀ. */
    static double[] eigenvalues(SymmetricMatrix a, SymmetricMatrix b) {
        int n = a.order();
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = b.get(j, i);
                for (int k = 0; k < j; k++) {
                    sum -= l[i][k] * l[j][k];
                }
                l[i][j] = i == j ? Math.sqrt(sum) : sum / l[j][j];
            }
        }
        // C = L⁻¹ A L⁻ᵀ by forward substitution on the rows, then on the columns.
        double[][] c = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                c[i][j] = a.get(Math.min(i, j), Math.max(i, j));
            }
        }
        for (int side = 0; side < 2; side++) {
            for (int column = 0; column < n; column++) {
                for (int i = 0; i < n; i++) {
                    for (int k = 0; k < i; k++) {
                        c[i][column] -= l[i][k] * c[k][column];
                    }
                    c[i][column] /= l[i][i];
                }
            }
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < i; j++) {
                    double swap = c[i][j];
                    c[i][j] = c[j][i];
                    c[j][i] = swap;
                }
            }
        }
        EigenDecomposition_F64<DMatrixRMaj> decomposition = DecompositionFactory_DDRM.eig(n, false, true);
        if (!decomposition.decompose(new DMatrixRMaj(c))) {
            throw new IllegalStateException("the dense reference failed");
        }
        return IntStream.range(0, n)
                .mapToDouble(i -> decomposition.getEigenvalue(i).getReal())
                .sorted()
                .toArray();
    }
}
