// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.numerics.solver.Solvers;

/** Natural modes of tubes against closed forms of bars and shafts. */
class VibrationTest {
    private static final double SOUND = Math.sqrt(TestStructures.SHEAR / 2700);

    @Test
    void aFreeTubeHasSixRigidMotionsAndTwistsAtHalfAWavelength() {
        // Thick enough for its sections to keep their shape longer than the bar keeps straight.
        Structure tube = StiffTube.of(0.1, 2, 0.01, 16, 16);
        Modes modes = Vibration.free(tube, 16, Solvers.best());
        assertEquals(6, modes.modes().size() - modes.elastic().size());
        assertTrue(modes.modes().get(5).frequency()
                < 1e-3 * modes.elastic().getFirst().frequency());
        Mode torsion = modes.first(Mode.Motion.TORSION).orElseThrow();
        assertEquals("first torsion", torsion.name());
        // Shaft free at both ends: f = √(G/ρ)/2L (from memory, every textbook); 16 facets, 16 lengths.
        assertEquals(1, torsion.frequency() / (SOUND / (2 * 2)), 0.03);
        Mode bending = modes.first(Mode.Motion.VERTICAL)
                .or(() -> modes.first(Mode.Motion.SIDEWAYS))
                .orElseThrow();
        // Thin tube with shear factor 0.53 (Cowper 1966, ν = .33) between Euler-Bernoulli and 20 % below it.
        double slender =
                4.730041 * 4.730041 / (2 * Math.PI * 4) * Math.sqrt(TestStructures.YOUNGS / 2700) * 0.1 / Math.sqrt(2);
        assertTrue(
                bending.frequency() < slender && bending.frequency() > 0.8 * slender, "bending " + bending.frequency());
        assertTrue(modes.count().complete());
        for (Mode mode : modes.elastic()) {
            for (int d = 0; d < 3; d++) {
                assertEquals(0, mode.effectiveMass()[d], 1e-6 * modes.mass());
            }
        }
    }

    @Test
    void effectiveMassesOfAHeldTubeGoTowardsItsMass() {
        Structure tube = StiffTube.of(0.1, 2, 0.01, 8, 12);
        boolean[] all = {true, true, true, true, true, true};
        Modes modes = Vibration.held(tube, List.of(new Case.Support("root", all)), 40, Solvers.best());
        double[] sums = new double[3];
        for (Mode mode : modes.modes()) {
            for (int d = 0; d < 3; d++) {
                sums[d] += mode.effectiveMass()[d];
            }
        }
        for (int d = 0; d < 3; d++) {
            assertTrue(sums[d] < modes.mass() * (1 + 1e-9));
            assertTrue(sums[d] > 0.7 * modes.mass(), "only " + sums[d] / modes.mass() + " along " + d);
        }
        assertTrue(modes.count().complete());
    }
}
