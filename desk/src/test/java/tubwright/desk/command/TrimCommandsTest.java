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
import tubwright.engine.design.Template;

/** Ledger and what-if from the command line, on the design that {@code new} writes, coarsely meshed. */
class TrimCommandsTest {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    Path folder;

    @BeforeEach
    void writeADesign() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), Template.text("Trial"));
    }

    private Typed typed(String... arguments) {
        String[] all = Stream.concat(
                        Stream.of(arguments[0], folder.toString(), "--mesh", "150 mm"),
                        Stream.of(arguments).skip(1))
                .toArray(String[]::new);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void theLedgerLeavesAWholeFolderThatAgreesWithItself() throws IOException {
        Typed typed = typed("ledger", "--json");
        assertEquals(0, typed.code(), typed.err());
        try (Stream<Path> files = Files.list(folder.resolve("runs/ledger"))) {
            assertEquals(
                    List.of("answer.json", "inputs", "ledger.csv", "ledger.html", "worth.png"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
        JsonNode root = JSON.readTree(typed.out());
        JsonNode entries = root.get("entries");
        // shell 6 plies and a core, walls 4 and a core, rim 8, patch 2, joints: at least the seam.
        assertTrue(entries.size() >= 23, typed.out());
        double stiffness = root.get("stiffness_N_m_per_rad").asDouble();
        for (JsonNode entry : entries) {
            JsonNode left = entry.get("left_N_m_per_rad");
            JsonNode bracket = entry.get("leftWithoutSolving_N_m_per_rad");
            assertTrue(bracket.get(0).asDouble() <= left.get(0).asDouble());
            assertTrue(left.get(1).asDouble() <= bracket.get(1).asDouble());
            double middle = 0.5 * (left.get(0).asDouble() + left.get(1).asDouble());
            assertEquals(stiffness - middle, entry.get("lost_N_m_per_rad").asDouble(), 1e-9 * stiffness);
        }
        List<String> csv = Files.readAllLines(folder.resolve("runs/ledger/ledger.csv"));
        assertEquals(entries.size() + 1, csv.size());
        String page = Files.readString(folder.resolve("runs/ledger/ledger.html"));
        assertTrue(page.contains("Ply ledger") && page.contains("cockpit rim 3"));
    }

    @Test
    void whatTheLedgerSaysOfAPlyWhatIfSaysToo() {
        JsonNode ledger = JSON.readTree(typed("ledger", "--json").out());
        JsonNode entry = null;
        for (JsonNode each : ledger.get("entries")) {
            if (each.get("name").asString().equals("shell") && each.get("layer").asInt() == 2) {
                entry = each;
            }
        }
        Typed typed = typed("what-if", "--drop", "shell=2", "--exact", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JSON.readTree(typed.out());
        double after = answer.get("after_N_m_per_rad").get(0).asDouble();
        JsonNode left = entry.get("left_N_m_per_rad");
        assertTrue(
                left.get(0).asDouble() <= after * (1 + 1e-8)
                        && after <= left.get(1).asDouble(),
                typed.out());
        assertEquals(
                entry.get("mass_kg").asDouble(),
                answer.get("massBefore_kg").asDouble()
                        - answer.get("massAfter_kg").asDouble(),
                1e-9);
    }

    @Test
    void theSameStackWrittenAnewChangesNothing() {
        Typed typed = typed("what-if", "--set", "shell=[45c/0c/0/core/0/0c/45c]", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JSON.readTree(typed.out());
        assertEquals(
                answer.get("massBefore_kg").asDouble(),
                answer.get("massAfter_kg").asDouble(),
                1e-12);
        double before = answer.get("before_N_m_per_rad").asDouble();
        assertEquals(1, answer.get("after_N_m_per_rad").get(1).asDouble() / before, 1e-8);
    }

    @Test
    void whatIfTellsTheErrorBesideTheAnswer() {
        Typed typed = typed("what-if", "--drop", "walls=2", "--core", "shell=12 mm");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("±"), typed.out());
        assertTrue(typed.out().contains("walls without ply 2"), typed.out());
        assertFalse(Files.exists(folder.resolve("runs")));
    }

    @Test
    void whatIfWritesItsChangeAsAVariantThatReadsBackAsPromised() throws IOException {
        Path file = folder.resolve("tub.yaml");
        String before = Files.readString(file);
        Typed typed = typed("what-if", "--drop", "shell=2", "--exact", "--as-variant", "lighter");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("Written to"), typed.out());
        String after = Files.readString(file);
        assertEquals(
                before.stripTrailing(),
                after.substring(0, before.stripTrailing().length()));
        JsonNode promised = JSON.readTree(
                typed("what-if", "--drop", "shell=2", "--exact", "--json").out());
        JsonNode run = JSON.readTree(
                typed("what-if", "--variant", "lighter", "--set", "walls=[0c/45c/core/45c/0c]", "--exact", "--json")
                        .out());
        assertEquals(
                promised.get("massAfter_kg").asDouble(),
                run.get("massBefore_kg").asDouble(),
                1e-9);
        // Strain operators are made anew with the new laminates; that is all the difference.
        assertEquals(
                1,
                run.get("before_N_m_per_rad").asDouble()
                        / promised.get("after_N_m_per_rad").get(0).asDouble(),
                5e-3);
        Typed again = typed("what-if", "--drop", "shell=3", "--as-variant", "lighter");
        assertFalse(again.code() == 0);
        assertTrue(again.err().contains("lighter"), again.err());
        assertEquals(after, Files.readString(file));
    }

    @Test
    void theExchangeCurveFallsWithItsBoundBelowItAndWritesTheChosenPoint() throws IOException {
        Path lighter = folder.resolve("lighter.yaml");
        Typed typed = typed(
                "exchange",
                "--from",
                "80 %",
                "--points",
                "3",
                "--time",
                "9 s",
                "--choose",
                "90 %",
                "--write",
                lighter.toString(),
                "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JSON.readTree(typed.out());
        double before = 0;
        for (JsonNode point : root.get("points")) {
            double mass = point.get("mass_kg").asDouble();
            assertTrue(mass >= before && point.get("massBound_kg").asDouble() <= mass, typed.out());
            // The interval of what is reached; where nothing is changed its lower end is short of the target by
            // rounding.
            assertTrue(
                    point.get("reached_N_m_per_rad").get(1).asDouble()
                            >= point.get("least_N_m_per_rad").asDouble(),
                    typed.out());
            before = mass;
        }
        JsonNode marks = root.get("marks");
        assertEquals("as designed", marks.get(0).get("name").asString());
        double chosen = marks.get(marks.size() - 1).get("mass_kg").asDouble();
        try (Stream<Path> files = Files.list(folder.resolve("runs/exchange"))) {
            assertEquals(
                    List.of("answer.json", "exchange.csv", "exchange.html", "exchange.svg", "inputs"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
        JsonNode again = JSON.readTree(Typed.on(
                        new FakeBench(),
                        "what-if",
                        lighter.toString(),
                        "--mesh",
                        "150 mm",
                        "--set",
                        "walls=[0c/45c/core/45c/0c]",
                        "--json")
                .out());
        assertEquals(chosen, again.get("massBefore_kg").asDouble(), 1e-9);
    }

    @Test
    void lightenKeepsTheStiffnessAndWhatIfAgrees() {
        Typed typed = typed("lighten", "--keep", "90 %", "--fewest", "1", "--solves", "8", "--time", "8 s", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JSON.readTree(typed.out());
        JsonNode target = root.get("targets").get(0);
        double least = target.get("least_N_m_per_rad").asDouble();
        assertEquals(0.9 * target.get("before_N_m_per_rad").asDouble(), least, 1e-6);
        assertTrue(target.get("after_N_m_per_rad").get(0).asDouble() >= least);
        double mass = root.get("mass_kg").asDouble();
        assertTrue(mass < root.get("massBefore_kg").asDouble() - 0.1, typed.out());
        assertTrue(root.get("massBound_kg").asDouble() <= mass);
        Stream.Builder<String> sets = Stream.builder();
        sets.add("what-if").add("--json").add("--exact");
        for (JsonNode change : root.get("changes")) {
            sets.add("--set")
                    .add(change.get("zone").asString() + "="
                            + change.get("after").asString());
        }
        JsonNode same = JSON.readTree(typed(sets.build().toArray(String[]::new)).out());
        assertEquals(mass, same.get("massAfter_kg").asDouble(), 1e-9);
        assertEquals(
                1,
                same.get("after_N_m_per_rad").get(0).asDouble()
                        / target.get("after_N_m_per_rad").get(0).asDouble(),
                1e-7);
    }

    @Test
    void lightenWritesItsChoiceIntoANewFileAndLeavesTheDesignAlone() throws IOException {
        String before = Files.readString(folder.resolve("tub.yaml"));
        Path light = folder.resolve("light.yaml");
        Typed typed = typed("lighten", "--keep", "85 %", "--solves", "6", "--time", "5 s", "--write", light.toString());
        assertEquals(0, typed.code(), typed.err());
        JsonNode promised = JSON.readTree(Files.readString(folder.resolve("runs/lighten/answer.json")));
        assertEquals(before, Files.readString(folder.resolve("tub.yaml")));
        assertTrue(typed.out().contains("Written to " + light), typed.out());
        JsonNode written = JSON.readTree(Typed.on(
                        new FakeBench(), "what-if", light.toString(), "--mesh", "150 mm", "--drop", "shell=1", "--json")
                .out());
        assertEquals(
                promised.get("mass_kg").asDouble(), written.get("massBefore_kg").asDouble(), 1e-6);
    }

    @Test
    void lightenSaysWhatIsProvedAndWhatWasNotLookedAt() throws IOException {
        Typed typed = typed("lighten", "--time", "4 s");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("nothing is lighter than"), typed.out());
        assertTrue(typed.out().contains("buckling"), typed.out());
        String page = Files.readString(folder.resolve("runs/lighten/lighten.html"));
        assertTrue(page.contains("Best mass and bound") && page.contains("<svg"));
    }

    @Test
    void lightenChecksWhatTheTargetsAskAndKeepsToTheRulesOfTheDesign() throws IOException {
        String text = Files.readString(folder.resolve("tub.yaml"));
        Files.writeString(
                folder.resolve("tub.yaml"),
                text.replace(
                        "\ntargets:",
                        "\nlayup rules: {fewest plies: 2, most dropped: 1, cores: \"10, 15 mm\"}\n\ntargets:\n"
                                + "  first torsion frequency: at least 20 Hz"));
        Typed typed = typed("lighten", "--keep", "85 %", "--margin", "2 %", "--solves", "5", "--time", "3 s", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JSON.readTree(typed.out());
        JsonNode verified = root.get("verified").get(0);
        assertEquals(20 * 1.02, verified.get("least").asDouble(), 1e-9);
        assertTrue(verified.get("value").asDouble() > 20 * 1.02);
        JsonNode target = root.get("targets").get(0);
        double asked = 0.85 * 1.02 * target.get("before_N_m_per_rad").asDouble();
        assertEquals(asked, target.get("least_N_m_per_rad").asDouble(), 1e-6 * asked);
    }

    @Test
    void softerMaterialMakesTheLightestLayupNoLighterAndEachMaterialIsToldApart() {
        Typed typed = typed("lighten", "--keep", "85 %", "--time", "8 s", "--scatter", "6 %", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode root = JSON.readTree(typed.out());
        JsonNode scatter = root.get("scatter");
        double bound = root.get("massBound_kg").asDouble();
        assertTrue(scatter.get("massSofter_kg").asDouble() >= bound - 1e-9, typed.out());
        JsonNode each = scatter.get("byMaterial");
        assertTrue(each.size() > 1, typed.out());
        for (JsonNode one : each) {
            assertTrue(one.get("what").asString().startsWith("stiffness of")
                    || one.get("what").asString().startsWith("shear stiffness of"));
            // Nothing that is softer in one material can do with less than the bound of the tub as it is.
            assertTrue(one.get("massSofter_kg").asDouble() >= bound - 1e-9, one.toString());
        }
    }

    /** What the command needs, wherever the test's own launcher has it from. */
    private static String classPath() throws Exception {
        List<String> places = new java.util.ArrayList<>();
        for (Class<?> each : List.of(
                tubwright.desk.Main.class,
                Template.class,
                tubwright.numerics.DirectSolver.class,
                picocli.CommandLine.class,
                org.snakeyaml.engine.v2.api.Load.class,
                JsonMapper.class,
                tools.jackson.core.JsonGenerator.class,
                com.fasterxml.jackson.annotation.JsonIgnore.class,
                org.hipparchus.util.FastMath.class,
                tubwright.fleet.Job.class)) {
            places.add(Path.of(each.getProtectionDomain()
                            .getCodeSource()
                            .getLocation()
                            .toURI())
                    .toString());
        }
        return String.join(java.io.File.pathSeparator, places);
    }

    /** A process of its own is told to stop once it has a first design, as Ctrl-C does; it answers and leaves its folder. */
    @Test
    void lightenToldToStopAnswersWithTheBestSoFar() throws Exception {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Dtubwright.solver=java",
                "-cp",
                classPath(),
                "tubwright.desk.Main",
                "lighten",
                folder.toString(),
                "--mesh",
                "150 mm",
                "--keep",
                "90 %",
                "--cores",
                "8 mm, 12 mm, 16 mm, 18 mm, 22 mm",
                "--fewest",
                "1",
                "--time",
                "30 min",
                "--watch");
        Process process = new ProcessBuilder(command).start();
        try (var watched = process.errorReader();
                var told = process.inputReader()) {
            String first = watched.readLine();
            while (first != null && !first.contains("nothing below")) {
                first = watched.readLine();
            }
            assertTrue(first != null, "it ended before a first design");
            // Not the process itself, which would close its streams.
            process.toHandle().destroy();
            String out = String.join("\n", told.lines().toList());
            assertTrue(process.waitFor(60, java.util.concurrent.TimeUnit.SECONDS));
            assertTrue(out.contains("nothing is lighter than"), out);
            assertTrue(out.contains("Stopped before its time"), out);
        } finally {
            process.destroyForcibly();
        }
        JsonNode answer = JSON.readTree(folder.resolve("runs/lighten/answer.json"));
        assertEquals("stopped", answer.get("ended").asString());
        assertTrue(
                answer.get("massBound_kg").asDouble() <= answer.get("mass_kg").asDouble());
    }

    @Test
    void mistakesAreAnsweredByWhatToWrite() {
        assertTold(typed("what-if"), "needs a change");
        assertTold(typed("what-if", "--drop", "shel=2"), "did you mean \"shell\"?");
        assertTold(typed("what-if", "--drop", "shell=99"), "layers 1 to 9");
        assertTold(typed("what-if", "--drop", "shell=5"), "not a ply");
        assertTold(typed("what-if", "--set", "shell=[45c/0c"), "--set shell");
        assertTold(typed("what-if", "--set", "shell=[45k]"), "tag \"k\"");
        assertTold(typed("what-if", "--core", "cockpit rim=5 mm"), "no core");
        assertTold(typed("what-if", "--core", "shell=5"), "--core shell");
        assertTold(typed("what-if", "--joint", "waist=0"), "joint");
        assertTold(typed("what-if", "--drop", "shell"), "write it like");
        assertTold(typed("what-if", "--drop", "shell=2", "--within", "7"), "--within");
        assertTold(typed("lighten", "--keep", "300 %"), "reaches 33");
        assertTold(typed("lighten", "--keep", "much"), "--keep");
        assertTold(typed("lighten", "--also", "bending"), "write it like");
        assertTold(typed("lighten", "--also", "bending=90 %"), "there is no case \"bending\"");
        assertTold(typed("lighten", "--fewest", "0"), "at least one ply");
        assertTold(typed("lighten", "--cores", "10"), "--cores");
        assertTold(typed("ledger", "--case", "torsoin"), "did you mean \"torsion\"?");
        assertTold(typed("ledger", "--variant", "none"), "there is no variant");
    }

    private static void assertTold(Typed typed, String words) {
        assertEquals(ExitCode.WRONG_INPUT, typed.code(), typed.err());
        assertTrue(typed.err().contains(words), typed.err());
    }
}
