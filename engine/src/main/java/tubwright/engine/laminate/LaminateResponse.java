// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.ArrayList;
import java.util.List;

/**
 * A laminate under load and climate: strains, resultants, and the state of every layer (classical lamination theory,
 * Jones 1999, ch. 4).
 *
 * @param strains at the reference surface, order (εx, εy, γxy, κx, κy, κxy)
 * @param resultants (Nx, Ny, Nxy, Mx, My, Mxy) about the reference surface, N/m and N, the mechanical ones
 * @param layers state of every layer, from the outer surface inward
 */
public record LaminateResponse(double[] strains, double[] resultants, List<PlyState> layers) {

    /**
     * Under given resultants.
     *
     * @param resultants (Nx, Ny, Nxy, Mx, My, Mxy) about the laminate's reference surface, N/m and N
     * @param climate change since the stress-free state
     */
    public static LaminateResponse underResultants(Laminate laminate, double[] resultants, Climate climate) {
        double[] total = resultants.clone();
        if (!climate.equals(Climate.NONE)) {
            FreeExpansion free = FreeExpansion.of(laminate, climate);
            for (int k = 0; k < 3; k++) {
                total[k] += free.forces()[k];
                total[k + 3] += free.moments()[k];
            }
        }
        double[] strains = strains(laminate.stiffness(), total);
        return new LaminateResponse(strains, resultants.clone(), states(laminate, strains, climate));
    }

    /**
     * Under given strains.
     *
     * @param strains total strains (εx, εy, γxy, κx, κy, κxy) at the laminate's reference surface
     * @param climate change since the stress-free state
     */
    public static LaminateResponse underStrains(Laminate laminate, double[] strains, Climate climate) {
        double[] m = laminate.stiffness().matrix();
        double[] resultants = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                resultants[i] += m[8 * i + j] * strains[j];
            }
        }
        if (!climate.equals(Climate.NONE)) {
            FreeExpansion free = FreeExpansion.of(laminate, climate);
            for (int k = 0; k < 3; k++) {
                resultants[k] -= free.forces()[k];
                resultants[k + 3] -= free.moments()[k];
            }
        }
        return new LaminateResponse(strains.clone(), resultants, states(laminate, strains, climate));
    }

    /** Strains of a shell under resultants; both of length 6. */
    static double[] strains(ShellStiffness stiffness, double[] resultants) {
        double[] c = stiffness.compliance();
        double[] strains = new double[6];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                strains[i] += c[8 * i + j] * resultants[j];
            }
        }
        return strains;
    }

    private static List<PlyState> states(Laminate laminate, double[] strains, Climate climate) {
        double[] z = laminate.surfaces();
        List<PlyState> states = new ArrayList<>();
        for (int i = 0; i < laminate.layers().size(); i++) {
            Layer layer = laminate.layers().get(i);
            double[] q = PlaneStress.transformed(layer.material().elasticity(), layer.angle());
            double[] free = FreeExpansion.freeStrain(layer, climate);
            states.add(new PlyState(
                    i, layer, point(layer, q, free, strains, z[i]), point(layer, q, free, strains, z[i + 1])));
        }
        return List.copyOf(states);
    }

    private static PlyState.Point point(Layer layer, double[] q, double[] free, double[] strains, double z) {
        double[] total = new double[3];
        double[] mechanical = new double[3];
        for (int k = 0; k < 3; k++) {
            total[k] = strains[k] + z * strains[k + 3];
            mechanical[k] = total[k] - free[k];
        }
        double[] stress = PlaneStress.times(q, mechanical);
        return new PlyState.Point(
                z,
                total,
                stress,
                PlaneStress.strainInLayerAxes(mechanical, layer.angle()),
                PlaneStress.stressInLayerAxes(stress, layer.angle()));
    }
}
