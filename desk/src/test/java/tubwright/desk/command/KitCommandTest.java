// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.Typed;

/** What a box of a few plies takes to make. */
class KitCommandTest {
    private static final String REST = """
            laminates:
              skin:
                stack: "[45c/0c/core/45c]"
                plies: {c: pw-t650-976}
                core: al-honeycomb-3.1-small-cell
                core thickness: 10 mm
                film: film-epoxy-150
            zones:
              lower: {on: [floor, flank], laminate: skin}
              upper: {on: deck, laminate: skin}
            """;

    @TempDir
    Path folder;

    private RoundBox box;

    @BeforeEach
    void writeTheBox() throws IOException {
        box = RoundBox.in(folder, "", REST);
    }

    private Typed typed(String... more) {
        return box.typed("kit", more);
    }

    @Test
    void everyMaterialIsBoughtByTheRollAndEveryPlyWeighed() throws IOException {
        Typed typed = typed("--json", "--mesh", "25 mm", "--moves", "100");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        double sum = 0;
        for (JsonNode ply : answer.path("plies")) {
            sum += ply.path("mass_kg").asDouble();
        }
        assertEquals(answer.path("mass_kg").asDouble(), sum, 1e-9);
        assertEquals(3, answer.path("materials").size());
        for (JsonNode material : answer.path("materials")) {
            double bought = material.path("bought_kg").asDouble();
            assertTrue(bought > material.path("cut_kg").asDouble(), material.toString());
            // A box unrolls: inner plies are a little smaller than their area on the mould.
            double cut = material.path("cut_kg").asDouble();
            assertEquals(
                    material.path("inTub_kg").asDouble(),
                    cut,
                    0.06 * cut,
                    () -> answer.path("kits").findValues("notNested").toString());
        }
        assertEquals(6, answer.path("cures").asInt(), "two pieces of sandwich, three cures each");
        assertTrue(Files.readString(folder.resolve("runs/kit/kit.html")).contains("Patterns on the roll"));
    }

    @Test
    void aRollTooNarrowNamesThePatternsAndAFaultInTheDataItsLine() throws IOException {
        String shipped = new String(
                tubwright.engine.make.kit.ShopData.class
                        .getResourceAsStream("/tubwright/kit/rolls.yaml")
                        .readAllBytes(),
                java.nio.charset.StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("shop.yaml"), shipped.replace("width: 1.25 m", "width: 100 mm"));
        Typed narrow = typed("--mesh", "40 mm", "--moves", "10");
        assertEquals(0, narrow.code(), narrow.err());
        assertTrue(narrow.out().contains("mm across the roll, which is"), narrow.out());
        Files.writeString(folder.resolve("shop.yaml"), shipped.replace("width: 1.25 m", "width: 1.25"));
        Typed wrong = typed("--mesh", "40 mm");
        assertEquals(ExitCode.WRONG_INPUT, wrong.code());
        assertTrue(wrong.err().contains("shop.yaml:"), wrong.err());
        assertFalse(wrong.out().contains("kg"), wrong.out());
    }
}
