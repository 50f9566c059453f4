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
     * @param laminate 8×8 laminate stiffness
     * @param stiffness n×n values written, row-major, full symmetric, n = {@link ShellWorkspace#freedoms()}
     */
    public static void integrate(double[] laminate, ShellWorkspace w, double[] stiffness) {
        int n = w.freedoms;
        java.util.Arrays.fill(stiffness, 0, n * n, 0);
        double[] t = w.product;
        double drilling = drilling(laminate);
        for (int p = 0; p < w.points; p++) {
            double[] b = w.strain[p];
            double f = w.weight[p];
            for (int r = 0; r < 8; r++) {
                double c0 = f * laminate[8 * r];
                double c1 = f * laminate[8 * r + 1];
                double c2 = f * laminate[8 * r + 2];
                double c3 = f * laminate[8 * r + 3];
                double c4 = f * laminate[8 * r + 4];
                double c5 = f * laminate[8 * r + 5];
                double c6 = f * laminate[8 * r + 6];
                double c7 = f * laminate[8 * r + 7];
                int o = r * n;
                for (int j = 0; j < n; j++) {
                    t[o + j] = c0 * b[j]
                            + c1 * b[n + j]
                            + c2 * b[2 * n + j]
                            + c3 * b[3 * n + j]
                            + c4 * b[4 * n + j]
                            + c5 * b[5 * n + j]
                            + c6 * b[6 * n + j]
                            + c7 * b[7 * n + j];
                }
            }
            for (int j = 0; j < n; j++) {
                t[8 * n + j] = f * drilling * b[8 * n + j];
            }
            for (int i = 0; i < n; i++) {
                int o = i * n;
                double b0 = b[i];
                double b1 = b[n + i];
                double b2 = b[2 * n + i];
                double b3 = b[3 * n + i];
                double b4 = b[4 * n + i];
                double b5 = b[5 * n + i];
                double b6 = b[6 * n + i];
                double b7 = b[7 * n + i];
                double b8 = b[8 * n + i];
                for (int j = i; j < n; j++) {
                    stiffness[o + j] += b0 * t[j]
                            + b1 * t[n + j]
                            + b2 * t[2 * n + j]
                            + b3 * t[3 * n + j]
                            + b4 * t[4 * n + j]
                            + b5 * t[5 * n + j]
                            + b6 * t[6 * n + j]
                            + b7 * t[7 * n + j]
                            + b8 * t[8 * n + j];
                }
            }
        }
        for (int i = 1; i < n; i++) {
            for (int j = 0; j < i; j++) {
                stiffness[i * n + j] = stiffness[j * n + i];
            }
        }
    }
}
