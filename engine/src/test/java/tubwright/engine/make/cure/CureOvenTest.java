// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.cure.CureOven.Fineness;
import tubwright.engine.material.Provenance;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

class CureOvenTest {
    private static final CureLibrary LIBRARY = CureLibrary.shipped();
    private static final Ladder OPEN =
            Ladder.of(Family.CURE, "Amini Niaki et al. 2021, temperatures of their open finite-element run", Mark.READ);
    private static final Ladder APART = Ladder.of(
            Family.CURE, "Method of lines by another program (backward differences), converged", Mark.COMPUTED);

    private static double kelvin(double celsius) {
        return celsius + 273.15;
    }

    private static Cycle cycle(double start, Cycle.Step... steps) {
        return new Cycle("test", "", start, List.of(steps), Provenance.STATED);
    }

    private static Cycle.Step to(double celsius, double perMinute, double minutes) {
        return new Cycle.Step(kelvin(celsius), perMinute / 60, minutes * 60, Cycle.HoldFrom.AIR, 0, 0);
    }

    /** 3501-6 between two faces at the temperature of the cycle; properties set beside the law where it was read. */
    private static CureHistory plate(double thickness, Fineness fineness) {
        Resin resin = LIBRARY.resins().get("3501-6");
        double heat = 1272 * 0.48 * resin.heat().si();
        HeatLayer laminate = new HeatLayer(
                "laminate",
                thickness,
                new HeatProperties(1578, 862, 0.4135),
                Optional.of(new HeatLayer.Reaction(resin.law(), heat, 0)));
        assertEquals(212.6, laminate.adiabaticRise(), 0.5, "adiabatic rise, K");
        return new CureOven(List.of(laminate), new Face.Held(), new Face.Held(), fineness)
                .run(cycle(kelvin(25), to(116, 2.5, 60), to(177, 2.5, 120)));
    }

    @Test
    void athickPlateOvershootsInTheMiddleAsTwoProgramsAgree() {
        double[][] rows = {
            {5, 177.8, 121.5}, {10, 180.3, 122.5}, {15, 184.6, 123.8}, {20, 190.9, 125.0},
            {25.4, 200.0, 126.4}, {30, 208.4, 127.7}, {40, 219.2, 131.0}, {50, 216.1, 134.0}
        };
        for (double[] row : rows) {
            CureHistory history = plate(row[0] * 1e-3, new Fineness(4, 0.5e-3, 60));
            APART.equal(
                    "3501-6, " + row[0] + " mm, peak, °C",
                    row[1],
                    history.peak().temperature() - 273.15,
                    0.35);
            APART.equal(
                    "3501-6, " + row[0] + " mm, peak, min",
                    row[2],
                    history.peak().time() / 60,
                    0.35);
            assertEquals(row[0] * 0.5e-3, history.peak().height(), 0.3e-3, "in the middle");
        }
    }

    @Test
    void anInchOf3501GoesThroughTheSameTemperaturesAndDegrees() {
        CureHistory history = plate(25.4e-3, Fineness.USUAL);
        double[][] rows = {
            {60, 120.2, 0.227}, {100, 120.2, 0.312}, {120, 184.3, 0.573}, {130, 197.0, 0.841}, {160, 178.7, 0.979}
        };
        for (double[] row : rows) {
            double celsius = history.temperatureAt(12.7e-3, row[0] * 60) - 273.15;
            APART.equal("3501-6, 25.4 mm, middle at " + row[0] + " min, °C", row[1], celsius, 0.5);
            APART.equal(
                    "3501-6, 25.4 mm, middle at " + row[0] + " min, degree",
                    row[2],
                    history.degreeAt(12.7e-3, row[0] * 60),
                    5e-3);
        }
    }

    private static CureHistory onInvar(Face tool, Face bag) {
        Resin resin = LIBRARY.resins().get("8552");
        HeatLayer invar = HeatLayer.inert("tool", 20e-3, new HeatProperties(8150, 510, 13));
        HeatLayer laminate = new HeatLayer(
                "laminate",
                30e-3,
                new HeatProperties(1581.3, 1080.2, 0.6386),
                Optional.of(new HeatLayer.Reaction(
                        resin.law(), 1300 * 0.426 * resin.heat().si(), 0.05)));
        Cycle cycle = cycle(kelvin(20), to(180, 160.0 / 52, 120), to(20, 160.0 / 52, 0));
        return new CureOven(List.of(invar, laminate), tool, bag, new Fineness(4, 0.5e-3, 30)).run(cycle);
    }

