// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** The Larkspur's nose and side box, asked from the command line. */
class CrushCommandTest {
    @TempDir
    Path folder;

    private Path design;

    @BeforeEach
    void copyTheExample() throws IOException {
        design = folder.resolve("tub.yaml");
        Files.copy(Path.of("..", "examples", "larkspur", "tub.yaml"), design);
    }

    private Typed typed(String... more) {
        String[] all = new String[more.length + 2];
        all[0] = "crush";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void theNoseStopsTheCarAndWhatLacksDataIsNoPass() throws IOException {
        Typed typed = typed("--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        JsonNode nose = answer.path("crushStructures").get(0);
        assertEquals(0.5 * 465 * 49, nose.path("energy_J").asDouble(), 1e-6);
        assertEquals(
                nose.path("energy_J").asDouble(),
                nose.path("meanForce_N").asDouble() * nose.path("stroke_m").asDouble(),
                1);
        assertEquals("met", nose.path("limits").get(0).path("verdict").asString());
        JsonNode side = answer.path("crushStructures").get(1);
        for (JsonNode limit : side.path("limits")) {
            assertEquals("not checked", limit.path("verdict").asString(), limit.toString());
            assertFalse(limit.path("needs").isEmpty());
        }
        String page = Files.readString(folder.resolve("runs/crush/crush.html"));
        assertTrue(page.contains("Crush force over stroke of nose"), "drawn");
        assertTrue(page.contains("licensed"), "the caution");
        assertFalse(Pattern.compile("\\bsafe\\b")
                .matcher(page.toLowerCase(java.util.Locale.ROOT))
                .find());
    }

    @Test
    void aDesignWithoutCrushStructuresIsTold() throws IOException {
        String text = Files.readString(design);
        Files.writeString(
                design, text.substring(0, text.indexOf("\ncrush:")) + text.substring(text.indexOf("\nmesh:")));
        Typed typed = typed();
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("there is no crush structure"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs")));
    }

    @Test
    void aLimitWithoutItsUnitIsRefusedWithItsPlace() throws IOException {
        Files.writeString(design, Files.readString(design).replace("mean: at most 20 g0", "mean: at most 20"));
        Typed typed = typed();
        assertEquals(1, typed.code());
        assertTrue(
                Pattern.compile("tub\\.yaml:\\d+:\\d+.*mean", Pattern.DOTALL)
                        .matcher(typed.err())
                        .find(),
                typed.err());
        assertFalse(Files.exists(folder.resolve("runs")));
    }
}
