// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * How much a bend closes because it shrinks more through its thickness than along (Radford and Diefendorf 1993, the
 * thermal part after Nelson and Cairns 1989):
 * Δθ = θ [ (α_I − α_T) ΔT/(1 + α_T ΔT) + (φ_I − φ_T)/(1 + φ_T) ].
 *
 * <p>The thermal part goes back when the part is warmed, the cure part does not. Friction on the tool, flanges and
 * thinning in the corner are not in it.
 *
 * @param alongExpansion α_I in the plane, round the bend, 1/K
 * @param throughExpansion α_T through the thickness, 1/K
 * @param alongShrinkage φ_I, strain in the plane from cure after gelling, negative when it shrinks
 * @param throughShrinkage φ_T through the thickness, likewise
 */
public record SpringIn(double alongExpansion, double throughExpansion, double alongShrinkage, double throughShrinkage) {

    /**
     * Closing from heat, rad; positive when the included angle becomes smaller.
     *
     * @param bend angle swept by the bend, rad: 90 degrees for an L
     * @param change temperature of use less that at which the shape froze, K; negative
     */
    public double thermal(double bend, double change) {
        return bend * (alongExpansion - throughExpansion) * change / (1 + throughExpansion * change);
    }

    /** Closing from cure shrinkage, rad. */
    public double fromCure(double bend) {
        return bend * (alongShrinkage - throughShrinkage) / (1 + throughShrinkage);
    }

    /** Both, rad: open the mould's bend by this. */
    public double total(double bend, double change) {
        return thermal(bend, change) + fromCure(bend);
    }
}
