// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Slips of the pen on random rigs: 3 to 7 stations, stretches whose softness scatters by a factor of 1.8, steps at
 * joints, a rig that gives, bodily motion along a line, gauges good to a hundredth.
 */
class GaugeOrderTest {
    // A slip between neighbours or near the held end may leave both lines as smooth as before: not all can be found.
    private static final int TUBS = 150;
    private static final double[] UNITS = {25.4, 1 / 25.4, 1000, 1e-3};

    /** Stations and, right and left, what each gauge moves at the greatest torque, m. */
    private record Rig(double[] x, double[] half, double[][] moves) {
        static Rig of(Random random) {
            int n = 3 + random.nextInt(5);
            double[] x = new double[n];
            do {
                for (int i = 0; i < n; i++) {
                    x[i] = Math.round(1000 * (0.2 + 2.4 * random.nextDouble())) / 1000.0;
                }
                Arrays.sort(x);
            } while (closest(x) < 0.15);
            double[] angle = new double[n];
            for (int i = n - 2; i >= 0; i--) {
                double joint = random.nextDouble() < 0.3 ? random.nextDouble() / 2 : 0;
                angle[i] = angle[i + 1] + (x[i + 1] - x[i]) * Math.exp(0.6 * random.nextGaussian()) + joint;
            }
            double whole = angle[0];
            double give = 0.3 * Math.abs(random.nextGaussian());
            double level = 0.3 * random.nextGaussian();
            double tilt = 0.25 * random.nextGaussian();
            double[] half = new double[n];
            double[][] moves = new double[n][];
            for (int i = 0; i < n; i++) {
                half[i] = Math.round(1000 * (0.35 + 0.2 * random.nextDouble())) / 1000.0;
                double turn = 1e-3 * half[i] * (angle[i] / whole + give);
                double bodily = 0.45e-3 * (level + tilt * (x[i] - 1.4));
                moves[i] = new double[] {
                    bodily + turn * (1 + 0.01 * random.nextGaussian()),
                    bodily - turn * (1 + 0.01 * random.nextGaussian())
                };
            }
            return new Rig(x, half, moves);
        }

        private static double closest(double[] x) {
            double least = Double.MAX_VALUE;
            for (int i = 1; i < x.length; i++) {
                least = Math.min(least, x[i] - x[i - 1]);
            }
            return least;
        }

        List<String> doubts() {
            StringBuilder text = new StringBuilder("cycle, torque [N·m]");
            StringBuilder head = new StringBuilder();
            for (int i = 0; i < x.length; i++) {
                for (int side = 0; side < 2; side++) {
                    String name = name(i, side);
                    head.append(String.format(
                            Locale.ROOT,
                            "gauge, %s, %f m, z, %f m, 0 m%n",
                            name,
                            x[i],
                            side == 0 ? half[i] : -half[i]));
                    text.append(", ").append(name).append(" [m]");
                }
            }
            for (int step : new int[] {0, 1, 2, 3, 4, 3, 2, 1, 0}) {
                text.append(String.format(Locale.ROOT, "%n1, %d", 500 * step));
                for (double[] pair : moves) {
                    text.append(String.format(Locale.ROOT, ", %.9f, %.9f", pair[0] * step / 4, pair[1] * step / 4));
                }
            }
            Readings readings = ReadingsReader.read("t.csv", head + text.toString());
            GaugeStations stations = GaugeStations.of(readings);
            double[] torque =
                    readings.steps().stream().mapToDouble(Step::torque).toArray();
            int[] cycle = readings.steps().stream().mapToInt(Step::cycle).toArray();
            return GaugeOrder.of(readings, stations.motions(), torque, cycle).stream()
                    .map(Finding::words)
                    .toList();
        }

        private static String name(int station, int side) {
            return "g" + station + (side == 0 ? "R" : "L");
        }
    }

    /** A slip made on a rig; the words that name it. */
    private interface Slip {
        String on(Rig rig, Random random);
    }

    private static int named(Slip slip) {
        int named = 0;
        for (int seed = 0; seed < TUBS; seed++) {
            Random random = new Random(seed);
            Rig rig = Rig.of(random);
            String words = slip.on(rig, random);
            List<String> doubts = new ArrayList<>(rig.doubts());
            named += !doubts.isEmpty() && doubts.getFirst().contains(words) ? 1 : 0;
        }
        return named;
    }

    @Test
    void soundReadingsAreHardlyEverDoubted() {
        int doubted = 0;
        for (int seed = 0; seed < TUBS; seed++) {
            doubted += Rig.of(new Random(seed)).doubts().isEmpty() ? 0 : 1;
        }
        assertTrue(doubted <= 3, doubted + " of " + TUBS + " (seeds 0 to 149)");
    }

    @Test
    void gaugesExchangedInAPairAreMostlyNamed() {
        int named = named((rig, random) -> {
            int i = random.nextInt(rig.x.length);
            double kept = rig.moves[i][0];
            rig.moves[i][0] = rig.moves[i][1];
            rig.moves[i][1] = kept;
            return "gauges \"g" + i + "R\" and \"g" + i + "L\" seem to be exchanged";
        });
        assertTrue(named >= 0.8 * TUBS, named + " of " + TUBS);
    }

    @Test
    void flippedSignsAreMostlyNamed() {
        int named = named((rig, random) -> {
            int i = random.nextInt(rig.x.length);
            int side = random.nextInt(2);
            rig.moves[i][side] *= -1;
            return "the sign of gauge \"" + Rig.name(i, side) + "\" seems to be flipped";
        });
        assertTrue(named >= 0.7 * TUBS, named + " of " + TUBS);
    }

    @Test
    void gaugesExchangedBetweenStationsAreMostlyNamed() {
        int named = named((rig, random) -> {
            int i = random.nextInt(rig.x.length - 1);
            int j = i + 1 + random.nextInt(rig.x.length - 1 - i);
            int side = random.nextInt(2);
            double kept = rig.moves[i][side];
            rig.moves[i][side] = rig.moves[j][side];
            rig.moves[j][side] = kept;
            return "gauges \"" + Rig.name(i, side) + "\" and \"" + Rig.name(j, side) + "\" seem to be exchanged";
        });
        assertTrue(named >= 0.5 * TUBS, named + " of " + TUBS);
    }

    @Test
    void readingsInAnotherUnitAreMostlyNamed() {
        int named = named((rig, random) -> {
            int i = random.nextInt(rig.x.length);
            int side = random.nextInt(2);
            rig.moves[i][side] *= UNITS[random.nextInt(UNITS.length)];
            return "gauge \"" + Rig.name(i, side) + "\" seems to read in another unit";
        });
        assertTrue(named >= 0.6 * TUBS, named + " of " + TUBS);
    }
}
