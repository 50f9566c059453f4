// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.Optional;
import tubwright.engine.response.Reserve;
import tubwright.engine.rig.explain.LayupForecast;

/**
 * A layup foretold as its makers build it.
 *
 * @param stiffness between the torsion case's stations, with its spread
 * @param mass kg
 * @param testedMass mass of the tub that was tested, as computed, kg; NaN where unknown
 * @param weakest what gives way first in the design's load cases, if it has any
 * @param calibrated what it rests on
 */
public record ForetoldTub(
        LayupForecast.Foretold stiffness,
        double mass,
        double testedMass,
        Optional<Reserve> weakest,
        RunAnswer.Calibrated calibrated) {
    /** Masses nearer to each other than this share are told as one. */
    private static final double SAME = 5e-4;

    /** Stiffness with its 95 % interval, what it weighs less, and the weakest margin, in a sentence. */
    public String words(String gap) {
        double change = mass / testedMass - 1;
        return plusMinus(perDegree(stiffness.stiffness()), perDegree(stiffness.expanded()), gap) + " N·m/deg (95 %)"
                + (Double.isFinite(change) ? ", " + againstTested(change) : "")
                + weakest.map(w -> "; weakest margin " + significant(w.value(), 3, gap) + " (" + w.zone() + ", "
                                + w.check() + ", case " + w.load() + ")")
                        .orElse("; no load case, so no margin");
    }

    /**
     * A mass against that of the tub that was tested, in words.
     *
     * @param change of mass, share
     */
    public static String againstTested(double change) {
        String than = Math.abs(change) < SAME
                ? "as heavy as"
                : percent(Math.abs(change)) + (change < 0 ? " lighter" : " heavier") + " than";
        return than + " the tub that was tested";
    }
}
