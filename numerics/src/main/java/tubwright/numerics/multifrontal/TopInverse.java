// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics.multifrontal;

/**
 * The inverse of a factorised matrix on one front after the other, from the root down: with L and D of the front's own
 * columns J and the inverse Z on the rows R below them, T = L_RJ L_JJ⁻¹, Z_RJ = −Z_RR T and
 * Z_JJ = L_JJ⁻ᵀ D⁻¹ L_JJ⁻¹ − Tᵀ Z_RJ (Takahashi, Fagan and Chin 1973; Erisman and Tinney 1975). Here three columns at a
 * time, last first.
 */
final class TopInverse {
    private final Symbolic symbolic;
    private final double[][] factors;
    private final double[] pivots;

    TopInverse(Symbolic symbolic, double[][] factors, double[] pivots) {
        this.symbolic = symbolic;
        this.factors = factors;
        this.pivots = pivots;
    }

    /**
     * The inverse on the front of a supernode, both triangles.
     *
     * @param parent that of its parent; empty at a root
     */
    double[][] of(int s, double[][] parent) {
        int b = symbolic.pattern.blockSize();
        int m = symbolic.height(s);
        int w = symbolic.width(s);
        double[][] z = new double[m][m];
        if (m > w) {
            int[] rows = symbolic.rows[s];
            int[] above = symbolic.rows[symbolic.parent[s]];
            int own = w / b;
            int[] at = new int[rows.length - own];
            for (int i = 0, k = 0; i < at.length; i++) {
                while (above[k] != rows[own + i]) {
                    k++;
                }
                at[i] = k;
            }
            for (int i = 0; i < at.length; i++) {
                for (int r = 0; r < b; r++) {
                    double[] from = parent[at[i] * b + r];
                    double[] to = z[w + i * b + r];
                    for (int j = 0; j < at.length; j++) {
                        System.arraycopy(from, at[j] * b, to, w + j * b, b);
                    }
                }
            }
        }
        double[][] t = new double[3][m];
        double[][] out = new double[3][m];
        for (int end = w; end > 0; end -= 3) {
            columns(s, Math.max(0, end - 3), end, z, t, out);
        }
        return z;
    }

    /** Columns k0 to k1 of the front, those after them being known. */
    private void columns(int s, int k0, int k1, double[][] z, double[][] t, double[][] out) {
        int m = z.length;
        int base = symbolic.first[s] * symbolic.pattern.blockSize();
        double[] factor = factors[s];
        int count = k1 - k0;
        for (int c = 0; c < count; c++) {
            int k = k0 + c;
            int row = k * m - k * (k - 1) / 2 - k;
            for (int j = k + 1; j < m; j++) {
                t[c][j] = factor[row + j] / pivots[base + k];
            }
        }
        // T = L_RJ L_JJ⁻¹, and the inverse of the small unit triangle, last column first.
        double[][] unit = new double[count][count];
        for (int c = count - 1; c >= 0; c--) {
            unit[c][c] = 1;
            for (int d = c + 1; d < count; d++) {
                double l = t[c][k0 + d];
                Kernel.oneByOne(t[c], t[d], -l, k1, m);
                for (int i = d; i < count; i++) {
                    unit[c][i] -= l * unit[d][i];
                }
            }
        }
        for (int c = 0; c < count; c++) {
            java.util.Arrays.fill(out[c], k1, m, 0);
        }
        multiply(z, t, count, k1, out);
        for (int c = 0; c < count; c++) {
            for (int d = c; d < count; d++) {
                double sum = 0;
                for (int i = d; i < count; i++) {
                    sum += unit[c][i] * unit[d][i] / pivots[base + k0 + i];
                }
                for (int j = k1; j < m; j++) {
                    sum -= t[c][j] * out[d][j];
                }
                z[k0 + c][k0 + d] = sum;
                z[k0 + d][k0 + c] = sum;
            }
            System.arraycopy(out[c], k1, z[k0 + c], k1, m - k1);
            for (int j = k1; j < m; j++) {
                z[j][k0 + c] = out[c][j];
            }
        }
    }

    /** out_c = −Σ_j t_c[j] z_j over the rows from k1 on. */
    private static void multiply(double[][] z, double[][] t, int count, int k1, double[][] out) {
        int m = z.length;
        int j = k1;
        if (count == 3) {
            for (; j + 3 <= m; j += 3) {
                Kernel.threeByThree(
                        out[0],
                        out[1],
                        out[2],
                        z[j],
                        z[j + 1],
                        z[j + 2],
                        -t[0][j],
                        -t[0][j + 1],
                        -t[0][j + 2],
                        -t[1][j],
                        -t[1][j + 1],
                        -t[1][j + 2],
                        -t[2][j],
                        -t[2][j + 1],
                        -t[2][j + 2],
                        k1,
                        m);
            }
        }
        for (; j < m; j++) {
            for (int c = 0; c < count; c++) {
                Kernel.oneByOne(out[c], z[j], -t[c][j], k1, m);
            }
        }
    }
}
