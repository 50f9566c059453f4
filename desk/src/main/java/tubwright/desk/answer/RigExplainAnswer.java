// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Optional;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.explain.Explanation;

/**
 * A torsion test explained by the model.
 *
 * @param tub name
 * @param variant of the design that was tested
 * @param reading the reduced test
 * @param explanation what it says of the model
 * @param foretold predictions kept earlier and how they fared
 * @param keptAt where the calibration was kept
 * @param weighed what the tub weighed while it was built, if that was asked for; the model has it in its stiffness
 * @param meshSize m
 * @param version of the program
 * @param stamp time, as printed
 */
public record RigExplainAnswer(
        String tub,
        String variant,
        TorsionReading reading,
        Explanation explanation,
        List<Foretold> foretold,
        Optional<String> keptAt,
        Optional<WeighedIn> weighed,
        double meshSize,
        String version,
        String stamp) {
    public RigExplainAnswer {
        foretold = List.copyOf(foretold);
    }

    /**
     * A prediction against the test.
     *
     * @param name under which it was kept
     * @param stamp when
     * @param stiffness predicted, N·m/rad
     * @param spread standard deviation of its logarithm
     * @param mass foretold, kg
     * @param measured N·m/rad
     * @param measuredSpread standard deviation of its logarithm
     * @param score how many standard deviations the test lies off
     */
    public record Foretold(
            String name,
            String stamp,
            double stiffness,
            double spread,
            double mass,
            double measured,
            double measuredSpread,
            double score) {
        /** Whether the test fell into the 95 % interval. */
        public boolean held() {
            return Math.abs(score) <= 1.96;
        }
    }
}
