// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.response.Progress;
import tubwright.engine.structure.StructureException;

/** What patches of a box cost it. */
class DamageModelTest {
    private final DamageModel model = HitBox.model();

    @Test
    void theWorseTheHitTheMoreStiffnessIsLost() {
        Patch patch = model.patches().disc(new double[] {0.45, 0.2, 0.28}, 0.2);
        double[] lost = new double[3];
        for (Degree degree : Degree.values()) {
            lost[degree.ordinal()] = model.answer(patch, degree).torsionLost();
        }
        assertEquals(0, lost[0], 1e-9);
        assertTrue(lost[0] < lost[1] && lost[1] < lost[2] && lost[2] < 0.5, lost[1] + ", " + lost[2]);
    }

    @Test
    void barelyVisibleDamageTakesAsMuchOffCompressionAsItsKnockDownSays() {
        Patch patch = model.patches().whole("flank");
        for (PatchAnswer.UnderLoad each :
                model.answer(patch, Degree.BARELY_VISIBLE).loads()) {
            double fall = each.fall();
            assertTrue(fall <= 1 && fall > 0.3, each.name() + ": " + fall);
        }
    }

    @Test
    void anInsertTornOutWithItsSkinLeavesItsLoadWithoutAPath() {
        PatchAnswer answer = model.answer(model.patches().at("front leg R", 0.3), Degree.HOLE);
        assertEquals(List.of("front leg R"), answer.disconnected());
        assertEquals(1, answer.lost().get("front leg R"), 1e-12);
        assertTrue(Double.isNaN(answer.torsionLost()), "its couple acted on what is gone");
    }

    @Test
    void aHoldTornOutIsSaidToLeaveTheTubLoose() {
        Patch rear = model.patches().whole("rear");
        int[] tail = java.util.stream.IntStream.range(
                        0, model.structure().mesh().elementCount())
                .filter(e -> model.structure()
                                .mesh()
                                .nodes()[3 * model.structure().mesh().elementNodes()[4 * e]]
                        > 0.6)
                .toArray();
        PatchAnswer answer =
                model.answer(new Patch("tail", tail, rear.place(), rear.area(), rear.region()), Degree.HOLE);
        assertTrue(answer.loose());
    }

    @Test
    void aScanSaysOfEachPatchWhatIsSaidOfItAlone() {
        List<Patch> patches = model.patches().moving(0.15, 3);
        List<PatchAnswer> scan = model.answer(patches, Degree.HOLE, Progress.silent());
        for (int k = 0; k < patches.size(); k++) {
            PatchAnswer alone = model.answer(patches.get(k), Degree.HOLE);
            assertEquals(alone.torsionLost(), scan.get(k).torsionLost(), 1e-7);
            for (int c = 0; c < alone.loads().size(); c++) {
                PatchAnswer.UnderLoad one = alone.loads().get(c);
                PatchAnswer.UnderLoad other = scan.get(k).loads().get(c);
                assertEquals(one.name(), other.name());
                assertEquals(
                        one.after().orElseThrow().value(),
                        other.after().orElseThrow().value(),
                        1e-5 * one.after().orElseThrow().value());
            }
        }
    }

    @Test
    void aPointBesideTheTubIsRefusedWithWhatIsNearest() {
        StructureException refused =
                assertThrows(StructureException.class, () -> model.patches().disc(new double[] {0.45, 0.9, 0.28}, 0.1));
        assertTrue(refused.getMessage().contains("'flank'"), refused.getMessage());
        assertThrows(StructureException.class, () -> model.patches().whole("wing"));
    }

    @Test
    void aMovingPatchCoversTheTubEvenly() {
        List<Patch> patches = model.patches().moving(0.15, 40);
        assertEquals(40, patches.size());
        assertEquals(
                40, patches.stream().map(p -> p.name() + p.region()).distinct().count());
        for (String zone : List.of("floor", "flank", "deck", "walls")) {
            assertTrue(patches.stream().anyMatch(p -> p.region().equals(zone)), zone);
        }
    }
}
