// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Property;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.strength.sandwich.CoreBeam;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/** Sandwich panels pushed until little is left. */
class PanelTest {
    private static final MaterialLibrary LIBRARY = MaterialLibrary.shipped();
    private static final Energies ASSUMED = new Energies(
            OptionalDouble.of(60e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.empty());

    private static Laminate sandwich(String core, int plies) {
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < plies; i++) {
            layers.add(Layer.ofDegrees(LIBRARY.get("pw-t650-976"), 0));
        }
        layers.add(new Layer(LIBRARY.get(core), 0.015, 0));
        for (int i = 0; i < plies; i++) {
            layers.add(Layer.ofDegrees(LIBRARY.get("pw-t650-976"), 0));
        }
        return new Laminate(layers, Reference.MIDDLE);
    }

    private static SpreadAnswer bent(Laminate laminate, double pad, int along, int across, double until) {
        Panel panel = new Panel(laminate, 0.12, 0.04, 0.1, false, pad, along, across);
        return LoadPath.of(
                panel.model(StrengthBasis.USUAL, ASSUMED),
                new LoadPath.Manner(120, until, 1e-3, 0.04),
                Solvers.best(),
                n -> {},
                () -> false);
    }

    @Test
    void aBentPanelBreaksAtTheSameLoadAndTakesTheSameEnergyOnTwoMeshes() {
        Laminate laminate = sandwich("al-honeycomb-8.1", 1);
        SpreadAnswer coarse = bent(laminate, 0.02, 24, 6, 0.3);
        SpreadAnswer fine = bent(laminate, 0.02, 36, 8, 0.3);
        assertEquals(1, coarse.peak().factor() / fine.peak().factor(), 0.02);
        assertEquals(
                1, coarse.steps().getLast().released() / fine.steps().getLast().released(), 0.05);
    }

    /** Whatever plies and core do together, what their laws say they took is what the work of the load leaves behind. */
    @Test
    void theLawsTakeWhatTheLoadLeavesBehind() {
        SpreadAnswer answer = bent(sandwich("al-honeycomb-8.1", 1), 0.02, 16, 4, 0.4);
        SpreadAnswer.Step end = answer.steps().getLast();
        assertTrue(answer.events().size() > 1, answer.events().toString());
        assertEquals(end.taken(), end.released(), 0.005 * end.taken());
    }

    /** P = 2 b d τ, the core's part of a sandwich in three-point bending (Allen 1969). */
    @Test
    void aWeakCoreShearsAtTheForceOfTheBeamFormula() {
        SpreadAnswer answer = bent(sandwich("al-honeycomb-2.0", 6), 0.035, 16, 4, 0.5);
        double tau = LIBRARY.get("al-honeycomb-2.0").properties().require(Property.S13);
        double ply = LIBRARY.get("pw-t650-976").layerThickness().orElseThrow();
        CoreBeam beam = new CoreBeam(70e9, 6 * ply, 1e8, 0.015, 0.04);
        double force = tau / beam.coreShear(1);
        SpreadAnswer.Event first = answer.events().stream()
                .filter(e -> e.what().contains("shears"))
                .findFirst()
                .orElseThrow();
        Ladder.of(Family.FRACTURE, "P = 2 b d τ, Allen 1969", Mark.EXACT)
                .within(0.01, "force at which the core of a bent sandwich shears", "16 x 4", force, first.factor());
    }

    @Test
    void whatIsNotKnownEndsThePathAndSaysWhatItNeeds() {
        Panel panel = new Panel(sandwich("al-honeycomb-8.1", 1), 0.12, 0.04, 0.1, false, 0.02, 8, 2);
        SpreadAnswer answer = LoadPath.of(
                panel.model(StrengthBasis.USUAL, Energies.NONE),
                LoadPath.Manner.USUAL,
                Solvers.pureJava(),
                n -> {},
                () -> false);
        assertTrue(answer.ended().contains("needs GfT of pw-t650-976"), answer.ended());
        assertTrue(
                answer.needs().toString().contains("GIIc of al-honeycomb-8.1"),
                answer.needs().toString());
    }

    @Test
    void aPanelLongerBetweenItsSupportsThanItIsIsRefused() {
        Laminate laminate = sandwich("al-honeycomb-8.1", 1);
        assertThrows(IllegalArgumentException.class, () -> new Panel(laminate, 0.1, 0.04, 0.2, false, 0.02, 8, 2));
    }
}
