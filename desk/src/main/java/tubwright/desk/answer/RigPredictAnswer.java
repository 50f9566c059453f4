// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Optional;
import tubwright.engine.response.Reserve;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.NextTub;

/**
 * The next tub foretold.
 *
 * @param tub name
 * @param variant of the design
 * @param prediction stiffness with its interval
 * @param calibration what it rests on; empty where nothing has been tested
 * @param mass kg
 * @param testedMass mass of the tub that was tested, as computed, kg; NaN where unknown
 * @param weakest what gives way first in the design's load cases, if it has any
 * @param fingerprint of the design
 * @param keptAt where the prediction was kept
 * @param weighed what the tub weighed while it was built, if that was asked for; the model has it in its stiffness
 * @param meshSize m
 * @param version of the program
 * @param stamp time, as printed
 */
public record RigPredictAnswer(
        String tub,
        String variant,
        NextTub prediction,
        Optional<Calibration> calibration,
        double mass,
        double testedMass,
        Optional<Reserve> weakest,
        String fingerprint,
        Optional<String> keptAt,
        Optional<WeighedIn> weighed,
        double meshSize,
        String version,
        String stamp) {}
