// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;
import tubwright.engine.structure.StructureException;

/** What is printed, what is written, and how the process ends. */
class CliTest {
    @TempDir
    Path folder;

    @BeforeEach
    void writeADesign() throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), "tub: Larkspur\n");
    }

    @Test
    void aRunPrintsTheAnswerAndLeavesAWholeFolder() throws IOException {
        Typed typed = Typed.on(new FakeBench(), "run", folder.toString());
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("21 340 ± 120 N·m/deg"), typed.out());
        assertEquals("", typed.err());
        assertEquals(
                List.of(
                        "runs/latest/answer.json",
                        "runs/latest/fields/aluminium.vtu",
                        "runs/latest/fields/as-designed.vtu",
                        "runs/latest/inputs/tub.yaml",
                        "runs/latest/report.html",
                        "tub.yaml"),
                files());
    }

    @Test
    void aSecondRunReplacesTheFirstByTheSameBytes() throws IOException {
        Typed.on(new FakeBench(), "run", folder.toString());
        TreeMap<String, String> first = contents();
        Typed.on(new FakeBench(), "run", folder.toString());
        TreeMap<String, String> second = contents();
        assertEquals(first, second);
    }

    @Test
    void jsonPrintsOneDocumentAndNothingElse() throws IOException {
        Typed typed = Typed.on(new FakeBench(), "run", folder.toString(), "--json");
        assertEquals(0, typed.code());
        JsonNode root = JsonMapper.builder().build().readTree(typed.out());
        assertEquals("Larkspur", root.get("tub").asString());
        assertEquals(typed.out(), Files.readString(folder.resolve("runs/latest/answer.json")));
    }

    @Test
    void optionsReachTheEngine() {
        FakeBench bench = new FakeBench();
        Typed.on(
                bench,
                "run",
                folder.toString(),
                "--mesh",
                "12 mm",
                "--quick",
                "--variant",
                "aluminium",
                "--case",
                "bump");
        assertEquals(0.012, bench.asked.meshSize().orElseThrow(), 1e-15);
        assertTrue(bench.asked.quick());
        assertEquals(List.of("aluminium"), bench.asked.variants());
        assertEquals(List.of("bump"), bench.asked.cases());
    }

    @Test
    void aMeshSizeWithoutAUnitIsRefused() throws IOException {
        refused(1, "unit", "run", folder.toString(), "--mesh", "12");
    }

    @Test
    void aMeshSizeOfNothingIsRefused() throws IOException {
        refused(1, "greater than zero", "run", folder.toString(), "--mesh", "0 mm");
    }

    @Test
    void anUnknownVariantIsRefusedAndTheNearestNamed() throws IOException {
        refused(1, "did you mean \"aluminium\"?", "run", folder.toString(), "--variant", "aluminum");
        refused(1, "there is no case \"bumb\"; did you mean \"bump\"?", "run", folder.toString(), "--case", "bumb");
    }

    @Test
    void aFolderWithoutADesignIsRefused() throws IOException {
        refused(1, "no such file", "run", folder.resolve("nowhere").toString());
    }

    @Test
    void aRunNameThatWouldLeaveTheFolderIsRefused() throws IOException {
        refused(1, "--name", "run", folder.toString(), "--name", "../elsewhere");
    }

    @Test
    void aFolderOfOtherFilesIsNeverReplaced() throws IOException {
        Path other = Files.createDirectory(folder.resolve("photographs"));
        Files.writeString(other.resolve("tub.jpg"), "picture");
        refused(1, "left alone", "run", folder.toString(), "--out", other.toString());
        assertEquals("picture", Files.readString(other.resolve("tub.jpg")));
    }

    @Test
    void aStructureThatCannotStandIsTheUsersToMend() throws IOException {
        FakeBench bench =
                new FakeBench(new StructureException("the tub can turn freely about x", "Hold one more hardpoint."));
        Typed typed = Typed.on(bench, "run", folder.toString());
        assertEquals(1, typed.code());
        assertEquals("tubwright: the tub can turn freely about x\n    Hold one more hardpoint.\n", typed.err());
        assertEquals(List.of("tub.yaml"), files());
    }

    @Test
    void aFaultOfTheProgramSaysSoAndKeepsTheDetailsInAFile() throws IOException {
        Typed typed = Typed.on(new FakeBench(new IllegalStateException("lost count")), "run", folder.toString());
        assertEquals(3, typed.code());
        assertTrue(typed.err().contains("lost count"), typed.err());
        assertFalse(typed.err().contains("\tat "), typed.err());
        Path log = Path.of(typed.err().replaceAll("(?s).*details are in (.*\\.log);.*", "$1"));
        assertTrue(Files.readString(log).contains("\tat "), "the log holds the whole story");
        Files.delete(log);
        assertEquals(List.of("tub.yaml"), files());
    }

    @Test
    void aStoppedRunLeavesNothing() throws IOException {
        Typed typed = Typed.on(new FakeBench(new CancellationException()), "run", folder.toString());
        assertEquals(130, typed.code());
        assertEquals(List.of("tub.yaml"), files());
    }

    @Test
    void aFailedRunLeavesTheRunBeforeItAlone() throws IOException {
        Typed.on(new FakeBench(), "run", folder.toString());
        TreeMap<String, String> before = contents();
        Typed.on(new FakeBench(new StructureException("it falls over", "")), "run", folder.toString());
        assertEquals(before, contents());
    }

    @Test
    void aFullDiskIsCalledAFullDisk() throws IOException {
        Path full = Path.of("/dev/full");
        Assumptions.assumeTrue(Files.exists(full), "needs the always-full device of Linux");
        IOException error = null;
        try (OutputStream out = Files.newOutputStream(full)) {
            out.write(new byte[1024]);
        } catch (IOException e) {
            error = e;
        }
        String message = Trouble.explain(error);
        assertTrue(message.startsWith("the disk is full"), message);
    }

    @Test
    void newNeverReplacesAFile() throws IOException {
        refused(1, "is there already", "new", folder.toString());
        assertEquals("tub: Larkspur\n", Files.readString(folder.resolve("tub.yaml")));
    }

    @Test
    void newMakesAFolder() throws IOException {
        Typed typed = Typed.on(new FakeBench(), "new", folder.resolve("mine").toString());
        assertEquals(0, typed.code(), typed.err());
        assertEquals("tub: mine\n", Files.readString(folder.resolve("mine/tub.yaml")));
    }

    @Test
    void checkSaysTheTubInWords() {
        Typed typed = Typed.on(new FakeBench(), "check", folder.toString());
        assertEquals(0, typed.code());
        assertTrue(typed.out().contains("floor      [45c/core/45c]  1.234  20.80  2310"), typed.out());
    }

    @Test
    void materialsShowTheirSourcesAndTrust() {
        Typed all = Typed.on(new FakeBench(), "materials");
        assertEquals(0, all.code());
        assertTrue(all.out().contains("ud-as4-8552"), all.out());
        Typed one = Typed.on(new FakeBench(), "materials", "ud-as4-8552");
        assertTrue(one.out().contains("127.3 GPa"), one.out());
        assertTrue(one.out().contains("[1]"), one.out());
        Typed none = Typed.on(new FakeBench(), "materials", "ud-as4-8553");
        assertEquals(1, none.code());
        assertTrue(none.err().contains("did you mean \"ud-as4-8552\"?"), none.err());
    }

    @Test
    void aCommandThatIsNotUnderstoodIsExplained() {
        assertEquals(2, Typed.on(new FakeBench()).code());
        Typed typo = Typed.on(new FakeBench(), "rum", folder.toString());
        assertEquals(2, typo.code());
        assertTrue(typo.err().contains("did you mean \"run\"?"), typo.err());
        Typed missing = Typed.on(new FakeBench(), "run");
        assertEquals(2, missing.code());
        assertTrue(missing.err().contains("DIR"), missing.err());
    }

    @Test
    void everyCommandHasAHelpText() {
        for (String command : List.of("run", "check", "new", "materials", "schema")) {
            Typed typed = Typed.on(new FakeBench(), command, "--help");
            assertEquals(0, typed.code());
            assertTrue(typed.out().contains("Example"), command);
        }
        assertTrue(Typed.on(new FakeBench(), "--version").out().startsWith("Tubwright "));
    }

    private void refused(int code, String word, String... arguments) throws IOException {
        List<String> before = files();
        Typed typed = Typed.on(new FakeBench(), arguments);
        assertEquals(code, typed.code(), typed.err());
        assertEquals("", typed.out());
        assertTrue(typed.err().startsWith("tubwright: "), typed.err());
        assertTrue(typed.err().contains(word), typed.err());
        assertFalse(typed.err().contains("\tat "), typed.err());
        assertEquals(before, files());
    }

    private List<String> files() throws IOException {
        return contents().keySet().stream().toList();
    }

    /** Every file with its content, the time stamp blotted out. */
    private TreeMap<String, String> contents() throws IOException {
        TreeMap<String, String> result = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                String content = Files.readString(file, java.nio.charset.StandardCharsets.ISO_8859_1);
                result.put(
                        folder.relativize(file).toString(),
                        content.replaceAll("20\\d\\d-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ", "STAMP"));
            }
        }
        return result;
    }
}
