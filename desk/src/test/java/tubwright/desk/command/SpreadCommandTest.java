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
import tubwright.engine.design.Design;
import tubwright.engine.design.Template;

/** Loads followed past their peak from the command line, on the design that {@code new} writes. */
class SpreadCommandTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path folder;

    @BeforeEach
    void writeADesign() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Trial"));
    }

    private Typed typed(String... arguments) {
        String[] all = Stream.concat(Stream.of("spread", folder.toString()), Stream.of(arguments))
                .toArray(String[]::new);
        return Typed.on(new FakeBench(), all);
    }

    private String laminate() throws IOException {
        return Design.read(folder).asDesigned().tub().laminates().keySet().stream()
                .sorted()
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aPanelIsPushedPastItsPeakAndLeavesAWholeFolder() throws IOException {
        Typed typed = typed(
                "--panel",
                laminate(),
                "--length",
                "200 mm",
                "--elements",
                "6",
                "--pad",
                "60 mm",
                "--fibres",
                "60 kJ/m2",
                "--matrix",
                "1 kJ/m2",
                "--core",
                "5 kJ/m2",
                "--json");
        assertEquals(0, typed.code(), typed.err());
        try (Stream<Path> files = Files.list(folder.resolve("runs/spread"))) {
            assertEquals(
                    List.of("answer.json", "inputs", "spread.html"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
        JsonNode root = JSON.readTree(typed.out());
        assertEquals(RunAnswer.CAUTION, root.get("caution").asString());
        assertTrue(root.get("steps").size() > 2 && root.get("failures").size() > 0, typed.out());
        String page = Files.readString(folder.resolve("runs/spread/spread.html"));
        assertTrue(page.contains("Load against movement") && page.contains("<svg"));
        assertFalse(page.contains("<script"));
    }

    @Test
    void whatIsMissingIsSaidAndEndsThePath() throws IOException {
        Typed typed = typed("--panel", laminate(), "--length", "200 mm", "--elements", "4", "--pad", "60 mm");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("not checked: needs"), typed.out());
        assertTrue(typed.out().contains("licensed"), typed.out());
    }

    @Test
    void whatCannotBeReadIsRefusedInOneMessage() throws IOException {
        for (List<String> wrong : List.of(
                List.<String>of(),
                List.of("--panel", "no such laminate"),
                List.of("--panel", laminate(), "--elements", "7"),
                List.of("--panel", laminate(), "--span", "900 mm"),
                List.of("--panel", laminate(), "--pad", "400 mm"),
                List.of("--panel", laminate(), "--fibres", "60"),
                List.of("--panel", laminate(), "--fibres", "-1 kJ/m2"),
                List.of("--at", "1, 2, 3 mm"),
                List.of("--at", "9, 9, 9 m", "--case", "torsion", "--mesh", "200 mm"),
                List.of("--at", "9, 9, 9 m", "--case", "no such case"))) {
            Typed typed = typed(wrong.toArray(String[]::new));
            assertTrue(typed.code() != 0, wrong.toString());
            assertFalse(typed.err().isBlank() || typed.err().contains("Exception"), typed.err());
            assertFalse(
                    typed.err().contains("tub.yaml:"),
                    "a mistake on the command line is none of the design: " + typed.err());
        }
        assertFalse(Files.exists(folder.resolve("runs/spread")));
    }
}
