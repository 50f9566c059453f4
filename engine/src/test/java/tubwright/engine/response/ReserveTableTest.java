// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.Design;
import tubwright.engine.design.Template;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Reserve factors of a whole tub. */
class ReserveTableTest {
    @TempDir
    Path folder;

    private ReserveTable table(int newtons) throws IOException {
        return answer(tub(newtons), 3.0);
    }

    private static ReserveTable answer(Tub tub, Double... sizes) {
        return new Study(Solvers.best(), List.of(sizes), (_, _, _, _, _) -> {})
                .answer(List.of(tub))
                .getFirst()
                .reserves();
    }

    private Tub tub(int newtons) throws IOException {
        String load = """

                cases:
                  push:
                    hold: {lower wishbone: "x, y, z, rx, ry, rz"}
                    forces: {upper wishbone: "%d, 0, 0 N"}
                """.formatted(newtons);
        String text = Template.text("Bramble");
        assertTrue(text.contains("\ncases:\n"));
        String alone = text.replaceAll("(?s)  # What the tub lives through.*?\nmesh:", "\nmesh:");
        Files.writeString(folder.resolve("tub.yaml"), alone.replace("\ncases:\n", load));
        return Design.read(folder).asDesigned().tub();
    }

    @Test
    void twiceTheLoadHalvesWhatGrowsWithIt() throws IOException {
        ReserveTable once = table(1000);
        ReserveTable twice = table(2000);
        assertFalse(once.rows().isEmpty());
        assertFalse(once.notChecked().isEmpty(), "what is not checked is said");
        for (String check : List.of("shear of the core", "shear crimping")) {
            assertEquals(lowest(once, check), 2 * lowest(twice, check), 1e-4 * lowest(once, check), check);
        }
    }

    private static double lowest(ReserveTable table, String check) {
        return table.envelope().stream()
                .filter(r -> r.check().equals(check))
                .mapToDouble(Reserve::value)
                .min()
                .orElseThrow();
    }

    @Test
    void theMapHoldsTheLowestOfFibresAndSandwich() throws IOException {
        ReserveTable table = table(1000);
        ReserveMap map = table.map().orElseThrow();
        double row = table.rows().stream()
                .filter(r -> !r.firstCrack() && !r.check().endsWith(", theory"))
                .filter(r -> !r.ply().isEmpty()
                        || r.check().matches("wrinkling.*|dimpling.*|shear.*crimping|.*core.*|flatwise.*"))
                .filter(r -> !r.zone().contains("wishbone")
                        && !r.zone().contains("mount")
                        && !r.zone().contains("edge"))
                .mapToDouble(Reserve::value)
                .min()
                .orElseThrow();
        int least = 0;
        for (int e = 0; e < map.factor().length; e++) {
            least = map.factor()[e] < map.factor()[least] ? e : least;
        }
        assertEquals(row, map.factor()[least], 1e-6 * row);
        assertEquals("push", map.loads().get(map.load()[least]));
        assertFalse(map.modes().get(map.mode()[least]).isEmpty());
    }

    @Test
    void loadCasesAloneAreAnsweredOnTheFinestMesh() throws IOException {
        Tub all = tub(1000);
        Tub only = all.withCases(
                all.cases().stream().filter(Case.Loads.class::isInstance).toList());
        assertEquals(
                lowest(answer(all, 3.0), "shear of the core"),
                lowest(answer(only, 4.0, 3.0), "shear of the core"),
                1e-9);
    }

    /** The template's inserts have radii of 25 and 30 mm; two elements a radius are asked for. */
    @Test
    void aMeshTooCoarseForAnInsertNamesTheOneThatWouldDo() throws IOException {
        Tub tub = tub(1000);
        ReserveTable coarse = answer(tub, 3.0);
        assertTrue(
                coarse.rows().stream().filter(Reserve::local).anyMatch(r -> Math.abs(r.settledBy() - 0.0125) < 1e-6),
                "elements half as large as the radius are asked for");
        assertTrue(coarse.rows().stream().filter(r -> !r.local()).allMatch(r -> r.settledBy() == 0));
    }
}
