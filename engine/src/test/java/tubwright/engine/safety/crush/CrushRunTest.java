// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Provenance;

/** Masses stopped by crushing, against closed forms and the strokes that published limits leave. */
class CrushRunTest {
    private static final double G = CrushRun.GRAVITY;
    private static final CrushRun.Trigger TRIGGERED = new CrushRun.Trigger(OptionalDouble.of(1), "chamfer");

    /** A section of unit crush stress, so that its areas are forces. */
    private static CrushSection section(String name, double length, double front, double rear) {
        CrushData unit = new CrushData("unit", CrushData.Measure.STRESS, 1, 1, OptionalDouble.of(1), Provenance.STATED);
        return new CrushSection(name, length, unit, front, rear, 0);
    }

    /** Strokes at a constant deceleration, v²/2a, worked out by hand from class limits that the rules publish. */
    @Test
    void aConstantForceStopsInTheStrokeThatKinematicsGives() {
        double[][] rows = {{300, 7, 20, 0.125, 58.9e3}, {650, 12, 25, 0.294, 159.4e3}, {780, 15, 40, 0.287, 306e3}};
        for (double[] row : rows) {
            Impact impact = new Impact(row[0], row[1]);
            double force = row[0] * row[2] * G;
            assertEquals(row[4], force, 2e-3 * row[4] + 50);
            CrushRun.Answer answer = CrushRun.of(List.of(section("all", 1, force, force)), TRIGGERED, impact);
            assertEquals(row[3], answer.stroke(), 5e-4);
            assertEquals(impact.leastStroke(row[2] * G), answer.stroke(), 1e-12);
            assertEquals(row[1] / (row[2] * G), answer.time(), 1e-9);
            assertEquals(impact.energy(), answer.energy(), 1e-9 * impact.energy());
            assertEquals(1, answer.efficiency(), 1e-12);
            assertEquals(1, answer.against(new CrushLimit.Mean(row[2] * G)).reserveFactor(), 1e-9);
        }
        assertEquals(7350, new Impact(300, 7).energy(), 1e-9);
        assertEquals(46.8e3, new Impact(650, 12).energy(), 1e-9);
        assertEquals(87.75e3, new Impact(780, 15).energy(), 1e-9);
    }

    /** F = k x: a quarter of an oscillation. Stroke v √(m/k), time π/2 √(m/k), peak v √(k m). */
    @Test
    void aForceThatRisesEvenlyStopsInAQuarterOfAnOscillation() {
        double k = 400e3;
        double tiny = 1e-6;
        CrushRun.Answer answer = CrushRun.of(List.of(section("wedge", 1, tiny, k)), TRIGGERED, new Impact(300, 7));
        assertEquals(7 * Math.sqrt(300 / k), answer.stroke(), 1e-6);
        assertEquals(0.5 * Math.PI * Math.sqrt(300 / k), answer.time(), 1e-3 * answer.time());
        assertEquals(7 * Math.sqrt(300 * k), answer.peakForce(), 1e-5 * answer.peakForce());
        assertEquals(0.5, answer.efficiency(), 1e-5);
    }

    /** 780 kg at 15 m/s: 10 g over the first 150 mm takes 11.5 kJ, then 20 g takes 48.5 kJ in 0.317 m. */
    @Test
    void stagesOfDecelerationTakeTheEnergyTheyMust() {
        double soft = 780 * 10 * G;
        double hard = 780 * 20 * G;
        CrushRun.Answer answer = CrushRun.of(
                List.of(
                        section("tip", 0.15, soft, soft),
                        section("nose", 0.317, hard, hard),
                        section("root", 1, hard, hard)),
                TRIGGERED,
                new Impact(780, 15));
        assertEquals(11.5e3, answer.sectionEnergies().get(0), 30);
        assertEquals(48.5e3, answer.sectionEnergies().get(1), 100);
        assertEquals(
                1,
                answer.against(new CrushLimit.PeakWithinStroke(0.149, 10 * G)).reserveFactor(),
                1e-9);
        assertEquals(
                1, answer.against(new CrushLimit.PeakWithinEnergy(60e3, 20 * G)).reserveFactor(), 1e-9);
        assertEquals(
                0.5,
                answer.against(new CrushLimit.PeakWithinEnergy(60e3, 10 * G)).reserveFactor(),
                1e-9);
        double above = answer.time() - (15 - Math.sqrt(15 * 15 - 2 * 10 * G * 0.15)) / (10 * G);
        assertEquals(
                above,
                0.01 / answer.against(new CrushLimit.TimeAbove(15 * G, 0.01)).reserveFactor() * 1,
                1e-5);
    }

