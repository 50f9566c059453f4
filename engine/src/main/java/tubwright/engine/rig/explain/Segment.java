// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What lies between two neighbouring gauge stations: twist as read and as predicted.
 *
 * @param from the station nearer to the held end, m
 * @param to the station nearer to the loaded end, m
 * @param measured twist gained over it, over torque, rad/(N·m)
 * @param predicted the same by the model as designed
 * @param explained the same by the model after the update
 * @param deviation standard uncertainty of the measured gain less the predicted one, rad/(N·m), the torque's scale
 *     included
 * @param guilty the doubt that explains most of the difference, if one explains a good part of it
 */
public record Segment(
        double from,
        double to,
        double measured,
        double predicted,
        double explained,
        double deviation,
        Optional<Doubt> guilty) {
    /** A doubt that explains less than this share of a difference is not blamed for it. */
    private static final double SHARE = 0.35;

    /** Measured less predicted, rad/(N·m). */
    public double excess() {
        return measured - predicted;
    }

    /** How many standard uncertainties measured and predicted lie apart. */
    public double significance() {
        return excess() / deviation;
    }

    /** Whether the difference stands out of the scatter. */
    public boolean standsOut() {
        return Math.abs(significance()) > 2;
    }

    /**
     * Segments from the held end outward, on either side of it: those towards the side with more stations first.
     *
     * @param measured readings
     * @param update what they said
     * @param heldStation where the tub is held, m: tells which way the twist grows
     */
    static List<Segment> of(Measured measured, Update update, double heldStation) {
        double[] stations = measured.stations();
        Map<Boolean, List<Integer>> sides = IntStream.range(0, stations.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> Math.abs(stations[i] - heldStation)))
                .collect(Collectors.partitioningBy(i -> stations[i] < heldStation));
        return sides.values().stream()
                .sorted(Comparator.comparingInt((List<Integer> side) -> side.size())
                        .reversed())
                .flatMap(side -> chain(measured, update, side).stream())
                .toList();
    }

    /** Segments between stations of one side, the one nearest to the held end first. */
    private static List<Segment> chain(Measured measured, Update update, List<Integer> order) {
        double[][] covariance = measured.covariance();
        List<Segment> result = new ArrayList<>();
        int before = -1;
        for (int at : order) {
            boolean first = before < 0;
            if (!first || measured.held().isPresent()) {
                double from = first ? measured.held().getAsDouble() : measured.stations()[before];
                double[] gains = new double[3];
                double[][] lines = {measured.angles(), update.before(), update.after()};
                for (int line = 0; line < 3; line++) {
                    gains[line] = lines[line][at] - (first ? 0 : lines[line][before]);
                }
                double variance = first
                        ? covariance[at][at]
                        : covariance[at][at] + covariance[before][before] - 2 * covariance[at][before];
                double scale = measured.scale() * gains[0];
                result.add(new Segment(
                        from,
                        measured.stations()[at],
                        gains[0],
                        gains[1],
                        gains[2],
                        Math.sqrt(variance + scale * scale),
                        guilty(update, at, before, gains[0] - gains[1])));
            }
            before = at;
        }
        return result;
    }

    private static Optional<Doubt> guilty(Update update, int at, int before, double excess) {
        Optional<Doubt> guilty = Optional.empty();
        double most = SHARE * Math.abs(excess);
        for (int d = 0; d < update.doubts().size(); d++) {
            double slope = update.derivative()[at][d] - (before < 0 ? 0 : update.derivative()[before][d]);
            double theta = update.mean()[d];
            // Springs in series give as 1/factor, c e^−θ: with the slope s = −c e^−θ at the mean, what the factor has
            // brought is c (e^−θ − 1) = −s (1 − e^θ). The rig's give is linear.
            double share =
                    update.doubts().get(d).is(Doubt.Kind.RIG_GIVE) ? slope * theta : slope * (Math.exp(theta) - 1);
            if (share * excess > 0 && Math.abs(share) > most) {
                most = Math.abs(share);
                guilty = Optional.of(update.doubts().get(d));
            }
        }
        return guilty;
    }
}
