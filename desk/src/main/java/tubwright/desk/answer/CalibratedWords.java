// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.List;

/** What a test has put on the tub, in words. */
public final class CalibratedWords {
    /** Factors nearer to one than this are not told one by one. */
    private static final double TOLD = 0.01;

    private CalibratedWords() {}

    /** One sentence or two. */
    public static String of(RunAnswer.Calibrated calibrated) {
        List<String> told = new ArrayList<>();
        for (RunAnswer.Calibrated.Factor each : calibrated.factors()) {
            if (Math.abs(each.factor() - 1) >= TOLD) {
                told.add(each.name() + " × " + fixed(each.factor(), 2, " "));
            }
        }
        return "As built, not as designed: computed with what the test of " + calibrated.tested() + " ("
                + calibrated.source() + ", " + calibrated.stamp() + ") says of its makers. "
                + (told.isEmpty()
                        ? "Every factor is within 1 % of one."
                        : String.join(", ", told) + "; all others within 1 % of one.")
                + " tubwright rig predict tells how sure that is.";
    }
}
