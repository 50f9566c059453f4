// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;

/**
 * Geometric stiffness of a shell element: the second-order work ∫ ½ Nαβ u,α · u,β dA of the membrane resultants on the
 * full displacement gradient along the surface, all three components of u, so that curved and folded shells need no
 * special terms and a rigid rotation of the stressed element costs what statics says. Displacement is interpolated
 * between the nodes linearly; the bows of the sides and the rotations take no part.
 *
 * <p>Left out, as usual for shells of this kind: work of moments and transverse shear on products of rotations and
 * gradients, and of the resultants on the rotation gradients (N h²/12 per unit, below (πh/λ)²/12 of what is kept for a
 * wave of half-length λ). Transverse shear flexibility, and with it the crimping limit of a sandwich, enters through the
 * elastic stiffness. Wrinkling of faces lies outside shell theory.
 */
public final class ShellGeometricStiffness {
    private ShellGeometricStiffness() {}

    /**
     * Adds up the geometric stiffness of the element last computed in the workspace.
     *
     * @param resultants Nx, Ny, Nxy in the material axes of each strain point, N/m, tension positive
     * @param stiffness n×n values written, row-major, full symmetric, n = {@link ShellWorkspace#freedoms()}
     */
    public static void integrate(double[] resultants, ShellWorkspace w, double[] stiffness) {
        int n = w.freedoms;
        int nodes = n / 6;
        Arrays.fill(stiffness, 0, n * n, 0);
        for (int p = 0; p < w.points; p++) {
            double nx = w.weight[p] * resultants[3 * p];
            double ny = w.weight[p] * resultants[3 * p + 1];
            double nxy = w.weight[p] * resultants[3 * p + 2];
            double[] x = w.nodeX[p];
            double[] y = w.nodeY[p];
            for (int i = 0; i < nodes; i++) {
                double alongX = nx * x[i] + nxy * y[i];
                double alongY = nxy * x[i] + ny * y[i];
                for (int j = 0; j < nodes; j++) {
                    double g = alongX * x[j] + alongY * y[j];
                    for (int c = 0; c < 3; c++) {
                        stiffness[(6 * i + c) * n + 6 * j + c] += g;
                    }
                }
            }
        }
    }
}
