// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Choosing gauges by information. */
class GaugeChoiceTest {
    /** Three joints in series between six gauges; each gauge sees the joints between it and the held end. */
    private static final double[][] SEEN = {
        {1.0, 1.0, 1.0}, {1.0, 1.0, 0.9}, {1.0, 1.0, 0.0}, {1.0, 0.9, 0.0}, {1.0, 0.0, 0.0}, {0.1, 0.0, 0.0}
    };

    private static final double[] SPREADS = {0.5, 0.5, 0.5};

    private static GaugeChoice choice(double deviation) {
        double[] deviations = new double[SEEN.length];
        java.util.Arrays.fill(deviations, deviation);
        return new GaugeChoice(SEEN, deviations, SPREADS, new double[] {1.0 / 3, 1.0 / 3, 1.0 / 3}, (_, _) -> true);
    }

    @Test
    void gaugesGoWhereTheyTellJointsApart() {
        List<Integer> places = choice(0.02).choose(List.of(0), 3).stream()
                .map(GaugeChoice.Chosen::place)
                .toList();
        // Behind each joint, not twice behind the same one.
        assertEquals(Set.of(0, 2, 4), Set.copyOf(places));
    }

    @Test
    void theGainsAddUpToTheInformationOfThemAll() {
        GaugeChoice choice = choice(0.1);
        double before = choice.logDeterminant();
        double bits = choice.choose(List.of(0), 4).stream()
                .mapToDouble(GaugeChoice.Chosen::gain)
                .sum();
        assertEquals((before - choice.logDeterminant()) / 2 / Math.log(2), bits, 1e-9);
    }

    @Test
    void oneReadingLeavesWhatTheTextbookSays() {
        // Kalman 1960: variance left of a single doubt is 1/(1/p² + j²/r²).
        GaugeChoice choice = new GaugeChoice(
                new double[][] {{2.0}}, new double[] {0.3}, new double[] {0.4}, new double[] {1}, (_, _) -> true);
        GaugeChoice.Chosen chosen = choice.choose(List.of(0), 1).getFirst();
        double left = 1 / Math.sqrt(1 / (0.4 * 0.4) + 4 / 0.09);
        assertEquals(left, chosen.spread(), 1e-12);
        assertEquals(left, choice.left()[0], 1e-12);
    }

    @Test
    void aPairThatTellsNothingNewIsLeftAway() {
        GaugeChoice choice = new GaugeChoice(
                new double[][] {{1.0, 0}, {1.0, 0}, {0.001, 0}},
                new double[] {0.001, 0.001, 0.1},
                new double[] {0.1, 0.1},
                new double[] {1, 0},
                (_, _) -> true);
        // The second is a copy of the first: it only halves the noise, which is worth half a bit; the third says
        // nothing.
        List<GaugeChoice.Chosen> chosen = choice.choose(List.of(0), 5);
        assertEquals(2, chosen.size());
        assertEquals(0.5, chosen.get(1).gain(), 0.01);
        assertTrue(chosen.get(0).gain() > 6);
    }

    @Test
    void sixDirectionsOfTwelveHoldABody() {
        Random random = new Random(4);
        double[][] points = {{2, 0.2, 0.1}, {2, -0.2, 0.1}, {2, 0.2, 0.4}, {2, -0.2, 0.4}};
        List<double[]> rows = new java.util.ArrayList<>();
        for (double[] p : points) {
            for (int d = 0; d < 3; d++) {
                rows.add(Restraint.row(p, d, new double[] {2, 0, 0.25}));
            }
        }
        java.util.Collections.shuffle(rows, random);
        List<Integer> six = Restraint.six(rows);
        assertEquals(6, six.stream().distinct().count());
        double[][] held = six.stream().map(rows::get).toArray(double[][]::new);
        double determinant = new org.hipparchus.linear.LUDecomposition(
                        org.hipparchus.linear.MatrixUtils.createRealMatrix(held))
                .getDeterminant();
        assertTrue(Math.abs(determinant) > 1e-4, "these six leave a motion free: " + determinant);
        // All in one plane through x: nothing resists rolling about the line they make.
        List<double[]> line = List.of(
                Restraint.row(new double[] {1, 0, 0}, 0, new double[3]),
                Restraint.row(new double[] {1, 0, 0}, 1, new double[3]),
                Restraint.row(new double[] {1, 0, 0}, 2, new double[3]),
                Restraint.row(new double[] {2, 0, 0}, 1, new double[3]),
                Restraint.row(new double[] {2, 0, 0}, 2, new double[3]),
                Restraint.row(new double[] {2, 0, 0}, 0, new double[3]));
        assertEquals(5, Restraint.six(line).size());
    }
}
