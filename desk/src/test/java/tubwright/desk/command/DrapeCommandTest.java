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

/** A straight tray and lid that unroll: the patterns are rectangles whose sizes are known. */
class DrapeCommandTest {
    private static final String REST = """
            laminates:
              skin: {stack: "[0c/45c]", plies: {c: pw-t650-976}}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
            """;

    @TempDir
    Path folder;

    private RoundBox box;

    @BeforeEach
    void writeTheBox() throws IOException {
        box = RoundBox.in(folder, "", REST + RoundBox.METAL);
    }

    private Typed typed(String... more) {
        return box.typed("drape", more);
    }

    @Test
    void patternsAreTheUnrolledPieces() throws IOException {
        Typed typed = typed("--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        assertEquals(4, answer.path("plies").size());
        assertTrue(answer.path("torsionalStiffness").isNull(), "there is no torsion case");
        JsonNode tray = answer.path("plies").get(0);
        assertEquals("tray 01", tray.path("ply").asString());
        // Half the girth of the section, twice: floor 150, flank 200, less what a round corner saves, and half a
        // corner.
        double saved = (2 - Math.PI / 2) * 0.060;
        assertEquals(
                2 * (0.150 + 0.200 - 1.5 * saved),
                tray.path("flat").path("width_m").asDouble(),
                2e-3);
        assertEquals(0.5, tray.path("flat").path("length_m").asDouble(), 1e-3);
        assertEquals(0, tray.path("largestShear_rad").asDouble(), 2e-3);
        assertEquals(0, tray.path("advice").size());
        Path out = folder.resolve("runs").resolve("drape");
        assertTrue(Files.readString(out.resolve("drape.html")).contains("tray 01"));
        assertTrue(Files.readString(out.resolve("plies.csv")).lines().count() == 5);
        assertTrue(Files.readString(out.resolve("tray.svg")).contains("TRAY_01"));
        assertTrue(Files.exists(out.resolve("lid.dxf")));
    }

    @Test
    void aClothOfTheDesignsOwnBringsItsLock() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), box.text().replace("pw-t650-976", "house-cloth") + """
                        materials:
                          house-cloth:
                            kind: cloth
                            source: picture frame and coupons of 3 March
                            properties:
                              E1: 62 GPa
                              G12: 4.2 GPa
                              thickness: 0.22 mm
                              density: 1.55 g/cm³
                              shear warning: 30 deg
                              locking angle: 42 deg
                        """);
        Typed typed = typed("--plies-only");
        assertEquals(0, typed.code(), typed.err());
        String words = typed.out().replaceAll("\\s+", " ");
        assertTrue(words.contains("care from 30.0°, locks at 42.0° (picture frame and coupons of 3 March"), words);
        assertTrue(words.contains("No ply passes a limit"), words);
    }

    @Test
    void metalHasNoPlyToDrape() {
        Typed typed = typed("--variant", "metal");
        assertFalse(typed.code() == 0);
        assertTrue(typed.err().contains("no ply to drape"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs").resolve("drape")));
    }
}
