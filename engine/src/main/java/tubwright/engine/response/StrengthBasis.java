// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.strength.Criterion;
import tubwright.engine.strength.KnockDown;

/**
 * With which criteria and strengths plies are judged.
 *
 * @param unidirectional criteria for tape
 * @param cloth criteria for cloth; those that tell fibres from matrix along one direction only do not hold for it
 * @param knockDown taken off every strength it names
 * @param serviceTemperature K, at which the loads act; cure stress grows with its distance from the stress-free one
 */
public record StrengthBasis(
        List<Criterion> unidirectional, List<Criterion> cloth, KnockDown knockDown, double serviceTemperature) {
    /** Maximum stress, Tsai-Wu and (for tape) Puck on the strengths as given, at 20 °C. */
    public static final StrengthBasis USUAL = new StrengthBasis(
            List.of(Criterion.MAXIMUM_STRESS, Criterion.TSAI_WU, Criterion.PUCK),
            List.of(Criterion.MAXIMUM_STRESS, Criterion.TSAI_WU),
            KnockDown.NONE,
            293.15);

    public StrengthBasis {
        unidirectional = List.copyOf(unidirectional);
        cloth = List.copyOf(cloth);
    }

    /** The criteria for a material; a metal is checked for yield once. */
    List<Criterion> criteria(Material material) {
        if (!(material instanceof Ply ply)) {
            return List.of(Criterion.MAXIMUM_STRESS);
        }
        return new ArrayList<>(ply.form() == Ply.Form.CLOTH ? cloth : unidirectional);
    }
}
