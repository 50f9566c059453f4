// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyTable;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.solver.Solvers;

/** A strip that breaks across takes the fracture energy of its cross-section, whatever the size of its elements. */
class CrackBandTest {
    private static final Material TAPE = MaterialLibrary.shipped().get("ud-im7-8552-research");
    private static final double WEAK = 0.95;
    private static final Ladder LAW =
            Ladder.of(Family.FRACTURE, "fracture energy times cross-section (Bažant and Oh 1983)", Mark.EXACT);

    private static Laminate laminate(Material material) {
        return new Laminate(List.of(Layer.ofDegrees(material, 0), Layer.ofDegrees(material, 0)), Reference.MIDDLE);
    }

    private static Material weaker() {
        PropertyTable table = TAPE.properties();
        var source = table.find(Property.XT).orElseThrow().provenance();
        KnockDown less = new KnockDown("weak spot", Map.of(Property.XT, WEAK), source);
        return Ply.of("weak", "", Ply.Form.UNIDIRECTIONAL, less.applyTo(table));
    }

    private static SpreadAnswer broken(int along) {
        Laminate[] all = new Laminate[along];
        Arrays.fill(all, laminate(TAPE));
        all[along / 2] = laminate(weaker());
        SpreadModel model = Strips.pulled(Strips.mesh(0.02, 0.01, along, 1, 0, true), all, along, 1, Energies.NONE);
        return LoadPath.of(model, new LoadPath.Manner(300, 0.01, 1e-3, 0.05), Solvers.pureJava(), n -> {}, () -> false);
    }

    /** Once the strip has gone nothing else may fail; however large the load grows, every step stays a number. */
    @Test
    void aLoadThatGoesRoundABrokenPlaceEndsThePath() {
        Laminate[] all = new Laminate[5];
        Arrays.fill(all, laminate(TAPE));
        all[2] = laminate(weaker());
        SpreadModel model = Strips.pulled(Strips.mesh(0.02, 0.01, 5, 1, 0, true), all, 5, 1, Energies.NONE, 1e7);
        SpreadAnswer answer = LoadPath.of(
                model, new LoadPath.Manner(300, 0.01, 1e-3, 0.05), Solvers.pureJava(), n -> {}, () -> false);
        assertTrue(answer.goesRound(), answer.ended());
        assertTrue(answer.ended().contains("goes round this place"), answer.ended());
        for (SpreadAnswer.Step step : answer.steps()) {
            assertTrue(Double.isFinite(step.factor()) && Double.isFinite(step.movement()), step.toString());
        }
    }

    @Test
    void theEnergyOfABreakIsThatOfItsCrossSectionOnAnyMesh() {
        for (int along : new int[] {5, 11, 21}) {
            SpreadAnswer answer = broken(along);
            double t = 2 * TAPE.layerThickness().orElseThrow();
            double weakest = WEAK * TAPE.properties().require(Property.XT) * 0.01 * t;
            LAW.within(
                    1e-3,
                    "strength of the weakest element",
                    along + " elements",
                    weakest,
                    answer.peak().factor());
            double energy = TAPE.properties().require(Property.GFT) * 0.01 * t;
            LAW.within(
                    0.01,
                    "energy of a break across a strip",
                    along + " elements",
                    energy,
                    answer.steps().getLast().taken());
            assertTrue(answer.energyGap() < 0.01);
        }
    }
}
