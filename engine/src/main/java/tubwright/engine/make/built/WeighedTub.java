// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.built;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.built.BuiltComparison.Factor;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.explain.Doubts;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/**
 * A tub with what weighing says of its materials put into its stiffness.
 *
 * <p>Cloth and tape that weigh a share more a square metre, at the resin content they should have, have that share more fibre:
 * their stiffness in the plane, modulus times thickness, grows by it (rule of mixtures). The shear modulus of a honeycomb grows
 * with its density (Gibson and Ashby 1997: both with the thickness of its walls); foam, for which the power is nearer to 1.3, is
 * taken the same way. What cures thicker at the same mass is no stiffer in the plane. The scatter that remains (fibre, angle,
 * cure) stays as wide as it was.
 */
public final class WeighedTub {
    private WeighedTub() {}

    /** The factors on stiffness that apply to a tub: those of materials it has, that were weighed. */
    public static List<Known> known(Tub tub, Case.Torsion loading, Map<String, Factor> materials) {
        List<Known> known = new ArrayList<>();
        for (Doubt doubt : Doubts.of(tub, loading)) {
            Factor factor = materials.get(doubt.of());
            if (factor != null && (doubt.is(Doubt.Kind.LAMINATE) || doubt.is(Doubt.Kind.CORE_SHEAR))) {
                // What was not weighed is as planned.
                known.add(new Known(doubt, 1 + factor.known() * (factor.factor() - 1), factor.known()));
            }
        }
        return known;
    }

    /**
     * A factor.
     *
     * @param doubt on what
     * @param factor on its stiffness
     * @param share of the material it rests on
     */
    public record Known(Doubt doubt, double factor, double share) {}

    /** The tub with these factors on. */
    public static Tub of(Tub tub, Case.Torsion loading, List<Known> known) {
        return Doubts.applied(
                tub,
                loading,
                known.stream().map(Known::doubt).toList(),
                known.stream().mapToDouble(k -> Math.log(k.factor())).toArray());
    }
}