    @Test
    void whatIsLeftWhenTheStructureIsSolidMeetsNoLimit() {
        CrushRun.Answer answer = CrushRun.of(List.of(section("short", 0.1, 10e3, 10e3)), TRIGGERED, new Impact(300, 7));
        assertEquals(Math.sqrt(49 - 2 * 10e3 * 0.1 / 300), answer.speedLeft(), 1e-9);
        assertEquals(0, answer.against(new CrushLimit.Peak(40 * G)).reserveFactor(), 0);
    }

    @Test
    void aWeakerSectionBehindAStrongerOneIsNamed() {
        CrushRun.Answer answer = CrushRun.of(
                List.of(section("tip", 0.1, 60e3, 60e3), section("nose", 1, 40e3, 60e3)),
                TRIGGERED,
                new Impact(300, 7));
        assertTrue(
                answer.notes().getFirst().startsWith("nose crushes at 40.0 kN"),
                answer.notes().toString());
    }

    @Test
    void whatIsMissingIsSaidAndWhatCannotBeIsRefused() {
        CrushSection cone = new CrushSection("cone", 0.4, CrushLibrary.CARBON_TUBE, 2e-4, 6e-4, 1550);
        CrushRun.Answer answer =
                CrushRun.of(List.of(cone), new CrushRun.Trigger(OptionalDouble.empty(), ""), new Impact(300, 7));
        assertEquals(2, answer.notChecked().size());
        assertTrue(answer.notChecked().toString().contains("not checked: needs"));
        assertThrows(IllegalArgumentException.class, () -> new Impact(300, -7));
        assertThrows(IllegalArgumentException.class, () -> section("flat", 0, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new CrushLimit.Mean(-1));
        assertThrows(IllegalArgumentException.class, () -> CrushRun.of(List.of(), TRIGGERED, new Impact(300, 7)));
    }

    /** A whole section crushed gives its mass times its specific energy. */
    @Test
    void aSectionGivesItsMassTimesItsSpecificEnergy() {
        CrushSection cone = new CrushSection("cone", 0.4, CrushLibrary.CARBON_TUBE, 2e-4, 6e-4, 1550);
        CrushRun.Answer answer = CrushRun.of(List.of(cone), TRIGGERED, new Impact(2000, 20));
        assertEquals(86e3 * 1550 * 4e-4 * 0.4, answer.energy(), 1e-6 * answer.energy());
    }

    /** Three aluminium cores of a public student file: 17, 14 and 7 kJ/kg at 70 % stroke; bare strength would say twice. */
    @Test
    void coresGiveWhatTheirCrushStressSaysAndNotTheirBareStrength() {
        double[] published = {17e3, 14e3, 7e3};
        for (int i = 0; i < 3; i++) {
            CrushLibrary.Core core = CrushLibrary.cores().get(i);
            double perKilogram = core.crush().value() * core.crush().usableShare() / core.density();
            assertEquals(published[i], perKilogram, 500);
            double hopeful = core.bare().value() / core.crush().value();
            assertTrue(hopeful > 2 && hopeful < 3, "bare over crush: " + hopeful);
            CrushData guessed = core.bare().crushGuessed("core", 0.7);
            assertTrue(guessed.value() > core.crush().value(), "even half is hopeful for these");
            assertTrue(
                    guessed.provenance().toString().contains("assumed"),
                    guessed.provenance().toString());
        }
    }
}
