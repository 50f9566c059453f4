// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.Typed;
import tubwright.desk.sheet.MouldSheets;
import tubwright.desk.work.MouldWork;
import tubwright.engine.design.Design;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.MouldExpansion;
import tubwright.engine.structure.Tub;

/** A tray and a lid that meet in the middle of a round corner, whose sizes and hook are known. */
class MouldsCommandTest {
    private static final String REST = """
            laminates:
              skin: {stack: "[0c/45c]", plies: {c: pw-t650-976}}
            zones:
              all: {on: [floor, flank, deck], laminate: skin}
              wall: {on: front, laminate: skin}
            """;

    @TempDir
    Path folder;

    private RoundBox box;

    @BeforeEach
    void writeTheBox() throws IOException {
        box = RoundBox.in(folder, "walls:\n  front: {station: 0 mm}\n", REST + RoundBox.METAL);
    }

    private Typed typed(String... more) {
        return box.typed("moulds", more);
    }

    @Test
    void anUndercutIsNamedWithItsPlaceAndWhatHelps() throws IOException {
        Typed typed = typed("--json", "--mould", "steel");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        JsonNode tray = answer.path("pieces").get(0);
        double hook = 0.060 * (1 - Math.cos(Math.PI / 4));
        assertEquals(hook, tray.at("/draft/undercuts/0/hook_m").asDouble(), 3e-4);
        assertEquals("lid", tray.at("/draft/undercuts/0/beside").asString());
        assertTrue(tray.path("advice").get(0).asString().contains("move the split line to lid by 42 mm"));
        // It unrolls: half the girth twice, as long as the box.
        double saved = (2 - Math.PI / 2) * 0.060;
        double girth = 2 * (0.150 + 0.200 - 1.5 * saved);
        assertEquals(
                girth,
                Math.max(
                        tray.at("/developed/width_m").asDouble(),
                        tray.at("/developed/length_m").asDouble()),
                2e-3);
        assertEquals(0, tray.at("/developed/longest").asDouble(), 2e-3);
        JsonNode lid = answer.path("pieces").get(1);
        assertEquals(0, lid.path("advice").size());
        assertEquals(-1, lid.at("/draft/pull/2").asDouble());
        assertEquals(1.0, lid.at("/edges_m/tray").asDouble(), 1e-6);
        // A right angle between floor and flank; make-reference's closed form of cold sizes.
        JsonNode bend = answer.path("bends").get(0);
        assertEquals(Math.PI / 2, bend.path("most_rad").asDouble(), 1e-9);
        assertEquals(0.060, bend.path("leastRadius_m").asDouble(), 1e-9);
        assertTrue(bend.path("mostClosing_rad").asDouble() > Math.toRadians(0.5));
        double along =
                CureLibrary.shipped().laminates().get("carbon-cloth").along().si();
        double expected = new MouldExpansion(
                        along,
                        CureLibrary.shipped().tool("steel").expansion().si(),
                        answer.path("freezes_K").asDouble())
                .factor();
        assertEquals(expected, tray.path("coldOverPart").asDouble(), 1e-12);
        Path out = folder.resolve("runs").resolve("moulds");
        assertTrue(Files.readString(out.resolve("moulds.html")).contains("move the split line to lid"));
    }

    @Test
    void surfacesAreClosedTrianglesInMillimetresAndTheirFramesAreDrawn() throws IOException {
        assertEquals(0, typed().code());
        Path surfaces = folder.resolve("runs").resolve("moulds").resolve("surfaces");
        byte[] stl = Files.readAllBytes(surfaces.resolve("tray.stl"));
        ByteBuffer in = ByteBuffer.wrap(stl).order(ByteOrder.LITTLE_ENDIAN);
        int count = in.getInt(80);
        assertEquals(84 + 50 * count, stl.length);
        double area = 0;
        double most = 0;
        for (int t = 0; t < count; t++) {
            double[] p = new double[12];
            for (int i = 0; i < 12; i++) {
                p[i] = in.getFloat(84 + 50 * t + 4 * i);
            }
            double[] u = {p[6] - p[3], p[7] - p[4], p[8] - p[5]};
            double[] v = {p[9] - p[3], p[10] - p[4], p[11] - p[5]};
            double[] n = {u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]};
            double l = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
            area += l / 2;
            most = Math.max(most, p[3]);
            for (int i = 0; i < 3; i++) {
                assertEquals(p[i], n[i] / l, 1e-3);
            }
        }
        double girth = 2 * (150 + 200 - 1.5 * (2 - Math.PI / 2) * 60);
        assertEquals(girth * 500, area, 0.002 * girth * 500);
        assertEquals(500, most, 1e-3);
        String dxf = Files.readString(surfaces.resolve("frames.dxf"));
        assertTrue(dxf.contains("$INSUNITS\n 70\n4\n"));
        // Two frames, the split line on either side, and the open edges of both pieces at both ends.
        assertEquals(2, dxf.split("POLYLINE\n  8\nFRAMES").length - 1);
        assertEquals(2, dxf.split("POLYLINE\n  8\nSPLIT").length - 1);
        assertEquals(4, dxf.split("POLYLINE\n  8\nEDGES").length - 1);
    }

    @Test
    void sheetsAreTheSameBytesAgain() throws IOException {
        Tub tub = Design.read(folder.resolve("tub.yaml")).asDesigned().tub();
        byte[][] two = new byte[2][];
        for (int i = 0; i < 2; i++) {
            two[i] = MouldSheets.write(
                    MouldWork.moulds(
                            tub, "as designed", MouldWork.Request.usual(CureLibrary.shipped()), "", "1", s -> {}),
                    "foot");
        }
        assertArrayEquals(two[0], two[1]);
    }

    @Test
    void aPullGivenTheWrongWayIsToldWhichWayToGo() {
        Typed typed = typed("--pull", "lid: 0, 0, 1");
        assertEquals(0, typed.code(), typed.err());
        String words = typed.out().replaceAll("\\s+", " ");
        assertTrue(words.contains("lid: pulled along down it comes out"), words);
        assertTrue(words.contains("up, given"), words);
    }

    @Test
    void whatCannotBeUnderstoodIsRefusedWithWhatWouldBeRight() {
        assertRefused(
                typed("--pull", "lidd: 0, 0, 1"), "there is no piece of the skin \"lidd\"; did you mean \"lid\"?");
        assertRefused(
                typed("--pull", "lid: 0, 0, 0"), "write the piece and a direction, as in \"lower shell: 0, 0, 1\"");
        assertRefused(typed("--pull", "lid"), "write the piece and a direction");
        assertRefused(typed("--draft", "60 deg"), "between 0 and 45 deg");
        assertRefused(typed("--mould", "wood"), "no tool material is called 'wood'");
        assertRefused(typed("--variant", "metal"), "folded, not moulded");
    }

    private void assertRefused(Typed typed, String words) {
        assertFalse(typed.code() == 0);
        assertTrue(typed.err().contains(words), typed.err());
        assertFalse(Files.exists(folder.resolve("runs").resolve("moulds")));
    }
}
