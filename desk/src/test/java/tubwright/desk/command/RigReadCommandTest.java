// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** {@code rig read} at the desk. */
class RigReadCommandTest {
    @TempDir
    Path folder;

    @BeforeEach
    void writeReadings() throws IOException {
        Files.writeString(folder.resolve("tub.csv"), readings("tub only", 10_000));
        Files.writeString(folder.resolve("hubs.csv"), readings("hub to hub", 6_000));
    }

    @Test
    void theStiffnessIsPrintedAndTheFolderIsWhole() {
        Typed typed = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "tub.csv");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(
                typed.out().matches("(?s).*torsional stiffness +(999\\d|10 0[01]\\d) ± \\d+ N·m/deg.*"), typed.out());
        for (String file : new String[] {"report.html", "answer.json", "inputs/tub.csv"}) {
            assertTrue(Files.exists(folder.resolve("rig/latest").resolve(file)), file);
        }
    }

    @Test
    void tubAndHubsTogetherAreToldApart() throws IOException {
        Typed typed = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "tub.csv", "hubs.csv", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        // 1/(1/6000 − 1/10 000) = 15 000 N·m/deg.
        double suspension =
                root.at("/hubToHubSplit/suspensionStiffness_N_m_per_rad").asDouble();
        assertEquals(15_000, Math.toRadians(suspension), 150);
        assertEquals(2, root.get("tests").size());
        assertEquals(typed.out(), Files.readString(folder.resolve("rig/latest/answer.json")));
    }

    @Test
    void whatCannotBeToldApartIsCalledSo() throws IOException {
        Typed alone = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "hubs.csv");
        assertEquals(0, alone.code(), alone.err());
        assertTrue(alone.out().replaceAll("\\s+", " ").contains("nothing in it tells one from another"), alone.out());
        for (double perDegree : new double[] {9_990, 10_500}) {
            Files.writeString(folder.resolve("hubs.csv"), readings("hub to hub", perDegree));
            Typed both = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "tub.csv", "hubs.csv");
            assertTrue(both.out().replaceAll("\\s+", " ").contains("be told from rigid"), both.out());
            assertFalse(both.out().contains("in series;"), both.out());
        }
    }

    @Test
    void thePageIsWellFormedAndDrawsTheLastRun() throws Exception {
        Files.writeString(folder.resolve("tub.yaml"), "tub: Larkspur\n");
        Typed.on(new FakeBench(), "run", folder.toString());
        Typed.on(new FakeBench(), "rig", "read", folder.toString(), "tub.csv");
        String page = Files.readString(folder.resolve("rig/latest/report.html"));
        assertTrue(page.contains("last run: as designed"));
        assertFalse(page.contains("NaN"));
        var factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        factory.newDocumentBuilder().parse(new InputSource(new StringReader(page)));
    }

    @Test
    void wrongReadingsAreToldByFileAndLine() throws IOException {
        Files.writeString(folder.resolve("bad.csv"), "gauge, R, 0 mm, angle\ncycle, torque [N], R [deg]\n1, 0, 0\n");
        Typed typed = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "bad.csv");
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("bad.csv:2: the column \"torque\" is in N"), typed.err());
        assertFalse(Files.exists(folder.resolve("rig")));
    }

    @Test
    void aMissingFileIsNamed() {
        Typed typed = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "none.csv");
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("none.csv: there is no such file"), typed.err());
    }

    @Test
    void helpAndSlipsOfThePenAreAnswered() {
        assertTrue(Typed.on(new FakeBench(), "rig", "--help")
                .out()
                .replaceAll("\\s+", " ")
                .contains("95 % interval"));
        assertTrue(Typed.on(new FakeBench(), "rig", "raed").err().contains("did you mean \"read\""));
    }

    /** Two pairs of gauges, 4 µm of noise (seed 1), torque to 2000 N·m and back. */
    private static String readings(String test, double perDegree) {
        Random random = new Random(1);
        StringBuilder text = new StringBuilder("test, " + test + "\nheld station, 2400 mm\nloaded station, 300 mm\n");
        text.append("gauge, fR, 300 mm, z, 500 mm, 0 mm\ngauge, fL, 300 mm, z, -500 mm, 0 mm\n");
        text.append("gauge, rR, 2400 mm, z, 500 mm, 0 mm\ngauge, rL, 2400 mm, z, -500 mm, 0 mm\n");
        text.append("cycle, torque [N·m], fR [mm], fL [mm], rR [mm], rL [mm]\n");
        for (int i = 0; i <= 16; i++) {
            double torque = 250 * (i <= 8 ? i : 16 - i);
            double turn = Math.toRadians(torque / perDegree) * 500;
            text.append(String.format(Locale.ROOT, "1, %.0f", torque));
            for (double value : new double[] {1.1 * turn, -1.1 * turn, 0.1 * turn, -0.1 * turn}) {
                text.append(String.format(Locale.ROOT, ", %.5f", value + 0.004 * random.nextGaussian()));
            }
            text.append('\n');
        }
        return text.toString();
    }
}
