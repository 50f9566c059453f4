// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.ForetoldTub;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.Doubts;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.numerics.DirectSolver;

/** Tubs as a test says that their makers build them, and layups of them foretold. */
final class AsBuilt {
    private AsBuilt() {}

    /** The tub with the most likely factors of the calibration on it; as designed where there is none. */
    static Tub of(Tub tub, Optional<Calibration> calibration) {
        if (calibration.isEmpty()) {
            return tub;
        }
        Case.Torsion loading = torsion(tub);
        Calibration known = calibration.get().on(tub, loading);
        return Doubts.applied(tub, loading, known.doubts(), known.mean());
    }

    /**
     * Foretells layups of a tub.
     *
     * @param tub as designed
     * @param loading torsion case that layups are told for; the tub's first one where it is none
     * @param meshSize m
     */
    static LayupForecast forecast(
            Tub tub, Case loading, Calibration calibration, double meshSize, DirectSolver solver) {
        Case.Torsion torsion = loading instanceof Case.Torsion t ? t : torsion(tub);
        return new LayupForecast(
                of(tub, Optional.of(calibration)),
                torsion,
                calibration.on(tub, torsion),
                RigWork.meshError(tub, torsion, meshSize),
                meshSize,
                RigWork.DERIVATIVE * meshSize,
                solver,
                Thread::interrupted);
    }

    /** One layup foretold, with what gives way first in its load cases. */
    static ForetoldTub foretold(
            LayupForecast forecast, Tub built, Layup layup, Calibration calibration, double meshSize) {
        Tub next = with(built, layup);
        Structure structure = Structure.of(next, Study.mesh(next, meshSize));
        return new ForetoldTub(
                forecast.of(next),
                MassRollUp.of(structure).whole().mass(),
                calibration.mass(),
                RigWork.weakest(next, structure),
                words(calibration));
    }

    /** The tub with another layup, joints as wide as it says. */
    static Tub with(Tub tub, Layup layup) {
        List<Joint> joints = tub.joints().stream()
                .map(j -> j.stiffer(layup.joints().getOrDefault(j.line(), 1.0)))
                .toList();
        return tub.with(layup.zones(), layup.patches(), joints, tub.hardpoints());
    }

    /** A calibration for the reader. */
    static RunAnswer.Calibrated words(Calibration calibration) {
        List<RunAnswer.Calibrated.Factor> factors = new java.util.ArrayList<>();
        for (int i = 0; i < calibration.doubts().size(); i++) {
            factors.add(new RunAnswer.Calibrated.Factor(
                    calibration.doubts().get(i).name(),
                    Math.exp(calibration.mean()[i]),
                    Math.sqrt(calibration.covariance()[i][i])));
        }
        return new RunAnswer.Calibrated(calibration.tested(), calibration.source(), calibration.stamp(), factors);
    }

    private static Case.Torsion torsion(Tub tub) {
        return tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .orElseThrow(() -> new UserMistake("variant \"" + tub.variant()
                        + "\" has no torsion case, which a calibration belongs to\n    run it without --calibrated"));
    }
}
