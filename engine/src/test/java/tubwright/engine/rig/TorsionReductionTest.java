// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A synthetic rig whose truth is known. */
class TorsionReductionTest {
    @Test
    void bodilyMotionAndTheTurningOfTheHeldEndAreRemoved() {
        TorsionReading reading = new SyntheticRig(1).reduce();
        assertEquals(1, reading.all().stiffness() / SyntheticRig.TUB, 1e-5);
        assertEquals(0.8e-3, reading.twist().getFirst().bodily(), 1e-8);
        assertTrue(reading.findings().isEmpty(), reading.findings().toString());
    }

    @Test
    void theTwistLineIsThatOfTheTub() {
        TorsionReading reading = new SyntheticRig(1).reduce();
        for (int s = 0; s < 4; s++) {
            double share = (2.4 - SyntheticRig.STATIONS[s]) / 2.1;
            assertEquals(share / SyntheticRig.TUB, reading.twist().get(s).perTorque(), 1e-5 / SyntheticRig.TUB);
        }
    }

    @Test
    void theTruthLiesInsideTheIntervalAsOftenAsItSays() {
        int inside = 0;
        for (int trial = 0; trial < 1000; trial++) {
            SyntheticRig rig = new SyntheticRig(trial);
            rig.noise = 2e-5;
            rig.cycles = 2;
            TorsionReading reading = rig.reduce();
            inside += Math.abs(reading.all().stiffness() - SyntheticRig.TUB)
                            <= reading.all().expanded()
                    ? 1
                    : 0;
        }
        assertTrue(inside >= 930 && inside <= 970, inside + " of 1000 (seeds 0 to 999)");
    }

    @Test
    void theRigIsTakenOutWithItsErrorGrowing() {
        SyntheticRig rig = new SyntheticRig(4);
        rig.noise = 2e-5;
        rig.settings = "rig stiffness, 36 kN·m/deg, 1 kN·m/deg\n";
        TorsionReading reading = rig.reduce();
        double measured = reading.all().stiffness();
        double stated = 36_000 * 180 / Math.PI;
        Estimate left = reading.withoutRig().orElseThrow();
        assertEquals(1 / (1 / measured - 1 / stated), left.stiffness(), 1e-6 * measured);
        double growth = Math.pow(left.stiffness() / measured, 2);
        assertEquals(reading.all().standardError() * growth, left.standardError(), 1e-9 * measured);
        assertTrue(left.expanded() > growth * reading.all().expanded());
        assertEquals(
                Series.uncertaintyWithout(
                        measured, reading.all().uncertainty().combined(), stated, 1000 * 180 / Math.PI),
                left.uncertainty().combined(),
                1e-9 * measured);
    }

    @Test
    void thePlacesOfBothPairsAreInTheInterval() {
        // Gauges placed to 2 mm (standard) a metre apart on a rig that gives 1.5 times the twist: the loaded pair turns
        // 2.5 times the twist and is wrong by √2 · 2 mm/1 m of that, the held one by as much of 1.5 times.
        SyntheticRig rig = new SyntheticRig(1);
        rig.heldTurn = 1.5;
        rig.settings = "gauge spacing uncertainty, 2 mm\n";
        Estimate estimate = rig.reduce().all();
        assertEquals(
                Math.hypot(2.5, 1.5) * Math.sqrt(2) * 2e-3,
                estimate.uncertainty().combined() / estimate.stiffness(),
                1e-5);
    }

    @Test
    void gaugesMisplacedAsTheFileSaysLeaveTheTruthInsideTheInterval() {
        int inside = 0;
        for (int trial = 0; trial < 1000; trial++) {
            SyntheticRig rig = new SyntheticRig(trial);
            rig.noise = 5e-6;
            rig.cycles = 1;
            rig.heldTurn = 1.5;
            rig.settings = "gauge spacing uncertainty, 2 mm\n";
            Map<String, Double> placed = new HashMap<>();
            for (int s = 0; s < 4; s++) {
                placed.put("g" + s + "L", 2e-3 * rig.random.nextGaussian());
                placed.put("g" + s + "R", 2e-3 * rig.random.nextGaussian());
            }
            rig.placed = placed;
            Estimate estimate = rig.reduce().all();
            inside += Math.abs(estimate.stiffness() - SyntheticRig.TUB) <= estimate.expanded() ? 1 : 0;
        }
        assertTrue(inside >= 930 && inside <= 970, inside + " of 1000 (seeds 0 to 999)");
    }

    @Test
    void theLoopAndItsAreaAreThoseOfTheLag() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.hysteresis = Math.toRadians(0.01);
        rig.cycles = 1;
        Loop loop = rig.reduce().loops().getFirst();
        assertEquals(0.01, Math.toDegrees(loop.width()), 1e-6);
        // The lag comes in over the first step down and goes out between cycles: a loop of lag × torque, less half a
        // step.
        assertEquals(Math.toRadians(0.01) * (2000 - 125), loop.area(), 1e-4);
    }

    @Test
    void aBedInCycleIsLeftOutOnRequestAndCounted() {
        Readings readings = ReadingsReader.read("t.csv", new SyntheticRig(1).text());
        TorsionReading reading = TorsionReduction.of(readings, true);
        assertEquals(17, reading.dropped());
        assertEquals(2, reading.cycles().size());
    }

    @Test
    void anOutlierIsNamedByGaugeAndLineAndKept() {
        SyntheticRig rig = new SyntheticRig(7);
        rig.noise = 2e-5;
        rig.slipRow = 20;
        TorsionReading reading = rig.reduce();
        Finding outlier = reading.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.OUTLIER)
                .findFirst()
                .orElseThrow();
        assertEquals("test.csv:33", outlier.place());
        assertTrue(outlier.words().contains("\"g0R\""), outlier.words());
        assertEquals(51, reading.all().steps());
        assertEquals(50, reading.withoutOutliers().orElseThrow().steps());
    }

    @Test
    void cleanNoiseSeldomNamesAnOutlier() {
        int named = 0;
        for (int seed = 0; seed < 200; seed++) {
            SyntheticRig rig = new SyntheticRig(seed);
            rig.noise = 2e-5;
            named += rig.reduce().findings().stream().anyMatch(f -> f.kind() == Finding.Kind.OUTLIER) ? 1 : 0;
        }
        // Eight gauges at one in a hundred each: 16 of 200 are due.
        assertTrue(named < 32, named + " of 200 (seeds 0 to 199)");
    }

    @Test
    void cyclesThatDifferWidenTheInterval() {
        SyntheticRig rig = new SyntheticRig(3);
        rig.noise = 2e-6;
        double still = rig.reduce().all().expanded();
        rig = new SyntheticRig(3);
        rig.noise = 2e-6;
        rig.drift = 0.02;
        assertTrue(rig.reduce().all().expanded() > 5 * still);
    }
}
