// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Optional;
import picocli.CommandLine.Option;
import tubwright.desk.work.BuildWork;
import tubwright.desk.work.UserMistake;
import tubwright.engine.make.build.BuildShop;

/** How many tubs are built and from when on. */
final class RunOfTubs {
    @Option(names = "--tubs", paramLabel = "N", description = "Plan a run of so many tubs; default: 1.")
    private int tubs = 1;

    @Option(
            names = "--begin",
            paramLabel = "DATE",
            description =
                    "Day on which material is ordered and patterns are begun; default: the date of the sheets, or today.")
    private Optional<String> begin = Optional.empty();

    BuildWork.Request request(BuildShop shop, String usual) {
        return new BuildWork.Request(
                tubs, begin.map(b -> date("--begin", b)).orElseGet(() -> date("--date", usual)), shop);
    }

    private static LocalDate date(String option, String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new UserMistake(option + " " + text + ": write a date as year-month-day, as in 2030-05-17");
        }
    }
}
