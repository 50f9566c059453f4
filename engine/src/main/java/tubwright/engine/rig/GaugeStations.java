// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * The stations of a test sorted by what was read there: those whose gauges tell an angle often enough for a slope, and
 * those that do not, each with a word to the reader.
 *
 * @param motions stations that tell an angle, by rising x
 * @param alone gauges that were read but cannot tell turning from bodily motion, station by station
 * @param findings gauges and stations that were not read, or too seldom
 */
record GaugeStations(List<StationMotion> motions, List<List<Integer>> alone, List<Finding> findings) {
    static GaugeStations of(Readings readings) {
        List<StationMotion> motions = new ArrayList<>();
        List<List<Integer>> alone = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        List<Gauge> gauges = readings.gauges();
        for (List<Integer> group : StationMotion.groups(gauges)) {
            List<Integer> read =
                    group.stream().filter(g -> everRead(readings, g)).toList();
            unread(readings, group, read, findings);
            if (read.isEmpty()) {
                continue;
            }
            if (!StationMotion.tellsAngle(gauges, read)) {
                alone.add(read);
                continue;
            }
            StationMotion motion = StationMotion.of(readings, read);
            int steps = count(motion.angles());
            int needed = needed(readings, motion.angles());
            if (steps < needed) {
                findings.add(new Finding(
                        Finding.Kind.UNREAD,
                        place(readings, read.getFirst()),
                        names(gauges, read) + " at " + TorsionReduction.millimetres(motion.station())
                                + " were read together at only " + steps + (steps == 1 ? " step" : " steps")
                                + "; a slope and its scatter need " + needed
                                + ". The station is left out of the twist line"));
            } else {
                motions.add(motion);
            }
        }
        return new GaugeStations(List.copyOf(motions), List.copyOf(alone), List.copyOf(findings));
    }

    private static void unread(Readings readings, List<Integer> group, List<Integer> read, List<Finding> findings) {
        List<Integer> empty = group.stream().filter(g -> !read.contains(g)).toList();
        if (empty.isEmpty()) {
            return;
        }
        boolean several = empty.size() > 1;
        String left = read.isEmpty()
                ? ". The station is left out of the twist line"
                : StationMotion.tellsAngle(readings.gauges(), read)
                        ? "; the other gauges of the station give its angle"
                        : "; with it the pair is lost";
        findings.add(new Finding(
                Finding.Kind.UNREAD,
                place(readings, empty.getFirst()),
                names(readings.gauges(), empty) + " at "
                        + TorsionReduction.millimetres(
                                readings.gauges().get(empty.getFirst()).station())
                        + (several ? " were" : " was") + " never read: "
                        + (several ? "their columns are" : "its column is")
                        + " empty" + left));
    }

    private static boolean everRead(Readings readings, int gauge) {
        return readings.steps().stream().anyMatch(s -> Double.isFinite(s.readings()[gauge]));
    }

    /** How many steps have an angle. */
    static int count(double[] angles) {
        return (int) Arrays.stream(angles).filter(Double::isFinite).count();
    }

    /** How many it takes: a slope, a zero for each cycle in which the angle was read, and one to spare for the scatter. */
    static int needed(Readings readings, double[] angles) {
        long cycles = IntStream.range(0, angles.length)
                .filter(i -> Double.isFinite(angles[i]))
                .map(i -> readings.steps().get(i).cycle())
                .distinct()
                .count();
        return (int) Math.max(1, cycles) + 2;
    }

    private static String names(List<Gauge> gauges, List<Integer> group) {
        return (group.size() > 1 ? "gauges " : "gauge ")
                + group.stream().map(g -> "\"" + gauges.get(g).name() + "\"").collect(Collectors.joining(" and "));
    }

    private static String place(Readings readings, int gauge) {
        return readings.source() + ":" + readings.gauges().get(gauge).line();
    }
}
