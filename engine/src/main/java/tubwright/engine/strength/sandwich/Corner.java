// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength.sandwich;

/** Through-thickness stress at the bend of a solid laminate that a moment opens. */
public final class Corner {
    private Corner() {}

    /**
     * Largest radial stress, 3 M/(2 t √(Ri Ro)), Pa, tension for an opening moment (Kedward, Wilson and McLean 1989; from
     * memory).
     *
     * @param momentPerWidth M, N, opening positive
     * @param innerRadius Ri, m
     * @param thickness t, m; Ro = Ri + t
     */
    public static double radialStress(double momentPerWidth, double innerRadius, double thickness) {
        return 3 * momentPerWidth / (2 * thickness * Math.sqrt(innerRadius * (innerRadius + thickness)));
    }
}
