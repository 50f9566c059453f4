// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.Typed;

/** From a new design to its run folder, with the engine itself, on a coarse mesh. */
class WholeRunTest {
    @TempDir
    Path folder;

    private Path design;

    @BeforeEach
    void begin() {
        design = folder.resolve("Trial");
        assertEquals(
                0, Typed.on(new EngineWorkbench(), "new", design.toString()).code());
    }

    @Test
    void aNewDesignRunsAsItStandsAndItsNumbersBelongTogether() {
        Typed typed = Typed.on(new EngineWorkbench(), "run", design.toString(), "--quick", "--mesh", "50 mm", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        assertEquals("Trial", root.get("tub").asString());
        for (JsonNode variant : root.get("variants")) {
            double pieces = 0;
            for (JsonNode piece : variant.get("mass").get("pieces")) {
                pieces += piece.get("mass_kg").asDouble();
            }
            assertEquals(variant.get("mass").get("mass_kg").asDouble(), pieces, 1e-6);
            for (JsonNode each : variant.get("cases")) {
                double share = 0;
                for (JsonNode part : each.get("energy")) {
                    share += part.get("share").asDouble();
                }
                assertEquals(1, share, 1e-6, "the parts' energies add up to the work of the load");
            }
        }
        double thin =
                root.at("/variants/0/cases/0/torsionalStiffness_N_m_per_rad").asDouble();
        double thick =
                root.at("/variants/1/cases/0/torsionalStiffness_N_m_per_rad").asDouble();
        // Core grows inward from the mould: the mean line encloses less, so torsion need not gain.
        assertTrue(thin > 0 && Math.abs(thick / thin - 1) > 1e-3, thin + " and " + thick + " N·m/rad");
    }

    @Test
    void runningTwiceGivesTheSameBytesButForTheStamp() throws IOException {
        for (String name : List.of("one", "two")) {
            Typed typed = Typed.on(
                    new EngineWorkbench(), "run", design.toString(), "--quick", "--mesh", "60 mm", "--name", name);
            assertEquals(0, typed.code(), typed.err());
        }
        Path one = design.resolve("runs/one");
        Path two = design.resolve("runs/two");
        try (Stream<Path> files = Files.walk(one)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path twin = two.resolve(one.relativize(file));
                if (file.toString().endsWith(".vtu")) {
                    assertArrayEquals(Files.readAllBytes(file), Files.readAllBytes(twin), file.toString());
                } else {
                    assertEquals(unstamped(file), unstamped(twin), file.toString());
                }
            }
        }
    }

    @Test
    void checkAgreesWithRunAboutTheMass() throws IOException {
        Typed checked = Typed.on(new EngineWorkbench(), "check", design.toString());
        assertEquals(0, checked.code(), checked.err());
        Typed run = Typed.on(new EngineWorkbench(), "run", design.toString(), "--quick", "--mesh", "50 mm", "--json");
        double mass = JsonMapper.builder()
                .build()
                .readTree(run.out())
                .at("/variants/0/mass/mass_kg")
                .asDouble();
        String line = checked.out()
                .lines()
                .filter(l -> l.contains("whole tub"))
                .findFirst()
                .orElseThrow();
        assertEquals(mass, Double.parseDouble(line.replaceAll("[^0-9.]", "")), 0.02 * mass);
    }

    private static String unstamped(Path file) throws IOException {
        return Files.readString(file).replaceAll("20\\d\\d-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ", "STAMP");
    }
}
