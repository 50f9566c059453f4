// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tubwright.fleet.Point;

/** Which design it was that brought its process down, read from what the engine says. */
class FatalTest {
    private static final String LOST =
            "Job aborted due to stage failure: Task 7 in stage 2.0 failed 8 times, most recent"
                    + " failure: Lost task 7.7 in stage 2.0 (TID 31) (192.0.2.11 executor 9): ExecutorLostFailure (executor 9 exited"
                    + " caused by one of the running tasks) Reason: Command exited with code 134\nDriver stacktrace:";

    @Test
    void aProcessThatEndedNamesItsParcelAndWhy() {
        Fatal fatal = Fatal.of(new RuntimeException(LOST)).orElseThrow();
        assertEquals(7, fatal.parcel());
        assertEquals(8, fatal.tries());
        assertEquals("Command exited with code 134", fatal.last());
    }

    @Test
    void aFaultOfTheProgramIsNone() {
        String other = LOST.replaceAll("ExecutorLost.*", "java.lang.IllegalStateException: a fault");
        assertTrue(Fatal.of(new RuntimeException(other)).isEmpty());
        assertTrue(Fatal.of(new RuntimeException()).isEmpty());
    }

    @Test
    void parcelsTogetherHoldEveryPointOnce() {
        List<Point> points = IntStream.range(0, 25)
                .mapToObj(i -> new Point("k" + i, List.of()))
                .toList();
        List<Point> seen = new ArrayList<>();
        for (int parcel = 0; parcel < 7; parcel++) {
            seen.addAll(new Fatal(parcel, 1, "", new RuntimeException()).among(points, 7));
        }
        assertEquals(points, seen);
    }
}
