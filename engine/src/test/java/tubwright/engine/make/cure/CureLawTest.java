// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Kinetics of the shipped resins against values computed apart from the program from the published constants. */
class CureLawTest {
    private static final CureLibrary LIBRARY = CureLibrary.shipped();
    private static final Resin FIRST = LIBRARY.resins().get("3501-6");
    private static final Resin SECOND = LIBRARY.resins().get("8552");
    private static final Ladder LEE =
            Ladder.of(Family.CURE, "Lee, Loos and Springer 1982, integrated by another program", Mark.COMPUTED);
    private static final Ladder HUBERT =
            Ladder.of(Family.CURE, "Hubert, Johnston et al. 2001, integrated by another program", Mark.COMPUTED);

    private static double kelvin(double celsius) {
        return celsius + 273.15;
    }

    @Test
    void theRateConstantsOfTheTwoStageLawComeOutAtBothHoldsOfItsCycle() {
        TwoStageCure law = (TwoStageCure) FIRST.law();
        double[][] published = {{116, 0.030894, -0.072574, 0.0049511}, {177, 0.90740, -1.88779, 0.052997}};
        for (double[] row : published) {
            double t = kelvin(row[0]);
            LEE.within(1e-4, "k1 at " + row[0] + " °C, 1/min", "", row[1], law.first(t) * 60);
            LEE.within(1e-4, "k2 at " + row[0] + " °C, 1/min", "", row[2], law.second(t) * 60);
            LEE.within(1e-4, "k3 at " + row[0] + " °C, 1/min", "", row[3], law.third(t) * 60);
        }
    }

    @Test
    void theTwoStageResinTakesItsTimeAtEachTemperature() {
        double[][] rows = {
            {116, 80.006, 147.965, 333.032},
            {135, 23.883, 53.983, 135.953},
            {150, 9.962, 26.626, 72.006},
            {177, 2.403, 8.752, 26.041}
        };
        double[] degrees = {0.3, 0.5, 0.8};
        for (double[] row : rows) {
            for (int i = 0; i < 3; i++) {
                double minutes = FIRST.law().timeTo(0, degrees[i], kelvin(row[0])) / 60;
                LEE.equal("3501-6, min to " + degrees[i] + " at " + row[0] + " °C", row[i + 1], minutes, 0.01);
            }
        }
    }

    @Test
    void theTwoStageResinHasCuredSoFarAfterOneAndTwoHours() {
        double[][] rows = {{116, 0.274, 0.426}, {135, 0.533, 0.761}, {150, 0.745, 0.924}, {177, 0.967, 0.999}};
        for (double[] row : rows) {
            LEE.equal("3501-6, 60 min at " + row[0], row[1], FIRST.law().after(0, kelvin(row[0]), 3600), 6e-4);
            LEE.equal("3501-6, 120 min at " + row[0], row[2], FIRST.law().after(0, kelvin(row[0]), 7200), 6e-4);
        }
    }

    @Test
    void theDiffusionLimitedResinStopsShortOfFullCure() {
        HUBERT.within(
                1e-4,
                "8552, rate at 180 °C, half cured, 1/s",
                "",
                2.8188e-4,
                SECOND.law().rate(0.5, kelvin(180)));
        double[][] rows = {{120, 0.135, 0.251, 0.502}, {150, 0.472, 0.642, 0.700}, {180, 0.772, 0.823, 0.856}};
        double[] minutes = {60, 120, 360};
        for (double[] row : rows) {
            for (int i = 0; i < 3; i++) {
                double ours = SECOND.law().after(0.05, kelvin(row[0]), minutes[i] * 60);
                HUBERT.equal("8552, " + minutes[i] + " min at " + row[0] + " °C", row[i + 1], ours, 6e-4);
            }
        }
        HUBERT.equal("8552, min to 0.5 at 180 °C", 18.728, SECOND.law().timeTo(0.05, 0.5, kelvin(180)) / 60, 0.01);
        HUBERT.equal("8552, min to 0.8 at 180 °C", 79.601, SECOND.law().timeTo(0.05, 0.8, kelvin(180)) / 60, 0.01);
        HUBERT.equal(
                "8552 fresher, min to 0.5 at 180 °C", 27.076, SECOND.law().timeTo(0.001, 0.5, kelvin(180)) / 60, 0.01);
    }

    @Test
    void glassTransitionRisesWithTheDegreeOfCure() {
        GlassTransition glass = FIRST.glassTransition().orElseThrow();
        double[][] rows = {{0.5, 60}, {0.8, 140}, {0.9, 176}, {0.95, 197}};
        for (double[] row : rows) {
            LEE.equal("3501-6, Tg at " + row[0] + ", °C", row[1], glass.at(row[0]) - 273.15, 0.55);
        }
        assertEquals(glass.fresh(), glass.at(0), 1e-9);
        assertEquals(glass.full(), glass.at(1), 1e-9);
    }

    @Test
    void aResinWhosePublishedGlassTransitionsDisagreeHasNone() {
        assertFalse(SECOND.glassTransition().isPresent());
    }

    @Test
    void noLawRunsBackwards() {
        for (Resin resin : LIBRARY.resins().values()) {
            for (double degree = 0; degree <= 1; degree += 0.01) {
                for (double celsius = 0; celsius <= 250; celsius += 10) {
                    assertTrue(resin.law().rate(degree, kelvin(celsius)) >= 0, resin.name());
                }
            }
        }
    }

    @Test
    void moreWaterAndMoreHeatAskForMorePressure() {
        Ladder kardos = Ladder.of(Family.CURE, "Kardos, Davé and Duduković 1986", Mark.MEMORY_CONFIRMED);
        double[][] rows = {{0.50, 177, 4.73}, {0.50, 120, 0.98}, {0.30, 120, 0.59}, {0.30, 180, 3.05}};
        for (double[] row : rows) {
            double ours = WaterVoids.leastPressure(row[0], kelvin(row[1])) / 101_325;
            kardos.equal(
                    "pressure against water voids, " + 100 * row[0] + " %, " + row[1] + " °C, atm", row[2], ours, 6e-3);
        }
    }

    @Test
    void theAirInASealedCellPressesHarderWhenItIsHot() {
        Ladder gas = Ladder.of(Family.CURE, "Gay-Lussac's law, from 20 °C and 1 atm", Mark.EXACT);
        double[][] rows = {{80, 1.22}, {120, 1.36}, {135, 1.41}, {180, 1.57}};
        for (double[] row : rows) {
            double ours = CorePressure.sealed(kelvin(20), kelvin(row[0])) / 1e5;
            gas.equal("sealed cell at " + row[0] + " °C, bar", row[1], ours, 5.1e-3);
        }
    }
}
