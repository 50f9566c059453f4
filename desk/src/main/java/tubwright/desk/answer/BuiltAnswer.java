// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.BuiltTub;

/**
 * A tub as it was built, against the plan.
 *
 * @param tub name
 * @param number of this one
 * @param built what was written down
 * @param comparison against the plan
 * @param warnings about the record itself: of another issue, of a design that has changed since
 * @param version of the program
 * @param stamp time, as printed
 */
public record BuiltAnswer(
        String tub,
        int number,
        BuiltTub built,
        BuiltComparison comparison,
        List<String> warnings,
        String version,
        String stamp) {
    public BuiltAnswer {
        warnings = List.copyOf(warnings);
    }

    /** Lines of a kind that somebody filled in. */
    public List<BuiltTub.Line> said(BuiltTub.Kind kind) {
        return built.of(kind).stream()
                .filter(l -> !l.words().isEmpty() || !l.released().isEmpty())
                .toList();
    }

    /** A share in words: "3.1 % more". */
    public static String over(double share) {
        double percent = Math.round(1000 * Math.abs(share)) / 10.0;
        return percent == 0 ? "as planned" : percent + (share > 0 ? " % more" : " % less");
    }
}
