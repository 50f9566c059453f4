// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.build.Activity.Clock;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Longest paths and learning against worked examples of textbooks; working days against a calendar. */
class ScheduleTest {
    private static final LocalDateTime MONDAY = LocalDateTime.of(2030, 1, 7, 0, 0);
    private static final double HOUR = 3600;

    private static Activity activity(String name, Clock clock, double hours, String uses, String... needs) {
        return new Activity(name, "", "", 0, clock, hours * HOUR, 0, uses, List.of(needs), "");
    }

    /** Activities between events, as textbooks draw them; a unit of time is an hour here. */
    private static Schedule arrows(int[][] arrows) {
        List<Activity> activities = new ArrayList<>();
        for (int[] a : arrows) {
            String[] before = Arrays.stream(arrows)
                    .filter(b -> b[1] == a[0])
                    .map(ScheduleTest::name)
                    .toArray(String[]::new);
            activities.add(activity(name(a), Clock.WAITING, a[2], "", before));
        }
        return Schedule.of(activities, Map.of(), WorkCalendar.always(), MONDAY);
    }

    private static String name(int[] arrow) {
        return arrow[0] + "-" + arrow[1];
    }

    /** Each row: from, to, duration, then earliest start and finish, latest start and finish, slack. */
    private static void matches(Ladder ladder, String problem, int[][] rows, String path) {
        Schedule schedule = arrows(rows);
        for (Schedule.Placed p : schedule.placed()) {
            int[] row = Arrays.stream(rows)
                    .filter(r -> name(r).equals(p.activity().name()))
                    .findFirst()
                    .orElseThrow();
            String what = problem + ", activity " + name(row) + ", ";
            ladder.equal(what + "earliest start", row[3], hours(p.start()), 0);
            ladder.equal(what + "latest finish", row[6], hours(p.latestFinish()), 0);
            ladder.equal(what + "slack", row[7], p.slack() / HOUR, 0);
            assertEquals(row[4], hours(p.finish()), what);
            assertEquals(row[5], hours(p.latestStart()), what);
        }
        assertEquals(
                path,
                String.join(
                        " ",
                        schedule.chain().stream().map(p -> p.activity().name()).toList()));
    }

    private static double hours(LocalDateTime at) {
        return ChronoUnit.SECONDS.between(MONDAY, at) / HOUR;
    }

    @Test
    void networksOfATextbookComeOutWithItsTimesAndSlack() {
        Ladder taylor = Ladder.of(
                Family.CURE,
                "Taylor, Introduction to Management Science, chapter 8, solutions of the first network problems",
                Mark.TRANSCRIBED);
        matches(
                taylor,
                "seven activities",
                new int[][] {
                    {1, 2, 7, 0, 7, 2, 9, 2},
                    {1, 3, 10, 0, 10, 0, 10, 0},
                    {2, 4, 6, 7, 13, 9, 15, 2},
                    {3, 4, 5, 10, 15, 10, 15, 0},
                    {3, 5, 4, 10, 14, 14, 18, 4},
                    {4, 5, 3, 15, 18, 15, 18, 0},
                    {5, 6, 2, 18, 20, 18, 20, 0}
                },
                "1-3 3-4 4-5 5-6");
        matches(
                taylor,
                "thirteen activities",
                new int[][] {
                    {1, 2, 8, 0, 8, 1, 9, 1},
                    {1, 3, 10, 0, 10, 0, 10, 0},
                    {1, 4, 9, 0, 9, 6, 15, 6},
                    {2, 5, 6, 8, 14, 9, 15, 1},
                    {2, 6, 4, 8, 12, 16, 20, 8},
                    {3, 5, 5, 10, 15, 10, 15, 0},
                    {4, 5, 0, 9, 9, 15, 15, 6},
                    {4, 7, 7, 9, 16, 20, 27, 11},
                    {5, 7, 12, 15, 27, 15, 27, 0},
                    {5, 8, 15, 15, 30, 16, 31, 1},
                    {6, 9, 18, 12, 30, 20, 38, 8},
                    {7, 8, 4, 27, 31, 27, 31, 0},
                    {8, 9, 7, 31, 38, 31, 38, 0}
                },
                "1-3 3-5 5-7 7-8 8-9");
    }

    @Test
    void aHouseOfATextbookTakesItsFortyFourWeeks() {
        String[][] rows = {
            {"A", "2"},
            {"B", "4", "A"},
            {"C", "10", "B"},
            {"D", "6", "C"},
            {"E", "4", "C"},
            {"F", "5", "E"},
            {"G", "7", "D"},
            {"H", "9", "E", "G"},
            {"I", "7", "C"},
            {"J", "8", "F", "I"},
            {"K", "4", "J"},
            {"L", "5", "J"},
            {"M", "2", "H"},
            {"N", "6", "K", "L"}
        };
        Schedule schedule = Schedule.of(
                Arrays.stream(rows)
                        .map(r -> activity(
                                r[0], Clock.WAITING, Double.parseDouble(r[1]), "", Arrays.copyOfRange(r, 2, r.length)))
                        .toList(),
                Map.of(),
                WorkCalendar.always(),
                MONDAY);
        Ladder.of(
                        Family.CURE,
                        "Hillier and Lieberman, Introduction to Operations Research, Reliable Construction Co.; durations read in"
                                + " a transcription, predecessors and the 44 weeks from memory",
                        Mark.MEMORY_CONFIRMED)
                .equal("longest path, weeks", 44, hours(schedule.end()), 0);
        assertEquals(
                "A B C E F J L N",
                String.join(
                        " ",
                        schedule.chain().stream().map(p -> p.activity().name()).toList()));
    }

