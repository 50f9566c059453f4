// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.build.Activity.Clock;

/**
 * When everything is done, and the chain that sets the end.
 *
 * <p>Earliest and latest times by the critical path method (Kelley and Walker 1959), in working hours. Where teams or
 * autoclaves are few, activities take their turn, that with the longest way still before it first (serial scheme, Kelley
 * 1963: a good schedule, not a proved best); who waits for whose team is then a link like any other.
 *
 * @param begin when the first may start
 * @param placed all activities, in the order they were given a place
 * @param longest the chain that sets the end: places in {@code placed}, first to last
 */
public record Schedule(LocalDateTime begin, List<Placed> placed, List<Integer> longest) {
    /**
     * An activity in its place.
     *
     * @param activity which
     * @param start when it begins
     * @param finish when it is done
     * @param latestStart when it must begin at the latest lest the end moves
     * @param latestFinish when it must be done at the latest
     */
    public record Placed(
            Activity activity,
            LocalDateTime start,
            LocalDateTime finish,
            LocalDateTime latestStart,
            LocalDateTime latestFinish) {
        /** Time by the clock on the wall that it may be late without moving the end, s. */
        public double slack() {
            return Math.max(0, ChronoUnit.SECONDS.between(finish, latestFinish));
        }
    }

    public Schedule {
        placed = List.copyOf(placed);
        longest = List.copyOf(longest);
    }

    /** When all is done. */
    public LocalDateTime end() {
        return placed.stream().map(Placed::finish).max(LocalDateTime::compareTo).orElse(begin);
    }

    /** The chain that sets the end. */
    public List<Placed> chain() {
        return longest.stream().map(placed::get).toList();
    }

