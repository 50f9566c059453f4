// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;

/**
 * With which criteria and strengths a tub is judged.
 *
 * @param unidirectional criteria for tape
 * @param cloth criteria for cloth; those that tell fibres from matrix along one direction only do not hold for it
 * @param knockDown taken off every strength of plies it names; cores, adhesives and metals keep theirs
 * @param inSitu whether embedded plies take their in-situ strengths across the fibres and in shear
 * @param serviceTemperature K, at which the loads act; cure stress grows with its distance from the stress-free one
 * @param gaps what the chosen knock-downs leave open: nothing is known of them
 */
public record StrengthBasis(
        List<Criterion> unidirectional,
        List<Criterion> cloth,
        KnockDown knockDown,
        boolean inSitu,
        double serviceTemperature,
        List<Check.NotChecked> gaps) {
    /** Criteria where none are chosen. */
    public static final List<Criterion> USUAL_CRITERIA =
            List.of(Criterion.MAXIMUM_STRESS, Criterion.TSAI_WU, Criterion.PUCK);

    /** Where the loads act unless said, K. */
    public static final double USUAL_TEMPERATURE = 293.15;

    /** Maximum stress, Tsai-Wu and (for tape) Puck on the strengths as given, at 20 °C. */
    public static final StrengthBasis USUAL = of(USUAL_CRITERIA, KnockDown.NONE, false, USUAL_TEMPERATURE, List.of());

    public StrengthBasis {
        unidirectional = List.copyOf(unidirectional);
        cloth = List.copyOf(cloth);
        gaps = List.copyOf(gaps);
    }

    /** With the same criteria for tape and cloth, but those that do not hold for cloth. */
    public static StrengthBasis of(
            List<Criterion> criteria,
            KnockDown knockDown,
            boolean inSitu,
            double serviceTemperature,
            List<Check.NotChecked> gaps) {
        List<Criterion> cloth =
                criteria.stream().filter(Criterion::holdsForCloth).toList();
        return new StrengthBasis(
                criteria,
                cloth.isEmpty() ? List.of(Criterion.MAXIMUM_STRESS) : cloth,
                knockDown,
                inSitu,
                serviceTemperature,
                gaps);
    }

    /** The criteria for a material; a metal is checked for yield once. */
    public List<Criterion> criteria(Material material) {
        if (!(material instanceof Ply ply)) {
            return List.of(Criterion.MAXIMUM_STRESS);
        }
        return new ArrayList<>(ply.form() == Ply.Form.CLOTH ? cloth : unidirectional);
    }

    /** In one sentence for a reader. */
    public String words() {
        return "Plies by " + unidirectional.stream().map(Criterion::words).collect(Collectors.joining(", "))
                + (inSitu ? ", embedded plies with in-situ strengths" : "") + ", at "
                + Math.round(serviceTemperature - 273.15) + " °C; strengths "
                + (knockDown.factors().isEmpty()
                        ? "as the materials give them (no knock-down chosen)"
                        : "after " + knockDown.name() + " ("
                                + knockDown.provenance().source() + ")")
                + ".";
    }
}
