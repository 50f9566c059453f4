// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.List;
import java.util.function.ToDoubleFunction;
import tubwright.engine.structure.Springs;

/**
 * A spot of an interface that opens, slides or crushes: springs that lose one share of their stiffness together.
 *
 * @param springs nodes in the numbering of the model
 * @param opening one flag a spring: opening (mode I) rather than sliding (mode II)
 * @param ratio from the gaps of the springs (m, rad) to how far it is on the way to its onset: 1 there, in proportion to them
 * @param one energy to part it in mode I, J; infinite where it holds its load for ever (a core that crushes)
 * @param two the same in mode II, J
 * @param name of the joint or what else gives way
 * @param words what it does: "unzips"
 * @param place m
 * @param needs what is missing, in words; empty if nothing is
 */
public record Bond(
        Springs springs,
        boolean[] opening,
        ToDoubleFunction<double[]> ratio,
        double one,
        double two,
        String name,
        String words,
        double[] place,
        List<String> needs) {
    public Bond {
        needs = List.copyOf(needs);
    }

    /**
     * A bilinear interface after Camanho and Davila 2002 (NASA/TM-2002-211737): begins where the squares of opening and sliding
     * stress over their strengths add to one, parts where the energies over theirs do (linear interaction).
     *
     * @param area that it stands for, m²
     * @param peel strength in opening, Pa; closing does no harm
     * @param shear strength in sliding, Pa
     * @param first energy to open, J/m²
     * @param second energy to slide, J/m²
     */
    public static Bond bilinear(
            Springs springs,
            boolean[] opening,
            double area,
            double peel,
            double shear,
            double first,
            double second,
            String name,
            double[] place) {
        ToDoubleFunction<double[]> ratio = gaps -> {
            double sum = 0;
            for (int r = 0; r < gaps.length; r++) {
                double stress = springs.stiffness()[r] * gaps[r] / area;
                double used = opening[r] ? Math.max(0, stress) / peel : stress / shear;
                sum += used * used;
            }
            return Math.sqrt(sum);
        };
        return new Bond(springs, opening, ratio, first * area, second * area, name, "unzips", place, List.of());
    }

    /**
     * What crushes under a force and then holds it: a bedding of core under a pad.
     *
     * @param strength force at which it crushes, N
     */
    public static Bond crushing(Springs springs, double strength, String name, double[] place) {
        return new Bond(
                springs,
                new boolean[] {true},
                gaps -> springs.stiffness()[0] * Math.abs(gaps[0]) / strength,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                name,
                "crushes",
                place,
                List.of());
    }
}
