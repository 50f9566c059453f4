// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Expansion;

/**
 * What heat and moisture do to a laminate (Tsai and Hahn 1980, ch. 8; Kaw 2006, eqs. 4.64 to 4.72).
 *
 * @param forces fictitious forces N = ∫Q̄ e dz, N/m, order (x, y, xy), e the free strain of each layer
 * @param moments fictitious moments M = ∫Q̄ e z dz about the reference surface, N
 * @param strains strain of the free laminate at its reference surface
 * @param curvatures curvature of the free laminate, 1/m
 */
public record FreeExpansion(double[] forces, double[] moments, double[] strains, double[] curvatures) {

    /**
     * Of a laminate under a change of climate.
     *
     * @throws tubwright.engine.material.MaterialException if a layer's thermal expansion is not known
     */
    public static FreeExpansion of(Laminate laminate, Climate climate) {
        double[] z = laminate.surfaces();
        double[] forces = new double[3];
        double[] moments = new double[3];
        for (int i = 0; i < laminate.layers().size(); i++) {
            Layer layer = laminate.layers().get(i);
            double[] q = PlaneStress.transformed(layer.material().elasticity(), layer.angle());
            double[] stress = PlaneStress.times(q, freeStrain(layer, climate));
            for (int k = 0; k < 3; k++) {
                forces[k] += stress[k] * (z[i] - z[i + 1]);
                moments[k] += stress[k] * 0.5 * (z[i] * z[i] - z[i + 1] * z[i + 1]);
            }
        }
        double[] free = LaminateResponse.strains(
                laminate.stiffness(),
                new double[] {forces[0], forces[1], forces[2], moments[0], moments[1], moments[2]});
        return new FreeExpansion(
                forces, moments, new double[] {free[0], free[1], free[2]}, new double[] {free[3], free[4], free[5]});
    }

    /** Strain a layer would take if it were alone, laminate axes. */
    static double[] freeStrain(Layer layer, Climate climate) {
        if (climate.equals(Climate.NONE)) {
            return new double[3];
        }
        Expansion e = layer.material().expansion();
        double along1 = e.alpha1() * climate.temperatureChange() + e.beta1() * climate.moistureChange();
        double along2 = e.alpha2() * climate.temperatureChange() + e.beta2() * climate.moistureChange();
        return PlaneStress.freeStrain(along1, along2, layer.angle());
    }
}
