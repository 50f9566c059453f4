// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.YamlReader;
import tubwright.fleet.Campaign;
import tubwright.fleet.Computation;
import tubwright.fleet.LocalCores;
import tubwright.fleet.Patch;
import tubwright.fleet.Row;
import tubwright.fleet.RowStore;
import tubwright.fleet.Tubes;

/** A study in words becomes points; what it names wrongly is said with the word that was meant. */
class StudyPlanTest {
    private static final Design BOX = Design.of(YamlReader.read(Tubes.BOX, "box.yaml"), Tubes.BOX, Path.of("box.yaml"));

    private static StudyPlan plan(String text) {
        return StudyPlan.of(BOX, "test", text, "studies/test.yaml", "test");
    }

    private static String refused(String text) {
        return assertThrows(DesignError.class, () -> plan(text)).getMessage();
    }

    private static String patched(StudyPlan plan, int point, String... path) {
        return plan.parts().getFirst().points().get(point).patches().stream()
                .filter(p -> p.path().equals(List.of(path)))
                .map(Patch::value)
                .findFirst()
                .orElse("as designed");
    }

    @Test
    void framesGrowWiderAndHigherTogether() {
        StudyPlan plan = plan("""
                vary:
                  width: {frames: 0 .. 2000 mm, change: wider, range: -100 .. 100 mm, steps: 3}
                  height: {frames: 0 .. 2000 mm, change: higher, corners: [flank / deck, top], values: "0, 50 mm"}
                read: [mass]
                """);
        assertEquals(6, plan.shares().size());
        assertEquals("(0, 0) (200, 0) (200, 500) (0, 500) mm", patched(plan, 0, "shape", "frames", "1", "outline"));
        assertEquals("(0, 0) (300, 0) (300, 550) (0, 550) mm", patched(plan, 5, "shape", "frames", "0", "outline"));
        assertEquals("as designed", patched(plan, 2, "shape", "frames", "0", "outline"));
    }

    @Test
    void allStandsForEveryEntryThatHasWhatFollows() {
        StudyPlan plan = plan("""
                vary:
                  gauge: {at: [laminates, all, thickness], range: 1 .. 2 mm, steps: 2}
                  metal: {at: [laminates, skin, sheet], words: [al-6061-t6, al-2024-t3]}
                variants: [thick]
                read: [mass]
                """);
        assertEquals("1 mm", patched(plan, 0, "laminates", "plate", "thickness"));
        assertEquals("2 mm", patched(plan, 3, "laminates", "skin", "thickness"));
        assertEquals("al-2024-t3", patched(plan, 3, "laminates", "skin", "sheet"));
    }

    @Test
    void aScatterIsAboutTheValueAsDesigned() {
        StudyPlan plan = plan("""
                vary:
                  gauge: {at: [laminates, skin, thickness], spread: 5 %}
                  plate: {at: [laminates, plate, thickness], within: 1 mm}
                layout: sobol
                points: 256
                read: [mass]
                """);
        double sum = 0;
        double squares = 0;
        for (double[] share : plan.shares()) {
            double g = plan.variations().getFirst().number(share[0]);
            sum += g / 256;
            squares += (g - 2) * (g - 2) / 256;
            assertEquals(20, plan.variations().get(1).number(share[1]), 1);
        }
        assertEquals(2, sum, 0.002);
        assertEquals(0.1, Math.sqrt(squares), 0.003);
    }

    @Test
    void whatNamesNothingIsSaidWithTheNearestWord() {
        String vary = "vary:\n  x: {%s, range: 1 .. 2 mm}\nread: [mass]\n";
        assertTrue(refused(vary.formatted("at: [laminates, skim, thickness]")).contains("did you mean \"skin\""));
        assertTrue(refused(vary.formatted("at: [laminate, skin, thickness]")).contains("did you mean \"laminates\""));
        assertTrue(refused(vary.formatted("at: [laminates, skin]")).contains("go on with one of: sheet, thickness"));
        assertTrue(
                refused(vary.formatted("frames: 3 .. 4 m, change: wider")).contains("frames stand at 0 mm, 2000 mm"));
        assertTrue(refused(vary.formatted("frames: 0 .. 4 m, change: wider, corners: [flor / flank]"))
                .contains("did you mean \"floor / flank\""));
        assertTrue(refused(vary.formatted("opening: cockpit")).contains("there is no opening"));
        assertTrue(refused("vary:\n  x: {at: [mesh, size], range: 1 .. 2 kg}\nread: [mass]\n")
                .contains("does not fit"));
        String several = refused("""
                vary:
                  x: {at: [laminates, skim, thickness], range: 1 .. 2 mm}
                read: [mas, torsional stiffness]
                variants: [thin]
                """);
        assertTrue(
                several.contains("did you mean \"mass\"") && several.contains("there is no variant \"thin\""), several);
        assertTrue(several.contains("studies/test.yaml:3:8"), several);
    }

    /**
     * Bredt (1896): a closed thin tube of one gauge has J = 4 A² t / U, A the area its middle line encloses and U its
     * length; a study of the width finds it again.
     */
    @Test
    void aStudyOfTheWidthFindsBredtsFormula() {
        String box = Tubes.BOX
                .replace("2000", "4000")
                .replace("station: 500", "station: 1500")
                .replace("station: 1500 mm\n    rear station: 1500", "station: 1500 mm\n    rear station: 2500");
        Design design = Design.of(YamlReader.read(box, "box.yaml"), box, Path.of("box.yaml"));
        StudyPlan plan = StudyPlan.of(design, "bredt", """
                vary:
                  width: {frames: 0 .. 4 m, change: narrower, range: 0 .. 200 mm, steps: 5}
                read: [torsional stiffness, enclosed area at 2 m, perimeter at 2 m]
                """, "studies/bredt.yaml", "test");
        List<Double> ratios = new ArrayList<>();
        Computation computation = new Computation(plan.parts().getFirst().job());
        for (var point : plan.parts().getFirst().points()) {
            Row row = computation.row(point, () -> false);
            assertTrue(row.ok(), row::toString);
            double t = 0.002;
            // The middle of the sheet lies half a gauge inside the drawn surface.
            double area = row.values()[1] - row.values()[2] * t / 2;
            double round = row.values()[2] - 4 * t;
            double shearModulus = 26e9;
            double bredt = shearModulus * 4 * area * area * t / round / 1.0;
            ratios.add(row.value("torsional stiffness") / bredt);
        }
        for (double ratio : ratios) {
            assertEquals(1, ratio / ratios.getFirst(), 0.005, ratios::toString);
            assertEquals(1, ratio, 0.02, ratios::toString);
        }
    }

    @Test
    void impossibleTubsAreCountedAndTheStudyGoesOn(@org.junit.jupiter.api.io.TempDir Path folder) {
        StudyPlan plan = plan("""
                vary:
                  width: {frames: 0 .. 2000 mm, change: narrower, values: "0, 100, 600 mm"}
                read: [mass]
                """);
        try (RowStore store = RowStore.open(folder)) {
            Campaign.Outcome outcome = new Campaign(store, new LocalCores(2))
                    .run(plan.parts().getFirst().job(), plan.parts().getFirst().points(), new Campaign.Listener() {});
            assertTrue(outcome.complete());
            assertEquals(new Campaign.Count(3, 0, 3, 1), outcome.count());
            assertTrue(
                    outcome.rows().get(2).orElseThrow().reason().orElseThrow().contains("box.yaml"));
        }
    }
}
