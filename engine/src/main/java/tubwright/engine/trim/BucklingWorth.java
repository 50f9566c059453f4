// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.structure.BucklingMode;

/**
 * What a buckling factor becomes when laminates and joints change, to first order: the Rayleigh quotient of the nominal
 * mode under the changed stiffness and the changed prestress,
 *
 * <p>λ' = (φᵀKφ + φᵀΔKφ) / (φᵀKφ/λ − φᵀΔK_Gφ).
 *
 * <p>φᵀK_Gφ = Σ w h·N is linear in the membrane forces N of the case, h the products of the mode's slopes. They change
 * with the laminate where it is, and everywhere with the displacements: φᵀΔK_Gφ = Σ w hᵀΔC ε(u) − Σ w ε(a)ᵀΔC ε(u), with
 * the adjoint field a = K₀⁻¹ Σ w BᵀC h, one back-substitution a mode. The slope at nought is therefore the exact
 * derivative (Haftka &amp; Gürdal 1992, Elements of Structural Optimization, ch. 7, from memory).
 */
final class BucklingWorth {
    private final LoadedTub tub;
    private final double factor;
    private final double stiffness;
    private final double[] mode;
    private final double[] adjoint;
    /** Σ w ε_φ ε_φᵀ and Σ w (h − ε_a) ε_uᵀ by block. */
    private final Map<Integer, double[]> elastic = new TreeMap<>();

    private final Map<Integer, double[]> geometric = new TreeMap<>();

    /**
     * @param tub solved under the case
     * @param found a mode of its nominal structure with a positive factor
     */
    BucklingWorth(LoadedTub tub, BucklingMode found) {
        this.tub = tub;
        factor = found.factor();
        mode = found.shape();
        double[] gradient = new double[mode.length];
        int blocks = tub.blocks().all().size();
        for (int b = 0; b < blocks; b++) {
            tub.visits().slopeForces(b, tub.laminate(b), mode, gradient);
        }
        tub.release(gradient);
        double[][] fields = {gradient};
        tub.substitute(fields);
        adjoint = fields[0];
        double energy = 0;
        for (int b = 0; b < blocks; b++) {
            double[] pairs = tub.gramians(b, mode, adjoint, tub.displacements());
            double[] own = java.util.Arrays.copyOf(pairs, Constitutive.ENTRIES);
            // Pairs stand as φφ, φa, φu, aa, au, uu.
            double[] slopes = tub.visits().slopeGramian(b, mode, tub.displacements());
            for (int k = 0; k < Constitutive.ENTRIES; k++) {
                slopes[k] -= pairs[4 * Constitutive.ENTRIES + k];
            }
            elastic.put(b, own);
            geometric.put(b, slopes);
            energy += Constitutive.trace(tub.laminate(b), own, 0);
        }
        for (int p = 0; p < tub.structure().parts().size(); p++) {
            energy += tub.members().between(p, mode, mode);
        }
        stiffness = energy;
    }

    /** The nominal factor. */
    double nominal() {
        return factor;
    }

    /** The factor after a change; infinite where the change takes away all that presses. */
    double after(Change change) {
        double up = stiffness;
        double down = stiffness / factor;
        for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
            double[] step = Constitutive.minus(each.getValue(), tub.laminate(each.getKey()));
            up += Constitutive.trace(step, elastic.get(each.getKey()), 0);
            down -= Constitutive.trace(step, geometric.get(each.getKey()), 0);
        }
        for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
            up += (each.getValue() - 1) * tub.members().between(each.getKey(), mode, mode);
            down += (each.getValue() - 1) * tub.members().between(each.getKey(), adjoint, tub.displacements());
        }
        return down > 0 ? up / down : Double.POSITIVE_INFINITY;
    }
}