    @Test
    void thirtyMillimetresOnInvarInMovingAirPeakWhereTheOpenBenchmarkSays() {
        CureHistory history = onInvar(new Face.Convective(70), new Face.Convective(120));
        OPEN.equal(
                "8552, 30 mm on Invar, convective, peak, °C",
                202.60,
                history.peak().temperature() - 273.15,
                3);
        OPEN.equal(
                "8552, 30 mm on Invar, convective, peak, min",
                83.55,
                history.peak().time() / 60,
                3);
        OPEN.equal(
                "8552, 30 mm on Invar, convective, peak, mm",
                36.9,
                history.peak().height() * 1e3,
                1.5);
        OPEN.equal("8552, 30 mm on Invar, 35 mm, degree at 172 min", 0.8435, history.degreeAt(35e-3, 172 * 60), 5e-3);
        APART.equal("8552 on Invar, convective, peak, °C", 203.5, history.peak().temperature() - 273.15, 0.1);
        APART.equal("8552 on Invar, convective, peak, min", 81.6, history.peak().time() / 60, 0.1);
    }

    @Test
    void thirtyMillimetresOnInvarWithHeldFacesPeakWhereTheOpenBenchmarkSays() {
        CureHistory history = onInvar(new Face.Held(), new Face.Held());
        OPEN.equal(
                "8552, 30 mm on Invar, faces held, peak, °C",
                217.03,
                history.peak().temperature() - 273.15,
                3);
        OPEN.equal(
                "8552, 30 mm on Invar, faces held, peak, min",
                61.7,
                history.peak().time() / 60,
                3);
        APART.equal(
                "8552 on Invar, faces held, peak, °C", 219.33, history.peak().temperature() - 273.15, 0.1);
        APART.equal("8552 on Invar, faces held, peak, min", 61.3, history.peak().time() / 60, 0.1);
    }

    @Test
    void halvingCellAndStepMovesThePeakByLessThanATenthOfAKelvin() {
        double coarse = plate(25.4e-3, Fineness.USUAL).peak().temperature();
        double fine = plate(25.4e-3, new Fineness(2, 0.25e-3, 60)).peak().temperature();
        assertEquals(fine, coarse, 0.1);
    }

    @Test
    void aPlateWithoutResinWarmsAsTheSeriesOfFourierSays() {
        HeatLayer plate = HeatLayer.inert("plate", 0.02, new HeatProperties(1500, 1000, 0.5));
        CureHistory history = new CureOven(
                        List.of(plate), new Face.Held(), new Face.Held(), new Fineness(0.5, 0.1e-3, 10))
                .run(cycle(kelvin(20), to(80, 6000, 20)));
        double diffusivity = 0.5 / 1500 / 1000;
        Ladder fourier = Ladder.of(Family.CURE, "Carslaw and Jaeger 1959, slab with faces suddenly warm", Mark.EXACT);
        for (double time : new double[] {120, 300, 600}) {
            double sum = 0;
            for (int n = 0; n < 50; n++) {
                double k = (2 * n + 1) * Math.PI;
                sum += 4 / k * (n % 2 == 0 ? 1 : -1) * Math.exp(-diffusivity * k * k * time / (0.02 * 0.02));
            }
            double ours = history.temperatureAt(0.01, time + 0.3) - 273.15;
            fourier.equal("middle of a slab after " + time + " s, °C", 80 - 60 * sum, ours, 0.05);
        }
    }

    @Test
    void aHoldFromTheLaggingPlaceWaitsForIt() {
        Cycle.Step step = new Cycle.Step(kelvin(120), 3.0 / 60, 1800, Cycle.HoldFrom.LAGGING, 0, 0);
        HeatLayer tool = HeatLayer.inert("tool", 0.02, new HeatProperties(7850, 480, 40));
        CureHistory history = new CureOven(
                        List.of(tool), new Face.Convective(40), new Face.Convective(40), new Fineness(4, 1e-3, 30))
                .run(cycle(kelvin(20), step));
        CureHistory.Moment begins = history.moments().stream()
                .filter(CureHistory.Moment::holding)
                .findFirst()
                .orElseThrow();
        assertTrue(begins.time() > 100.0 / 3 * 60 + 300, "later than the air arrives, s: " + begins.time());
        assertEquals(begins.time() + 1800, history.stoppedAt(), 5);
        double least = Double.POSITIVE_INFINITY;
        for (double t : begins.temperature()) {
            least = Math.min(least, t);
        }
        assertEquals(kelvin(120) - Cycle.LAGGING_WITHIN, least, 0.2);
    }

    @Test
    void aPartThatNeverGetsWarmIsNamed() {
        Cycle.Step step = new Cycle.Step(kelvin(120), 1, 1800, Cycle.HoldFrom.LAGGING, 0, 0);
        HeatLayer block = HeatLayer.inert("block", 1, new HeatProperties(1000, 2000, 0.1));
        CureException fault = assertThrows(
                CureException.class,
                () -> new CureOven(
                                List.of(block),
                                new Face.Convective(10),
                                new Face.Convective(10),
                                new Fineness(60, 0.05, 600))
                        .run(cycle(kelvin(20), step)));
        assertTrue(fault.getMessage().contains("never gets on"), fault.getMessage());
    }
}
