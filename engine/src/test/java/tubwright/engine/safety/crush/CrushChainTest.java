// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Provenance;

/** Cars that come apart, against conservation of momentum and energy and against two masses on a spring. */
class CrushChainTest {
    private static final double FRONT = 300;
    private static final double ENGINE = 165;
    private static final double FORCE = 60e3;
    private static final double TIE = 5e6;

    private static List<CrushSection> constant(double force, double length) {
        CrushData unit = new CrushData("unit", CrushData.Measure.STRESS, 1, 1, OptionalDouble.of(1), Provenance.STATED);
        return List.of(new CrushSection("all", length, unit, force, force, 0));
    }

    private static CrushChain.Answer car(double strength, double length) {
        return CrushChain.of(
                constant(FORCE, length),
                List.of(
                        new CrushChain.Body("cell", FRONT, 1, Double.POSITIVE_INFINITY),
                        new CrushChain.Body("engine", ENGINE, TIE, strength)),
                9);
    }

    private static void conserves(CrushChain.Answer answer, double mass) {
        double came = 0.5 * mass * 81;
        assertEquals(came, answer.energy(), 2e-4 * came, "energy");
        assertEquals(answer.momentumLost(), answer.impulse(), 2e-4 * mass * 9, "momentum");
    }

    /** One mass: v²/2a and v/a. */
    @Test
    void oneMassStopsAsKinematicsSays() {
        CrushChain.Answer answer = CrushChain.of(
                constant(FORCE, 1), List.of(new CrushChain.Body("car", 465, 1, Double.POSITIVE_INFINITY)), 9);
        assertEquals(465 * 81 / (2 * FORCE), answer.stroke(), 1e-4);
        assertEquals(465 * 9 / FORCE, answer.history().getLast().time(), 1e-4);
        conserves(answer, 465);
    }

    /**
     * Two masses on a spring, a constant force on one: the spring's force is F m₂/(m₁ + m₂) (1 − cos ωt) with
     * ω² = k (m₁ + m₂)/(m₁ m₂), so that it peaks at twice its mean.
     */
    @Test
    void theTieFeelsTwiceWhatItWouldFeelAtRest() {
        CrushChain.Answer answer = car(Double.POSITIVE_INFINITY, 1);
        assertEquals(2 * FORCE * ENGINE / (FRONT + ENGINE), answer.peakTies()[0], 2e-3 * FORCE);
        assertTrue(answer.parted().isEmpty());
        conserves(answer, FRONT + ENGINE);
    }

    /** It breaks when 1 − cos ωt has reached f (m₁ + m₂)/(F m₂); both speeds then follow by hand. */
    @Test
    void aTieBreaksWhenTwoMassesOnASpringSayItDoes() {
        double strength = 30e3;
        CrushChain.Answer answer = car(strength, 1);
        double omega = Math.sqrt(TIE * (FRONT + ENGINE) / (FRONT * ENGINE));
        double phase = Math.acos(1 - strength * (FRONT + ENGINE) / (FORCE * ENGINE));
        CrushChain.Parted engine = answer.parted("engine").orElseThrow();
        assertEquals(phase / omega, engine.time(), 5e-5);
        // Both together lose F t; the engine alone loses ∫ F m₂/(m₁+m₂) (1 − cos ωt) dt / m₂.
        double lost = FORCE / (FRONT + ENGINE) * (engine.time() - Math.sin(phase) / omega);
        assertEquals(9 - lost, engine.speed(), 2e-3);
        conserves(answer, FRONT + ENGINE);
        assertEquals(0.5 * strength * strength / TIE, answer.broken(), 0.02 * answer.broken());
    }

    /** A tie of no strength: the cell stops as if alone, the engine keeps its speed. */
    @Test
    void whatIsHardlyTiedTakesItsEnergyAlong() {
        CrushChain.Answer answer = car(1, 1);
        assertEquals(FRONT * 81 / (2 * FORCE), answer.stroke(), 2e-4);
        assertEquals(9, answer.parted("engine").orElseThrow().speed(), 1e-3);
        conserves(answer, FRONT + ENGINE);
        assertFalse(answer.solid());
    }

    @Test
    void aStrokeTooShortIsUsedUp() {
        CrushChain.Answer answer = car(Double.POSITIVE_INFINITY, 0.1);
        assertTrue(answer.solid());
        conserves(answer, FRONT + ENGINE);
    }

    @Test
    void threeMassesComeApartOneByOne() {
        CrushChain.Answer answer = CrushChain.of(
                constant(FORCE, 1),
                List.of(
                        new CrushChain.Body("cell", 200, 1, Double.POSITIVE_INFINITY),
                        new CrushChain.Body("engine", 165, TIE, 60e3),
                        new CrushChain.Body("wing", 12, 1e6, 500)),
                9);
        assertEquals(
                List.of("wing"),
                answer.parted().stream().map(CrushChain.Parted::name).toList());
        conserves(answer, 377);
    }

    @Test
    void negativeValuesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> new CrushChain.Body("engine", -1, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> CrushChain.of(constant(1, 1), List.of(), 1));
    }
}
