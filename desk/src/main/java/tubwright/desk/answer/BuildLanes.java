// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tubwright.engine.make.build.Activity.Clock;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.Schedule.Placed;

/**
 * A build plan sorted into where things are done, as it is drawn.
 *
 * @param lanes in the order in which they are first busy
 * @param begin midnight before the first
 * @param days until the last is done, whole days
 * @param down where each day begins in the picture, and where the last ends, as shares of the whole: days of waiting are short
 */
public record BuildLanes(List<Lane> lanes, LocalDateTime begin, int days, double[] down) {
    /** A day on which nothing but waiting is done is drawn this long. */
    private static final double IDLE = 0.2;

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter YEAR = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

    /**
     * One place.
     *
     * @param name of it; "" where it is a further track of the one before
     * @param placed what is done there, one after the other
     */
    public record Lane(String name, List<Placed> placed) {
        public Lane {
            placed = List.copyOf(placed);
        }
    }

    public BuildLanes {
        lanes = List.copyOf(lanes);
    }

    /** Of a plan. */
    public static BuildLanes of(BuildPlan plan) {
        Map<String, List<List<Placed>>> tracks = new LinkedHashMap<>();
        plan.schedule().placed().stream()
                .filter(p -> p.activity().seconds() > 0)
                .sorted(Comparator.comparing(Placed::start))
                .forEach(p -> {
                    List<List<Placed>> own = tracks.computeIfAbsent(p.activity().lane(), _ -> new ArrayList<>());
                    for (List<Placed> track : own) {
                        if (!track.getLast().finish().isAfter(p.start())) {
                            track.add(p);
                            return;
                        }
                    }
                    own.add(new ArrayList<>(List.of(p)));
                });
        List<Lane> lanes = new ArrayList<>();
        tracks.forEach((name, own) -> {
            for (int i = 0; i < own.size(); i++) {
                lanes.add(new Lane(i == 0 ? name : "", own.get(i)));
            }
        });
        LocalDateTime begin = plan.schedule().begin().truncatedTo(ChronoUnit.DAYS);
        int days =
                (int) Math.ceil(Duration.between(begin, plan.schedule().end()).toMinutes() / 1440.0);
        return new BuildLanes(lanes, begin, Math.max(1, days), down(plan, begin, Math.max(1, days)));
    }

    private static double[] down(BuildPlan plan, LocalDateTime begin, int days) {
        double[] length = new double[days];
        java.util.Arrays.fill(length, IDLE);
        for (Placed p : plan.schedule().placed()) {
            if (p.activity().clock() != Clock.WAITING && p.activity().seconds() > 0) {
                for (LocalDate d = p.start().toLocalDate();
                        !d.isAfter(p.finish().toLocalDate());
                        d = d.plusDays(1)) {
                    int day = (int) ChronoUnit.DAYS.between(begin.toLocalDate(), d);
                    length[Math.min(days - 1, day)] = 1;
                }
            }
        }
        double[] down = new double[days + 1];
        for (int d = 0; d < days; d++) {
            down[d + 1] = down[d] + length[d];
        }
        double whole = down[days];
        for (int d = 0; d <= days; d++) {
            down[d] /= whole;
        }
        return down;
    }

    /** Share of the picture's length at which a moment is drawn. */
    public double place(LocalDateTime at) {
        double day = Math.max(0, Math.min(days, day(at)));
        int whole = (int) Math.min(days - 1, Math.floor(day));
        return down[whole] + (day - whole) * (down[whole + 1] - down[whole]);
    }

    /** Share of the picture's length that days with work take, each. */
    public double workingDay() {
        double most = 0;
        for (int d = 0; d < days; d++) {
            most = Math.max(most, down[d + 1] - down[d]);
        }
        return most;
    }

    /** Days at which the picture is ruled, first days of weeks, far enough apart to be labelled. */
    public List<Integer> ruled(double apart) {
        List<Integer> ruled = new ArrayList<>();
        for (int d = 0; d <= days; d += 7) {
            if (ruled.isEmpty() || down[d] - down[ruled.getLast()] >= apart) {
                ruled.add(d);
            }
        }
        return ruled;
    }

    /** Days since the beginning, with their fraction. */
    public double day(LocalDateTime at) {
        return Duration.between(begin, at).toMinutes() / 1440.0;
    }

    /** The lane something is in. */
    public int lane(Placed placed) {
        for (int i = 0; i < lanes.size(); i++) {
            if (lanes.get(i).placed().contains(placed)) {
                return i;
            }
        }
        return 0;
    }

    /** A day in words: "7 Jan". */
    public static String day(LocalDate day) {
        return DAY.format(day);
    }

    /** A day in words with its year. */
    public static String dayOfYear(LocalDateTime at) {
        return YEAR.format(at);
    }

    /** Steps of the longest path: from, to, what, how long; neighbours of one kind in one row. */
    public static List<String[]> path(BuildPlan plan) {
        List<List<Placed>> groups = new ArrayList<>();
        plan.schedule().chain().stream().filter(p -> p.activity().seconds() > 0).forEach(p -> {
            if (groups.isEmpty()
                    || !groups.getLast()
                            .getLast()
                            .activity()
                            .step()
                            .equals(p.activity().step())
                    || groups.getLast().getLast().activity().clock()
                            != p.activity().clock()) {
                groups.add(new ArrayList<>());
            }
            groups.getLast().add(p);
        });
        return groups.stream()
                .map(g -> new String[] {
                    dayOfYear(g.getFirst().start()),
                    dayOfYear(g.getLast().finish()),
                    g.getFirst().activity().name() + (g.size() > 1 ? ", and " + (g.size() - 1) + " more like it" : ""),
                    waits(
                            g.getFirst().activity().clock(),
                            g.stream().mapToDouble(p -> p.activity().seconds()).sum())
                })
                .toList();
    }

    private static String waits(Clock clock, double seconds) {
        double hours = seconds / 3600;
        String time = clock == Clock.WAITING && hours >= 72
                ? Math.round(hours / 24) + " days"
                : Math.round(10 * hours) / 10.0 + " h";
        return switch (clock) {
            case HANDS -> time + " of a team";
            case OVEN -> time + " in the autoclave";
            case WAITING -> time + " of waiting";
        };
    }
}
