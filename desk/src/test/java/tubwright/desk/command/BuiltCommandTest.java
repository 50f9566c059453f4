// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;
import tubwright.desk.logbook.Logbook;

/** A box that goes out as a pack, comes back as a form, and is foretold as it was weighed. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class BuiltCommandTest {
    private static final String BOX = """
            tub: box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
                - station: 900 mm
                  outline: (0, 100) (150, 100) (150, 300) (0, 300) mm
              walls:
                front: {station: 0 mm}
                rear: {station: 900 mm}
            laminates:
              skin: {stack: "[45c/0c]", plies: {c: pw-t650-976}}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
              walls: {on: [front, rear], laminate: skin}
            pieces:
              tray: [floor, flank]
              lid: [deck]
              front wall: [front]
              rear wall: [rear]
            hardpoints:
              front leg: {on: flank, x: 100 mm, z: 200 mm, footprint: 50 mm}
              top front: {on: deck, x: 100 mm, y: 80 mm, footprint: 50 mm}
              rear leg:  {on: flank, x: 800 mm, z: 200 mm, footprint: 50 mm}
              low rear:  {on: floor, x: 800 mm, y: 80 mm, footprint: 50 mm}
            cases:
              torsion:
                hold: {rear leg: "x, y, z", low rear: "x, y, z"}
                load at: [front leg, top front]
                couple: 100 N·m
                front station: 100 mm
                rear station: 800 mm
            mesh: {size: 60 mm}
            """;

    /** The batch is this much over its mass per area. */
    private static final double HEAVY = 1.04;

    @TempDir
    static Path folder;

    private static Typed typed(String... words) {
        return Typed.on(new FakeBench(), words);
    }

    private static String home() {
        return folder.toString();
    }

    @BeforeAll
    static void packIt() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), BOX);
        Typed pack = typed("pack", home(), "--date", "2030-05-17", "--moves", "100");
        assertEquals(0, pack.code(), pack.err());
        List<String> filled = new ArrayList<>();
        boolean batch = false;
        for (String line : Files.readAllLines(folder.resolve("runs/pack/as-built.csv"))) {
            String[] cell = line.split(",", -1);
            switch (cell[0]) {
                case "batch" -> {
                    cell[4] = "K-0412";
                    cell[8] = Double.toString(HEAVY * Double.parseDouble(cell[7]));
                    batch = true;
                }
                case "ply" -> {
                    cell[4] = "K-0412";
                    cell[6] = cell[2].startsWith("lid 02") ? Double.toString(1.2 * Double.parseDouble(cell[5])) : "";
                }
                case "piece" -> cell[6] = Double.toString(HEAVY * Double.parseDouble(cell[5]));
                case "deviation" ->
                    cell[11] = filled.stream().anyMatch(l -> l.startsWith("deviation")) ? "" : "core gap 3 mm";
                default -> {}
            }
            filled.add(String.join(",", cell));
        }
        assertTrue(batch);
        Files.write(folder.resolve("back.csv"), filled);
    }

    @Test
    @Order(1)
    void theFormAsItCameBackIsComparedAndKept() throws IOException {
        Typed built = typed("built", home(), "back.csv", "--tub", "1");
        assertEquals(0, built.code(), built.err());
        assertTrue(built.out().contains("4.0 % more"), built.out());
        assertTrue(
                built.out().replaceAll("\\s+", " ").contains("'lid 02' weighs 20.0 % more than planned"), built.out());
        assertTrue(built.out().contains("core gap 3 mm"), built.out());
        JsonNode answer =
                JsonMapper.builder().build().readTree(Files.readString(folder.resolve("built/tub-1/answer.json")));
        assertEquals(HEAVY, answer.path("massFactor").asDouble(), 1e-3);
        assertEquals(
                HEAVY,
                answer.path("materials").get(0).path("arealFactor").asDouble(),
                1e-3,
                "the batch goes before the ply");
        assertEquals(1, answer.path("deviations").size());
        assertTrue(Files.exists(folder.resolve("built/tub-1/inputs/back.csv")));
        try (Logbook book = Logbook.open(folder.resolve("runs"))) {
            assertTrue(book.entries().getFirst().words().startsWith("Tub 1 as built: pieces 4.0 % more"));
            assertEquals(1, book.built().all().size());
        }
    }

    @Test
    @Order(2)
    void aBatchIsFoundInEveryTubItWentInto() {
        assertEquals(0, typed("built", home(), "back.csv", "--tub", "2").code());
        Typed traced = typed("built", home(), "--batch", "K-0412");
        assertTrue(traced.out().contains("tub 1  lid") && traced.out().contains("tub 2  lid"), traced.out());
        Typed none = typed("built", home(), "--batch", "K-0413");
        assertTrue(none.err().contains("did you mean \"K-0412\""), none.err());
        // Entered again it replaces what stood there.
        assertEquals(0, typed("built", home(), "back.csv", "--tub", "2").code());
        long lines = typed("built", home())
                .out()
                .lines()
                .filter(l -> l.contains("as built"))
                .count();
        assertEquals(2, lines);
    }

    @Test
    @Order(3)
    void theTubIsForetoldAsItWasWeighed() {
        JsonNode plain = JsonMapper.builder()
                .build()
                .readTree(typed("rig", "predict", home(), "--json").out());
        Typed asked = typed("rig", "predict", home(), "--built", "1", "--json");
        assertEquals(0, asked.code(), asked.err());
        JsonNode weighed = JsonMapper.builder().build().readTree(asked.out());
        // All of it is that cloth: its stiffness in the plane follows the mass, that of the legs' inserts does not.
        double ratio = weighed.path("torsionalStiffness_N_m_per_rad").asDouble()
                / plain.path("torsionalStiffness_N_m_per_rad").asDouble();
        assertEquals(HEAVY, ratio, 0.004);
        assertEquals(HEAVY, weighed.path("weighed").path("massFactor").asDouble(), 1e-3);
        Typed missing = typed("rig", "predict", home(), "--built", "7");
        assertFalse(missing.code() == 0);
        assertTrue(missing.err().contains("no tub 7 was entered"), missing.err());
    }

    @Test
    @Order(4)
    void whatIsWrongIsToldAndNothingIsKept() throws IOException {
        Files.writeString(folder.resolve("bad.csv"), "kind,pattern,mass (g)\nply,tray 99,3\n");
        Typed bad = typed("built", home(), "bad.csv", "--tub", "3");
        assertEquals(ExitCode.WRONG_INPUT, bad.code());
        assertTrue(bad.err().contains("bad.csv:2") && bad.err().contains("tray 99"), bad.err());
        assertFalse(Files.exists(folder.resolve("built/tub-3")));
        assertFalse(typed("built", home()).out().contains("Tub 3"));
        Typed noPack = typed(
                "built", home(), "back.csv", "--pack", folder.resolve("nowhere").toString());
        assertTrue(noPack.err().contains("tubwright pack"), noPack.err());
        assertTrue(typed("built", home(), "back.csv", "--tub", "0").err().contains("counted from 1"));
    }
}
