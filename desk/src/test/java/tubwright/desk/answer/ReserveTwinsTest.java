// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.response.Reserve;

/** Left and right in one row of a table where they fail alike. */
class ReserveTwinsTest {
    private static Reserve row(String load, String zone, double value) {
        return new Reserve(load, "pull-out", "", false, zone, "", new double[3], value, "", false, 0, "");
    }

    private static List<String> told(Reserve... rows) {
        return ReserveTwins.joined(List.of(rows)).stream()
                .map(r -> r.value() + " " + r.load() + " " + r.zone())
                .toList();
    }

    @Test
    void twinsThatFailAlikeStandInOneRowWithTheLowerFactor() {
        assertEquals(
                List.of("1.5 braking leg, left and right", "1.502 braking deck"),
                told(row("braking", "leg L", 1.5), row("braking", "deck", 1.502), row("braking", "leg R", 1.504)));
    }

    @Test
    void twinsThatACaseLoadsDifferentlyStayApart() {
        assertEquals(
                List.of("1.1 kerb rocker R", "1.4 kerb rocker L"),
                told(row("kerb", "rocker R", 1.1), row("kerb", "rocker L", 1.4)));
        assertEquals(
                List.of("1.1 kerb rocker R", "1.1 bump rocker L"),
                told(row("kerb", "rocker R", 1.1), row("bump", "rocker L", 1.1)));
    }

    @Test
    void oneSideAloneKeepsItsName() {
        assertEquals(List.of("2.0 kerb foot L"), told(row("kerb", "foot L", 2)));
    }
}