    /**
     * Places activities as early as they can be.
     *
     * @param activities in any order
     * @param units how many of what activities use there are; what is not named is without limit
     * @throws IllegalArgumentException if one needs what is not there, or two wait for each other
     */
    public static Schedule of(
            List<Activity> activities, Map<String, Integer> units, WorkCalendar calendar, LocalDateTime begin) {
        Map<String, Integer> index = new LinkedHashMap<>();
        for (Activity each : activities) {
            if (index.put(each.name(), index.size()) != null) {
                throw new IllegalArgumentException("'" + each.name() + "' is there twice");
            }
        }
        int n = activities.size();
        List<List<Integer>> needs = new ArrayList<>();
        for (Activity each : activities) {
            needs.add(new ArrayList<>(each.needs().stream()
                    .map(name -> {
                        if (!index.containsKey(name)) {
                            throw new IllegalArgumentException(
                                    "'" + each.name() + "' needs '" + name + "', which is not there");
                        }
                        return index.get(name);
                    })
                    .toList()));
        }
        int[] order = order(activities, needs);
        double[] tail = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            int a = order[i];
            tail[a] += activities.get(a).seconds();
            for (int before : needs.get(a)) {
                tail[before] = Math.max(tail[before], tail[a]);
            }
        }
        LocalDateTime[] start = new LocalDateTime[n];
        LocalDateTime[] finish = new LocalDateTime[n];
        List<Integer> sequence = place(activities, needs, tail, units, calendar, begin, start, finish);
        LocalDateTime[] latest = latest(activities, needs, sequence, calendar, finish);
        List<Placed> placed = new ArrayList<>();
        int[] at = new int[n];
        for (int a : sequence) {
            at[a] = placed.size();
            placed.add(new Placed(
                    activities.get(a), start[a], finish[a], begins(activities.get(a), latest[a], calendar), latest[a]));
        }
        return new Schedule(
                begin, placed, chain(needs, finish).stream().map(a -> at[a]).toList());
    }

    /** Each after all it needs. */
    private static int[] order(List<Activity> activities, List<List<Integer>> needs) {
        int n = activities.size();
        int[] order = new int[n];
        boolean[] done = new boolean[n];
        for (int placed = 0; placed < n; placed++) {
            int found = -1;
            for (int a = 0; a < n && found < 0; a++) {
                if (!done[a] && needs.get(a).stream().allMatch(b -> done[b])) {
                    found = a;
                }
            }
            if (found < 0) {
                throw new IllegalArgumentException("these wait for each other: "
                        + activities.stream()
                                .filter(a -> !done[activities.indexOf(a)])
                                .map(Activity::name)
                                .toList());
            }
            done[found] = true;
            order[placed] = found;
        }
        return order;
    }

    /** Gives each its time; who waited for a team or an oven gets a link to whom it waited for. */
    private static List<Integer> place(
            List<Activity> activities,
            List<List<Integer>> needs,
            double[] tail,
            Map<String, Integer> units,
            WorkCalendar calendar,
            LocalDateTime begin,
            LocalDateTime[] start,
            LocalDateTime[] finish) {
        int n = activities.size();
        List<Integer> sequence = new ArrayList<>();
        Map<String, int[]> last = new HashMap<>();
        units.forEach((name, count) -> {
            int[] none = new int[count];
            java.util.Arrays.fill(none, -1);
            last.put(name, none);
        });
        boolean[] done = new boolean[n];
        while (sequence.size() < n) {
            int next = -1;
            LocalDateTime earliest = begin;
            for (int a = 0; a < n; a++) {
                if (done[a] || !needs.get(a).stream().allMatch(b -> done[b])) {
                    continue;
                }
                LocalDateTime ready =
                        free(needs.get(a), last.get(activities.get(a).uses()), begin, finish);
                if (next < 0 || ready.isBefore(earliest) || ready.equals(earliest) && tail[a] > tail[next]) {
                    next = a;
                    earliest = ready;
                }
            }
            Activity activity = activities.get(next);
            int[] unit = last.get(activity.uses());
            if (unit != null) {
                int own = firstFree(unit, finish);
                if (unit[own] >= 0) {
                    needs.get(next).add(unit[own]);
                }
                unit[own] = next;
            }
            start[next] = activity.clock() == Clock.WAITING ? earliest : calendar.next(earliest);
            finish[next] = activity.clock() == Clock.HANDS
                    ? calendar.after(start[next], activity.seconds())
                    : start[next].plusSeconds(Math.round(activity.seconds()));
            if (activity.seconds() == 0) {
                start[next] = earliest;
                finish[next] = earliest;
            }
            done[next] = true;
            sequence.add(next);
        }
        return sequence;
    }

    private static LocalDateTime free(List<Integer> needs, int[] unit, LocalDateTime begin, LocalDateTime[] finish) {
        LocalDateTime ready = begin;
        for (int b : needs) {
            ready = finish[b].isAfter(ready) ? finish[b] : ready;
        }
        if (unit != null) {
            int own = firstFree(unit, finish);
            if (unit[own] >= 0 && finish[unit[own]].isAfter(ready)) {
                ready = finish[unit[own]];
            }
        }
        return ready;
    }

    private static int firstFree(int[] unit, LocalDateTime[] finish) {
        int own = 0;
        for (int u = 0; u < unit.length; u++) {
            if (unit[u] < 0) {
                return u;
            }
            if (finish[unit[u]].isBefore(finish[unit[own]])) {
                own = u;
            }
        }
        return own;
    }

    private static LocalDateTime[] latest(
            List<Activity> activities,
            List<List<Integer>> needs,
            List<Integer> sequence,
            WorkCalendar calendar,
            LocalDateTime[] finish) {
        LocalDateTime end =
                java.util.Arrays.stream(finish).max(LocalDateTime::compareTo).orElseThrow();
        LocalDateTime[] latest = new LocalDateTime[finish.length];
        java.util.Arrays.fill(latest, end);
        for (int i = sequence.size() - 1; i >= 0; i--) {
            int a = sequence.get(i);
            LocalDateTime begins = begins(activities.get(a), latest[a], calendar);
            for (int b : needs.get(a)) {
                if (begins.isBefore(latest[b])) {
                    latest[b] = begins;
                }
            }
        }
        return latest;
    }

    private static LocalDateTime begins(Activity activity, LocalDateTime finish, WorkCalendar calendar) {
        return activity.clock() == Clock.HANDS
                ? calendar.before(finish, activity.seconds())
                : finish.minusSeconds(Math.round(activity.seconds()));
    }

    /** Back from the last one, always to whom it waited for. */
    private static List<Integer> chain(List<List<Integer>> needs, LocalDateTime[] finish) {
        List<Integer> chain = new ArrayList<>();
        int at = -1;
        for (int a = 0; a < finish.length; a++) {
            if (at < 0 || finish[a].isAfter(finish[at])) {
                at = a;
            }
        }
        while (at >= 0) {
            chain.addFirst(at);
            int before = -1;
            for (int b : needs.get(at)) {
                if (before < 0 || finish[b].isAfter(finish[before])) {
                    before = b;
                }
            }
            at = before;
        }
        return chain;
    }
}
