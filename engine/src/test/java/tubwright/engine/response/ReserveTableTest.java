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
import tubwright.numerics.solver.Solvers;

/** Reserve factors of a whole tub. */
class ReserveTableTest {
    @TempDir
    Path folder;

    private ReserveTable table(int newtons) throws IOException {
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
        var tub = Design.read(folder).asDesigned().tub();
        return new Study(Solvers.best(), List.of(3.0), (_, _, _, _, _) -> {})
                .answer(List.of(tub))
                .getFirst()
                .reserves();
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
}
