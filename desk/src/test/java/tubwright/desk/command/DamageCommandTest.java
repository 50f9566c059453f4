// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.design.Template;

/** Patches taken away from the command line, on the design that {@code new} writes, coarsely meshed. */
class DamageCommandTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path folder;

    @BeforeEach
    void writeADesign() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Trial"));
    }

    private Typed typed(String... arguments) {
        String[] all = Stream.concat(
                        Stream.of("damage", folder.toString(), "--mesh", "150 mm", "--size", "250 mm"),
                        Stream.of(arguments))
                .toArray(String[]::new);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void aScanLeavesAWholeFolderWithMapsAndTheCaution() throws IOException {
        Typed typed = typed("--positions", "12", "--variant", "as designed", "--beyond", "4", "--json");
        assertEquals(0, typed.code(), typed.err());
        try (Stream<Path> files = Files.list(folder.resolve("runs/damage"))) {
            assertEquals(
                    List.of("answer.json", "damage.html", "inputs"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
        JsonNode root = JSON.readTree(typed.out());
        assertEquals(RunAnswer.CAUTION, root.get("caution").asString());
        JsonNode patches = root.get("variants").get(0).get("patches");
        assertEquals(12, patches.size());
        JsonNode spots = root.get("variants").get(0).get("hotSpots");
        assertEquals(4, spots.size());
        assertTrue(
                spots.valueStream().anyMatch(spot -> !spot.get("buckling").isEmpty()),
                () -> "what is left buckles, case by case: " + spots);
        for (JsonNode patch : patches) {
            JsonNode stiffness = patch.get("stiffness").get(0);
            if (!stiffness.get("lostShare").isNull()) {
                double share = stiffness.get("lostShare").asDouble();
                assertTrue(share > 0 && share <= 1, patch.toString());
            }
        }
        String page = Files.readString(folder.resolve("runs/damage/damage.html"));
        assertTrue(page.contains("How much each patch matters") && page.contains("data:image/png"));
        assertTrue(page.contains("licensed engineer"));
        assertFalse(page.contains("<script"));
    }

    @Test
    void onePatchIsAnsweredInAllDegreesAndEveryLineSaysItsCase() {
        Typed typed = typed("--at", "no such wall");
        String said = typed.out() + typed.err();
        // A name that is none is refused with those there are.
        assertTrue(typed.code() != 0 && said.contains("there are: "), said);
        String wall =
                said.substring(said.indexOf("there are: ") + 11).split(",")[0].strip();
        Typed whole = typed("--at", wall, "--variant", "as designed");
        assertEquals(0, whole.code(), whole.err());
        for (String degree : List.of("barely visible", "visible", "hole")) {
            assertTrue(whole.out().contains("  " + degree + ", "), whole.out());
        }
        assertTrue(whole.out().contains("licensed"), whole.out());
        for (String line : whole.out().split("\n")) {
            assertTrue(line.length() <= 80 || line.contains("/"), line);
        }
    }

    @Test
    void whatCannotBeReadIsRefusedInOneMessage() {
        for (List<String> wrong : List.of(
                List.of("--degree", "deep"),
                List.of("--positions", "0"),
                List.of("--beyond", "-1"),
                List.of("--beyond", "2", "--at", "1, 2, 3 mm"),
                List.of("--at", "1, 2 mm"),
                List.of("--at", "1, 2, 3 kg"),
                List.of("--at", "9, 9, 9 m"),
                List.of("--variant", "steel"))) {
            Typed typed = typed(wrong.toArray(String[]::new));
            assertTrue(typed.code() != 0, wrong.toString());
            assertFalse(typed.err().isBlank() || typed.err().contains("Exception"), typed.err());
        }
        assertFalse(Files.exists(folder.resolve("runs/damage")));
    }
}
