// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.KeptChoice;

/** What was written, on the console. */
public final class KeptSummary {
    private static final int WIDTH = 78;

    private KeptSummary() {}

    /** Lines to print. */
    public static List<String> lines(KeptChoice kept) {
        StringBuilder text = new StringBuilder("Written to " + kept.file() + ", " + kept.variant()
                + ". Read and run again it weighs " + significant(kept.mass(), 5, " ") + " kg");
        for (KeptChoice.Reading reading : kept.readings()) {
            text.append("; ")
                    .append(reading.loading())
                    .append(' ')
                    .append(significant(reading.unit().of(reading.stiffness()), 6, " "))
                    .append(' ')
                    .append(reading.unit().text());
        }
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(Wrap.lines(text.append('.').toString(), "  ", WIDTH));
        return lines;
    }
}
