// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.Set;

/**
 * When a shop works.
 *
 * @param days of the week
 * @param first when the first shift begins
 * @param seconds worked a day, all shifts together
 * @param off days off
 */
public record WorkCalendar(Set<DayOfWeek> days, LocalTime first, double seconds, Set<LocalDate> off) {
    private static final double DAY = 86_400;

    /** Longer than anything a shop is closed for, days. */
    private static final int LONG = 3660;

    public WorkCalendar {
        days = Set.copyOf(days);
        off = Set.copyOf(off);
        if (days.isEmpty() || !(seconds > 0 && seconds <= DAY)) {
            throw new IllegalArgumentException("a shop works on some day, for more than no and at most 24 hours");
        }
    }

    /** Day and night, all week: time by the clock on the wall. */
    public static WorkCalendar always() {
        return new WorkCalendar(EnumSet.allOf(DayOfWeek.class), LocalTime.MIDNIGHT, DAY, Set.of());
    }

    /** Whether the shop works on a day. */
    public boolean open(LocalDate day) {
        return days.contains(day.getDayOfWeek()) && !off.contains(day);
    }

    /** The first working moment that is not before a moment. */
    public LocalDateTime next(LocalDateTime at) {
        // The last shift of yesterday may reach into today.
        for (int i = -1; i < LONG; i++) {
            LocalDate day = at.toLocalDate().plusDays(i);
            if (open(day) && end(day).isAfter(at)) {
                LocalDateTime begin = day.atTime(first);
                return begin.isAfter(at) ? begin : at;
            }
        }
        throw new IllegalStateException("the shop is closed for ten years");
    }

    /** When a number of working seconds that begin at a moment are done. */
    public LocalDateTime after(LocalDateTime at, double working) {
        LocalDateTime now = at;
        double left = Math.rint(working);
        while (left > 0) {
            now = next(now);
            double today = ChronoUnit.SECONDS.between(now, shiftEnd(now));
            double take = Math.min(left, today);
            now = now.plusSeconds((long) take);
            left -= take;
        }
        return now;
    }

    /** When a number of working seconds must begin to be done by a moment. */
    public LocalDateTime before(LocalDateTime at, double working) {
        LocalDateTime now = at;
        double left = Math.rint(working);
        for (int i = 0; i < LONG && left > 0; i++) {
            LocalDate day = at.toLocalDate().minusDays(i);
            LocalDateTime begin = day.atTime(first);
            if (!open(day) || !begin.isBefore(now)) {
                continue;
            }
            LocalDateTime end = end(day).isBefore(now) ? end(day) : now;
            double take = Math.min(left, ChronoUnit.SECONDS.between(begin, end));
            now = end.minusSeconds((long) take);
            left -= take;
        }
        return now;
    }

    private LocalDateTime shiftEnd(LocalDateTime inside) {
        LocalDate yesterday = inside.toLocalDate().minusDays(1);
        return open(yesterday) && end(yesterday).isAfter(inside) ? end(yesterday) : end(inside.toLocalDate());
    }

    private LocalDateTime end(LocalDate day) {
        return day.atTime(first).plusSeconds((long) seconds);
    }
}
