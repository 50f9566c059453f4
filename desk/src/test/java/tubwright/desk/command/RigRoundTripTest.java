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
import java.util.Locale;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
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
import tubwright.desk.work.EngineWorkbench;

/** A test planned, its form filled in, read, explained, and the next tub foretold: each step takes what the last one wrote. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class RigRoundTripTest {
    static final String DESIGN = """
            tub: box
            shape:
              loft: ruled
              strips: [floor, flank, deck]
              frames:
                - station: 0 mm
                  outline: (0, 150) (160, 150) (160, 400) (0, 400) mm
                - station: 1500 mm
                  outline: (0, 100) (240, 100) (250, 460) (0, 460) mm
              walls:
                front: {station: 0 mm}
                rear: {station: 1500 mm}
            laminates:
              skin:
                stack: "[45c/0c/core/0c/45c]"
                plies: {c: pw-t650-976}
                core: al-honeycomb-3.1-small-cell
                core thickness: 12 mm
                film: film-epoxy-150
            zones:
              skin: {on: [floor, flank, deck], laminate: skin}
              walls: {on: [front, rear], laminate: skin}
            hardpoints:
              front leg: {on: flank, x: 150 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              top front: {on: deck, x: 150 mm, y: 80 mm, footprint: 60 mm, mass: 50 g}
              rear leg:  {on: flank, x: 1350 mm, z: 280 mm, footprint: 60 mm, mass: 50 g}
              low rear:  {on: floor, x: 1350 mm, y: 120 mm, footprint: 60 mm, mass: 50 g}
            cases:
              torsion:
                hold: {rear leg: "x, y, z", low rear: "x, y, z"}
                load at: [front leg, top front]
                couple: 1000 N·m
                front station: 150 mm
                rear station: 1350 mm
            mesh:
              size: 120 mm
            """;

    /** What was built carries this share of the designed stiffness in its cloth. */
    private static final double BUILT = 0.88;

    @TempDir
    static Path folder;

    @BeforeAll
    static void design() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), DESIGN);
    }

    private static Typed rig(String... words) {
        List<String> all = new ArrayList<>(List.of("rig"));
        all.addAll(List.of(words));
        all.add(2, folder.toString());
        return Typed.on(new FakeBench(), all.toArray(String[]::new));
    }

    @Test
    @Order(1)
    void thePlanGoesToPaperAndToAFormThatCanBeReadBack() throws IOException {
        // A plan is content with a mesh twice as coarse as asked: so this one is that of the later steps.
        Typed typed = rig("plan", "--pairs", "4", "--mesh", "60 mm");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("held end"), typed.out());
        try (PDDocument sheet =
                Loader.loadPDF(folder.resolve("rig/plan/sheet.pdf").toFile())) {
            String text = new PDFTextStripper().getText(sheet);
            assertTrue(sheet.getNumberOfPages() >= 2);
            assertTrue(text.contains("stand") && text.contains("clear of it"), "no caution on the sheet:\n" + text);
            assertFalse(text.contains("?"), "letters the font lacks:\n" + text);
        }
        fillIn();
        Typed read = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "filled.csv");
        assertEquals(0, read.code(), read.err());
        assertTrue(read.out().contains("torsional stiffness"));
    }

    /** As a tub whose cloth is 12 % softer would read, with two µm of noise (seed 7). */
    private static void fillIn() throws IOException {
        JsonNode plan = JsonMapper.builder().build().readTree(Files.readString(folder.resolve("rig/plan/answer.json")));
        double torque = plan.path("greatestTorque_N_m").asDouble();
        Random random = new Random(7);
        StringBuilder filled = new StringBuilder();
        for (String line : Files.readAllLines(folder.resolve("rig/plan/readings.csv"))) {
            if (!line.matches("\\d+, [\\d.]+,.*")) {
                filled.append(line.startsWith("# mass") ? "mass, 5.6 kg" : line).append('\n');
                continue;
            }
            String[] cells = line.split(",");
            double load = Double.parseDouble(cells[1].strip());
            filled.append(cells[0]).append(',').append(cells[1]);
            for (JsonNode pair : plan.path("gaugePairs").valueStream().toList()) {
                double angle = pair.path("angleExpected_rad").asDouble() / BUILT * load / torque;
                for (int side : new int[] {1, -1}) {
                    double move = 1000 * side * angle * pair.path("spacing_m").asDouble() / 2;
                    filled.append(String.format(Locale.ROOT, ", %.4f", move + 0.002 * random.nextGaussian()));
                }
            }
            filled.append(",\n");
        }
        Files.writeString(folder.resolve("filled.csv"), filled.toString());
    }

    @Test
    @Order(2)
    void thePredictionBeforeTheTestGoesOnRecordOnce() {
        Typed typed = rig("predict", "--keep", "tub 1");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("nothing tested yet"), typed.out());
        Typed again = rig("predict", "--keep", "tub 1");
        assertEquals(1, again.code());
        assertTrue(again.err().contains("a prediction is not replaced"), again.err());
    }

    @Test
    @Order(3)
    void theTestIsExplainedByTheClothAndKept() throws IOException {
        Typed typed = rig("explain", "filled.csv", "--keep", "--doubt", "stiffness of pw-t650-976=0.15", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        JsonNode cloth = root.path("factors").path(0);
        assertEquals("stiffness of pw-t650-976", cloth.path("of").asString());
        assertEquals(
                Math.log(BUILT),
                cloth.path("meanOfLogarithm").asDouble(),
                2 * cloth.path("deviationOfLogarithm").asDouble());
        assertTrue(cloth.path("meanOfLogarithm").asDouble() < -0.04);
        assertTrue(root.path("settled").asBoolean());
        assertEquals("tub 1", root.path("foretold").path(0).path("name").asString());
        assertTrue(Files.exists(folder.resolve("rig/calibration.json")));
        String page = Files.readString(folder.resolve("rig/explained/report.html"));
        assertTrue(page.contains("as built") && !page.contains("NaN"));
    }

    @Test
    @Order(4)
    void thePredictionIsScoredOnRecordAndInTheLogbook() throws IOException {
        Typed typed = rig("record");
        assertEquals(0, typed.code(), typed.err());
        String said = typed.out().replaceAll("\\s+", " ");
        // The box was foretold at 5.44 kg; 5.6 kg are 2.9 % more.
        assertTrue(said.contains("tub 1 (filled.csv)") && said.contains("5.60 kg weighed, +2.9 %"), typed.out());
        JsonNode scored = JsonMapper.builder()
                .build()
                .readTree(Files.readString(folder.resolve("rig/record.json")))
                .path("scored");
        assertEquals(1, scored.size(), "the same prediction and test are one score");
        JsonNode one = scored.get(0);
        double off = Math.log(one.path("measured_N_m_per_rad").asDouble()
                / one.path("foretold_N_m_per_rad").asDouble());
        double s = Math.hypot(
                one.path("standardDeviationOfLogarithm").asDouble(),
                one.path("standardDeviationOfLogarithmMeasured").asDouble());
        assertEquals(off / s, one.path("score").asDouble(), 1e-9);
        assertEquals(Math.abs(off / s) <= 1.96, one.path("held").asBoolean());
        assertTrue(said.contains((one.path("held").asBoolean() ? "1" : "0") + " of 1 held"), said);
        try (Logbook book = Logbook.open(folder.resolve("runs"))) {
            List<String> lines =
                    book.entries().stream().map(Logbook.Entry::words).toList();
            assertEquals(4, lines.size(), lines.toString());
            assertTrue(lines.get(0).startsWith("Foretold as \"tub 1\" (")
                    && lines.get(0).contains("Weighed 5.60 kg"));
            assertTrue(lines.get(1).startsWith("Explained filled.csv: as built "));
            assertTrue(lines.get(2).startsWith("Foretold as \"tub 1\": "));
            assertTrue(lines.get(3).startsWith("tub only, filled.csv: ")
                    && lines.get(3).contains("weighed 5.6"));
        }
    }

    @Test
    @Order(4)
    void theNextTubIsForetoldMoreNarrowlyThanTheFirst() throws IOException {
        Typed typed = rig("predict", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        assertTrue(root.path("expanded95_N_m_per_rad").asDouble()
                < 0.7 * root.path("withoutTestExpanded95_N_m_per_rad").asDouble());
        assertTrue(root.path("torsionalStiffness_N_m_per_rad").asDouble()
                < 0.97 * root.path("withoutTest_N_m_per_rad").asDouble());
        assertEquals(
                root.path("mass_kg").asDouble(), root.path("testedMass_kg").asDouble(), 1e-9, "the same tub again");
        assertTrue(rig("predict").out().contains("It rests on the test of box (filled.csv"));
    }

    /** The run on the tub as built is what the prediction foretells, to the mesh. */
    @Test
    @Order(5)
    void aRunComputesTheTubAsItsMakersBuildIt() throws IOException {
        JsonNode foretold = JsonMapper.builder()
                .build()
                .readTree(rig("predict", "--mesh", "60 mm", "--json").out());
        JsonNode plain = run("--mesh", "60 mm", "--json");
        JsonNode built = run("--mesh", "60 mm", "--calibrated", "--json");
        String stiffness = "/variants/0/cases/0/convergence/samples/2/value_N_m_per_rad";
        assertEquals(
                foretold.path("torsionalStiffness_N_m_per_rad").asDouble()
                        / foretold.path("withoutTest_N_m_per_rad").asDouble(),
                built.at(stiffness).asDouble() / plain.at(stiffness).asDouble(),
                1e-6);
        assertTrue(plain.path("calibration").isNull());
        assertEquals("filled.csv", built.path("calibration").path("readings").asString());
        assertTrue(Files.readString(folder.resolve("runs/latest/report.html")).contains("As built, not as designed"));
    }

    /** What is lightened is the tub as built, and the interval is that of a prediction of the same tub. */
    @Test
    @Order(6)
    void whatIsLightenedIsTheTubAsBuiltAndHasAnInterval() throws IOException {
        List<String> words = List.of(
                "lighten", folder.toString(), "--calibrated", "--keep", "80 %", "--time", "2 s", "--mesh", "60 mm");
        List<String> printed = new ArrayList<>(words);
        printed.add("--json");
        Typed typed = Typed.on(new EngineWorkbench(), printed.toArray(String[]::new));
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        JsonNode built = root.path("asBuilt");
        double stiffness = built.path("sectionStiffnessAsBuilt_N_m_per_rad").asDouble();
        assertEquals(root.at("/targets/0/sectionStiffnessAfter_N_m_per_rad").asDouble(), stiffness, 1e-3 * stiffness);
        double share =
                built.path("sectionStiffnessAsBuiltExpanded95_N_m_per_rad").asDouble() / stiffness;
        assertTrue(share > 0.003 && share < 0.1, "± " + share);
        assertEquals("filled.csv", built.at("/calibration/readings").asString());
        assertEquals(root.path("mass_kg").asDouble(), built.path("mass_kg").asDouble(), 1e-3);
        String page = Files.readString(folder.resolve("runs/lighten/lighten.html"));
        assertTrue(page.contains("as heavy as the tub that was tested"), "the rules of this box let nothing go");
    }

    @Test
    @Order(6)
    void theExchangeCurveCarriesIntervalsWhenCalibrated() throws IOException {
        Typed typed = Typed.on(
                new EngineWorkbench(),
                "exchange",
                folder.toString(),
                "--calibrated",
                "--points",
                "2",
                "--time",
                "2 s",
                "--mesh",
                "60 mm");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("between sections, N·m/deg"), typed.out());
        assertTrue(typed.out().contains("says of its makers"), typed.out());
        JsonNode points = JsonMapper.builder()
                .build()
                .readTree(Files.readString(folder.resolve("runs/exchange/answer.json")))
                .path("points");
        for (JsonNode point : points.valueStream().toList()) {
            double share =
                    point.path("sectionStiffnessAsBuiltExpanded95_N_m_per_rad").asDouble()
                            / point.path("sectionStiffnessAsBuilt_N_m_per_rad").asDouble();
            assertTrue(share > 0.003 && share < 0.1, "± " + share);
        }
        assertTrue(
                Files.readString(folder.resolve("runs/exchange/exchange.csv")).contains("± 95 % (N·m/deg)"));
    }

    @Test
    @Order(6)
    void withoutACalibrationARunSaysHowToMakeOne() throws IOException {
        Path kept = folder.resolve("rig/calibration.json");
        Path aside = Files.move(kept, folder.resolve("aside.json"));
        Typed typed = Typed.on(new EngineWorkbench(), "run", folder.toString(), "--calibrated");
        Files.move(aside, kept);
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("there is no calibration; make one with"), typed.err());
    }

    private static JsonNode run(String... options) {
        List<String> all = new ArrayList<>(List.of("run", folder.toString()));
        all.addAll(List.of(options));
        Typed typed = Typed.on(new EngineWorkbench(), all.toArray(String[]::new));
        assertEquals(0, typed.code(), typed.err());
        return JsonMapper.builder().build().readTree(typed.out());
    }

    @Test
    @Order(7)
    void aPanelOfTheSkinIsHeldAgainstItsLayup() throws IOException {
        StringBuilder text = new StringBuilder("test, panel bend\nzone, skin\n");
        for (int span : new int[] {300, 450, 700}) {
            text.append("specimen, p").append(span).append(", ").append(span).append(" mm, 200 mm\n");
        }
        text.append("specimen, load [N], deflection [mm]\n");
        for (int span : new int[] {300, 450, 700}) {
            for (int i = 0; i <= 10; i++) {
                double bend = Math.pow(span / 1000.0, 3) / (48 * 900.0) + span / 1000.0 / (4 * 600e3);
                text.append(String.format(Locale.ROOT, "p%d, %d, %.6f%n", span, 100 * i, 1e5 * i * bend));
            }
        }
        Files.writeString(folder.resolve("panels.csv"), text.toString());
        Typed typed = rig("specimens", "panels.csv");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("bending stiffness 4500"), typed.out());
        assertTrue(typed.out().contains("predicted/measured"), typed.out());
        JsonNode root = JsonMapper.builder()
                .build()
                .readTree(rig("specimens", "panels.csv", "--json").out());
        assertEquals(3000e3, root.at("/perWidth/shearStiffness_N_per_m").asDouble(), 3e3);
        Files.writeString(folder.resolve("panels.csv"), text.toString().replace("zone, skin", "zone, skim"));
        assertTrue(rig("specimens", "panels.csv").err().contains("did you mean \"skin\"?"));
    }

    @Test
    @Order(8)
    void slipsAreAnswered() throws IOException {
        assertTrue(rig("plan", "--torque", "3 kg").err().contains("--torque: "));
        assertTrue(rig("scale", "--to", "3").err().contains("write a ratio such as 1:3"));
        Typed third = rig("scale", "--to", "1:3", "--plies", "1:3", "--measured", "1 kN·m/deg");
        assertTrue(third.out().contains("holds: everything"), third.out() + third.err());
        assertTrue(third.out().contains("speaks for 27 000 N·m/deg"), third.out());
        assertTrue(rig("plan", "--pairs", "1").err().contains("2 or more"));
        assertTrue(rig("explain", "none.csv").err().contains("none.csv: there is no such file"));
        assertTrue(rig("explain", "filled.csv", "--doubt", "joint=0.5").err().contains("there is no doubt \"joint\""));
        Path hubs = folder.resolve("hubs.csv");
        Files.writeString(
                hubs, Files.readString(folder.resolve("filled.csv")).replace("test, tub only", "test, hub to hub"));
        assertTrue(rig("explain", "hubs.csv").err().contains("hub to hub"));
        Path calibration = folder.resolve("rig/calibration.json");
        Files.writeString(calibration, "{\"factors\": 3}");
        assertTrue(rig("predict").err().contains("is no calibration that can be read"));
    }

    @Test
    @Order(12)
    void stationsWhereThereIsNoTubAreRefusedBeforeAnythingIsSolved() throws IOException {
        String before = Files.readString(folder.resolve("rig/explained/answer.json"));
        String filled = Files.readString(folder.resolve("filled.csv"));
        Files.writeString(folder.resolve("far.csv"), filled.replace("150 mm", "5150 mm"));
        Typed typed = Typed.on(new FakeBench(), "rig", "explain", folder.toString(), "far.csv");
        assertEquals(1, typed.code(), typed.out());
        assertTrue(typed.err().contains("is said to stand at x = 5150 mm"), typed.err());
        assertTrue(typed.err().contains("the tub reaches from x = 0 to 1500 mm"), typed.err());
        assertTrue(typed.err().matches("(?s).*far.csv:\\d+: the gauge.*"), typed.err());
        assertTrue(typed.err().contains("\"loaded station\" is 5150 mm"), typed.err());
        assertEquals(
                before, Files.readString(folder.resolve("rig/explained/answer.json")), "what was explained is lost");
    }
}
