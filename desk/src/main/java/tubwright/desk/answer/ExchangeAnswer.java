// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.trim.ExchangeCurve;

/**
 * Mass against stiffness, with what there is and what was chosen marked on it.
 *
 * @param tub name
 * @param variant that was lightened
 * @param loading name of the case
 * @param unit in which stiffness is told
 * @param curve points
 * @param readings the curve read at a row of masses
 * @param marks the design as it is, its other variants, the choice
 * @param chosen index of the chosen point, if one was chosen
 * @param foretold torsional stiffness of each point between the case's stations, with its spread, as its makers build it;
 *     empty where no calibration was used
 * @param calibrated the calibration used
 * @param unknowns of the mesh
 * @param stamp time
 * @param version of the program
 */
public record ExchangeAnswer(
        String tub,
        String variant,
        String loading,
        StiffnessUnit unit,
        ExchangeCurve curve,
        List<ExchangeCurve.Reading> readings,
        List<Mark> marks,
        Optional<Integer> chosen,
        List<LayupForecast.Foretold> foretold,
        Optional<RunAnswer.Calibrated> calibrated,
        int unknowns,
        String stamp,
        String version) {
    public ExchangeAnswer {
        readings = List.copyOf(readings);
        marks = List.copyOf(marks);
        foretold = List.copyOf(foretold);
    }

    /**
     * A tub that is there.
     *
     * @param name of the variant, or "chosen"
     * @param mass kg
     * @param stiffness between loaded and held hardpoints, N·m/rad or N/m
     */
    public record Mark(String name, double mass, double stiffness) {}
}