    /** Unit and cumulative factors as printed in tables of learning curves. */
    @Test
    void aRunOfTubsLearnsAsTablesOfLearningCurvesSay() {
        Ladder tables = Ladder.of(
                Family.CURE,
                "Heizer and Render, Operations Management, learning-curve coefficients (unit form)",
                Mark.MEMORY_CONFIRMED);
        double[][] rows = {
            {0.85, 10, 0.583, 7.116}, {0.85, 20, 0.495, 12.402}, {0.80, 10, 0.477, 6.315}, {0.80, 20, 0.381, 10.485}
        };
        for (double[] row : rows) {
            double total = 0;
            for (int n = 1; n <= row[1]; n++) {
                total += Hours.learned(n, row[0]);
            }
            String what = (int) (100 * row[0]) + " %, " + (int) row[1] + " units, ";
            tables.equal(what + "time of the last", row[2], Hours.learned((int) row[1], row[0]), 5e-4);
            tables.equal(what + "time of all", row[3], total, 2e-3);
        }
        Ladder.of(Family.CURE, "Wright 1936: the share is what each doubling leaves", Mark.EXACT)
                .equal("sixteenth over eighth at 85 %", 0.85, Hours.learned(16, 0.85) / Hours.learned(8, 0.85), 1e-12);
    }

    private static final WorkCalendar WEEK = new WorkCalendar(
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
            LocalTime.of(8, 0),
            8 * HOUR,
            Set.of(LocalDate.of(2030, 1, 9)));

    @Test
    void handsRestAtNightOnSundaysAndOnDaysOff() {
        LocalDateTime begin = LocalDateTime.of(2030, 1, 8, 14, 0);
        // Tuesday two hours, Wednesday is off, Thursday and Friday eight, Monday one.
        assertEquals(LocalDateTime.of(2030, 1, 14, 9, 0), WEEK.after(begin, 19 * HOUR));
        assertEquals(begin, WEEK.before(LocalDateTime.of(2030, 1, 14, 9, 0), 19 * HOUR));
        assertEquals(LocalDateTime.of(2030, 1, 14, 8, 0), WEEK.next(LocalDateTime.of(2030, 1, 12, 3, 0)));
        WorkCalendar night = new WorkCalendar(WEEK.days(), LocalTime.of(22, 0), 8 * HOUR, Set.of());
        LocalDateTime afterMidnight = LocalDateTime.of(2030, 1, 12, 2, 0);
        assertEquals(afterMidnight, night.next(afterMidnight), "Friday's night shift reaches into Saturday");
    }

    @Test
    void anOvenRunsThroughTheNightAndOneOvenServesOneAfterTheOther() {
        List<Activity> both = List.of(
                activity("lay a", Clock.HANDS, 4, "team"),
                activity("cure a", Clock.OVEN, 8, "autoclave", "lay a"),
                activity("lay b", Clock.HANDS, 4, "team"),
                activity("cure b", Clock.OVEN, 8, "autoclave", "lay b"));
        Schedule one = Schedule.of(both, Map.of("team", 2, "autoclave", 1), WEEK, MONDAY);
        // Both laid by noon; the first runs until eight in the evening, the second starts on Tuesday morning.
        assertEquals(LocalDateTime.of(2030, 1, 8, 16, 0), one.end());
        assertEquals(
                List.of("lay a", "cure a", "cure b"),
                one.chain().stream().map(p -> p.activity().name()).toList());
        Schedule two = Schedule.of(both, Map.of("team", 2, "autoclave", 2), WEEK, MONDAY);
        assertEquals(LocalDateTime.of(2030, 1, 7, 20, 0), two.end());
    }

    @Test
    void whatCannotBeDoneIsRefused() {
        List<Activity> circle = List.of(activity("a", Clock.HANDS, 1, "", "b"), activity("b", Clock.HANDS, 1, "", "a"));
        String circular = assertThrows(
                        IllegalArgumentException.class, () -> Schedule.of(circle, Map.of(), WEEK, MONDAY))
                .getMessage();
        assertTrue(circular.contains("wait for each other"), circular);
        List<Activity> lost = List.of(activity("a", Clock.HANDS, 1, "", "c"));
        assertThrows(IllegalArgumentException.class, () -> Schedule.of(lost, Map.of(), WEEK, MONDAY));
    }
}
