// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/**
 * What acts on a piece of panel, all growing together but the initial curvature.
 *
 * @param resultants (Nx, Ny, Nxy, Mx, My, Mxy) about the laminate's reference surface, N/m and N
 * @param shear (Qx, Qy), N/m
 * @param initialCurvature (κx, κy, κxy) of the unloaded panel, 1/m, positive where its outer surface is convex; κxy twice
 *     the twist, as in the strains of bending
 */
public record PanelLoad(double[] resultants, double[] shear, double[] initialCurvature) {
    public PanelLoad {
        if (resultants.length != 6 || shear.length != 2 || initialCurvature.length != 3) {
            throw new IllegalArgumentException(
                    "a panel load has six resultants, two shear forces and three curvatures");
        }
    }

    /** On a flat panel. */
    public static PanelLoad flat(double[] resultants, double[] shear) {
        return new PanelLoad(resultants, shear, new double[3]);
    }
}
