// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/** The sum K = Σ w Bᵀ C B over the strain points held by a workspace. */
public final class ShellIntegral {
    /**
     * Drilling stiffness as a fraction of the in-plane shear stiffness A66. Small, because where walls meet at an angle
     * a node's rotation follows the edge line and not the mean rotation of a sheared wall; 0.3 made a box 3.4 % too
     * stiff in torsion with one element a wall.
     */
    public static final double DRILLING_FRACTION = 1e-3;

    private ShellIntegral() {}

    /** Stiffness that multiplies half the drilling strain squared, N/m. */
    public static double drilling(double[] laminate) {
        return DRILLING_FRACTION * laminate[18];
    }

    /**
     * Adds up the stiffness of the element last computed in the workspace.
     *
     * @param laminate 8×8 laminate stiffness; first-order theory couples neither stretching nor bending with transverse
     *     shear, so those entries must be zero
     * @param stiffness n×n values written, row-major, full symmetric, n = {@link ShellWorkspace#freedoms()}
     */
    public static void integrate(double[] laminate, ShellWorkspace w, double[] stiffness) {
        int n = w.freedoms;
        java.util.Arrays.fill(stiffness, 0, n * n, 0);
        double[] t = w.product;
        for (int r = 0; r < 6; r++) {
            if (laminate[8 * r + 6] != 0 || laminate[8 * r + 7] != 0) {
                throw new IllegalArgumentException(
                        "laminate couples transverse shear with stretching or bending; first-order shells cannot");
            }
        }
        double drilling = drilling(laminate);
        for (int p = 0; p < w.points; p++) {
            double[] b = w.strain[p];
            double f = w.weight[p];
            for (int r = 0; r < 6; r++) {
                row6(laminate, r, f, b, n, t);
            }
            row2(laminate, 6, f, b, n, t);
            row2(laminate, 7, f, b, n, t);
            for (int j = 0; j < n; j++) {
                t[8 * n + j] = f * drilling * b[8 * n + j];
            }
            for (int i = 0; i < n; i += 3) {
                for (int j = i - i % 6; j < n; j += 6) {
                    block(b, t, n, i, j, stiffness);
                }
            }
        }
        for (int i = 1; i < n; i++) {
            for (int j = 0; j < i; j++) {
                stiffness[i * n + j] = stiffness[j * n + i];
            }
        }
    }

    /** Row r of w C B where C couples stretching and bending. */
    private static void row6(double[] c, int r, double f, double[] b, int n, double[] t) {
        double c0 = f * c[8 * r];
        double c1 = f * c[8 * r + 1];
        double c2 = f * c[8 * r + 2];
        double c3 = f * c[8 * r + 3];
        double c4 = f * c[8 * r + 4];
        double c5 = f * c[8 * r + 5];
        int o = r * n;
        for (int j = 0; j < n; j++) {
            t[o + j] = c0 * b[j]
                    + c1 * b[n + j]
                    + c2 * b[2 * n + j]
                    + c3 * b[3 * n + j]
                    + c4 * b[4 * n + j]
                    + c5 * b[5 * n + j];
        }
    }

    /** Row r of w C B in transverse shear. */
    private static void row2(double[] c, int r, double f, double[] b, int n, double[] t) {
        double c6 = f * c[8 * r + 6];
        double c7 = f * c[8 * r + 7];
        int o = r * n;
        for (int j = 0; j < n; j++) {
            t[o + j] = c6 * b[6 * n + j] + c7 * b[7 * n + j];
        }
    }

    /** Adds a 3×6 block of bᵀt; its sums stay in registers. */
    private static void block(double[] b, double[] t, int n, int i, int j, double[] k) {
        int o0 = i * n + j;
        int o1 = o0 + n;
        int o2 = o1 + n;
        double k00 = k[o0];
        double k01 = k[o0 + 1];
        double k02 = k[o0 + 2];
        double k03 = k[o0 + 3];
        double k04 = k[o0 + 4];
        double k05 = k[o0 + 5];
        double k10 = k[o1];
        double k11 = k[o1 + 1];
        double k12 = k[o1 + 2];
        double k13 = k[o1 + 3];
        double k14 = k[o1 + 4];
        double k15 = k[o1 + 5];
        double k20 = k[o2];
        double k21 = k[o2 + 1];
        double k22 = k[o2 + 2];
        double k23 = k[o2 + 3];
        double k24 = k[o2 + 4];
        double k25 = k[o2 + 5];
        for (int r = 0; r < 9 * n; r += n) {
            double b0 = b[r + i];
            double b1 = b[r + i + 1];
            double b2 = b[r + i + 2];
            double t0 = t[r + j];
            k00 = Math.fma(b0, t0, k00);
            k10 = Math.fma(b1, t0, k10);
            k20 = Math.fma(b2, t0, k20);
            double t1 = t[r + j + 1];
            k01 = Math.fma(b0, t1, k01);
            k11 = Math.fma(b1, t1, k11);
            k21 = Math.fma(b2, t1, k21);
            double t2 = t[r + j + 2];
            k02 = Math.fma(b0, t2, k02);
            k12 = Math.fma(b1, t2, k12);
            k22 = Math.fma(b2, t2, k22);
            double t3 = t[r + j + 3];
            k03 = Math.fma(b0, t3, k03);
            k13 = Math.fma(b1, t3, k13);
            k23 = Math.fma(b2, t3, k23);
            double t4 = t[r + j + 4];
            k04 = Math.fma(b0, t4, k04);
            k14 = Math.fma(b1, t4, k14);
            k24 = Math.fma(b2, t4, k24);
            double t5 = t[r + j + 5];
            k05 = Math.fma(b0, t5, k05);
            k15 = Math.fma(b1, t5, k15);
            k25 = Math.fma(b2, t5, k25);
        }
        k[o0] = k00;
        k[o0 + 1] = k01;
        k[o0 + 2] = k02;
        k[o0 + 3] = k03;
        k[o0 + 4] = k04;
        k[o0 + 5] = k05;
        k[o1] = k10;
        k[o1 + 1] = k11;
        k[o1 + 2] = k12;
        k[o1 + 3] = k13;
        k[o1 + 4] = k14;
        k[o1 + 5] = k15;
        k[o2] = k20;
        k[o2 + 1] = k21;
        k[o2 + 2] = k22;
        k[o2 + 3] = k23;
        k[o2 + 4] = k24;
        k[o2 + 5] = k25;
    }
}
