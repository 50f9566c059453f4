// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tubwright.fleet.Job;
import tubwright.fleet.Point;
import tubwright.fleet.Row;

/**
 * A parcel that brought down every process it was given to: for want of memory, or by a fault in native code.
 *
 * @param parcel its number
 * @param tries how often it was tried
 * @param last what the engine says of the last process
 * @param by what the engine has thrown
 */
record Fatal(int parcel, int tries, String last, Throwable by) {
    /** As the engine words the end of a job; a fault that leaves the process alive is worded otherwise. */
    private static final Pattern WORDS = Pattern.compile("Task (\\d+) in stage \\S+ failed (\\d+) times?.*"
            + "(?:ExecutorLostFailure \\([^)]*\\) ?(?:Reason: )?|java\\.lang\\.OutOfMemoryError: )(.*)");

    /** What the engine has thrown, if it was that. */
    static Optional<Fatal> of(Throwable by) {
        return String.valueOf(by.getMessage())
                .lines()
                .map(WORDS::matcher)
                .filter(Matcher::find)
                .map(m -> new Fatal(
                        Integer.parseInt(m.group(1)),
                        Integer.parseInt(m.group(2)),
                        m.group(3).strip(),
                        by))
                .findFirst();
    }

    /** The points of the parcel among all that were sent, cut as the engine cuts lists. */
    List<Point> among(List<Point> points, int parcels) {
        long all = points.size();
        return points.subList((int) (parcel * all / parcels), (int) ((parcel + 1) * all / parcels));
    }

    /** The row of the design that did it. */
    Row row(Point point, Job job) {
        return Row.failed(
                point.key(),
                job.readings(),
                "brings its process down, " + tries + " times of " + tries
                        + (last.isEmpty() ? "" : " (" + last + ")")
                        + "\n    most often a design of many elements wants more memory (spark.executor.memory)");
    }
}
