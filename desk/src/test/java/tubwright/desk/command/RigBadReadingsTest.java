// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** Files of readings that cannot be read, at the desk: one message with file and line, and what was there stays. */
class RigBadReadingsTest {
    private static final String HEAD = """
            held station, 2400 mm
            loaded station, 300 mm
            arm, 600 mm
            gauge, fR, 300 mm, z, 500 mm, 0 mm
            gauge, fL, 300 mm, z, -500 mm, 0 mm
            gauge, rR, 2400 mm, z, 500 mm, 0 mm
            gauge, rL, 2400 mm, z, -500 mm, 0 mm
            """;
    private static final String COLUMNS = "cycle, load [N], fR [mm], fL [mm], rR [mm], rL [mm]\n";
    private static final String ROWS = """
            1, 0, 0, 0, 0, 0
            1, 500, 0.31, -0.30, 0.05, -0.05
            1, 1000, 0.60, -0.61, 0.10, -0.10
            1, 1500, 0.91, -0.90, 0.15, -0.15
            1, 1000, 0.61, -0.61, 0.10, -0.10
            1, 500, 0.30, -0.31, 0.05, -0.05
            1, 0, 0.01, 0, 0, 0
            """;

    @TempDir
    Path folder;

    @BeforeEach
    void aTestThatWasReadBefore() throws IOException {
        assertEquals(0, read(HEAD + COLUMNS + ROWS).code());
    }

    static Stream<Arguments> files() {
        return Stream.of(
                Arguments.of("empty", "", ": the file holds no readings"),
                Arguments.of("remarks only", "# to be filled in\n", ": the file holds no readings"),
                Arguments.of("no table", HEAD, ":7: the table of readings is missing"),
                Arguments.of("no rows", HEAD + COLUMNS, ":8: 0 load steps are too few"),
                Arguments.of("never filled in", HEAD + COLUMNS + blank(), ":9: no gauge has a reading in any of the 7"),
                Arguments.of(
                        "column missing",
                        HEAD + COLUMNS.replace(", rL [mm]", ", note") + ROWS,
                        ":8: no column for the gauge \"rL\" of line 7"),
                Arguments.of(
                        "no load", HEAD + COLUMNS.replace("load [N]", "note") + ROWS, ":8: no column says the load"),
                Arguments.of(
                        "unit of another kind",
                        HEAD + COLUMNS.replace("load [N]", "load [kg]") + ROWS,
                        ":8: the column \"load\" is in kg, which is no unit of force"),
                Arguments.of(
                        "no unit", HEAD + COLUMNS.replace("fR [mm]", "fR") + ROWS, "has no unit: write \"fR [mm]\""),
                Arguments.of("arm in N", HEAD.replace("arm, 600 mm", "arm, 600 N") + COLUMNS + ROWS, ":3: arm: "),
                Arguments.of(
                        "one side only",
                        HEAD.replaceAll("gauge, .L.*\n", "")
                                + COLUMNS.replace("fL [mm]", "note").replace("rL [mm]", "remark")
                                + ROWS,
                        "for every millimetre the body moves"),
                Arguments.of(
                        "too few",
                        HEAD + COLUMNS + "1, 0, 0, 0, 0, 0\n1, 500, 1, -1, 0, 0\n",
                        "2 load steps are too few"),
                Arguments.of(
                        "steps as cycles", HEAD + COLUMNS + counted(), ":8: 7 cycles in 7 load steps are too many"),
                Arguments.of(
                        "one torque only",
                        HEAD + COLUMNS + ROWS.replaceAll("1, \\d+,", "1, 500,"),
                        ":8: fewer than three different torques"),
                Arguments.of("a word", HEAD + COLUMNS + ROWS.replace("0.31", "o.31"), ":10: \"o.31\" is not a number"),
                Arguments.of("decimal commas", HEAD + COLUMNS + ROWS.replace('.', ','), "are there decimal commas?"),
                Arguments.of(
                        "held end only",
                        HEAD + COLUMNS + ROWS.replaceAll("(?m)^(1, \\d+), [^,]+, [^,]+", "$1, , "),
                        "only the pair at the held end"),
                Arguments.of("stood still", HEAD + COLUMNS + still(), "does not turn at all"),
                Arguments.of(
                        "a rig softer than the whole",
                        "rig stiffness, 10 N·m/deg\n" + HEAD + COLUMNS + ROWS,
                        "a rig in series cannot be the softer"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void oneMessageSaysWhereAndWhatAndNothingIsLost(String name, String text, String words) throws IOException {
        String before = Files.readString(folder.resolve("rig/latest/answer.json"));
        Typed typed = read(text);
        assertEquals(1, typed.code(), typed.out());
        assertTrue(typed.err().contains("t.csv"), typed.err());
        assertTrue(typed.err().contains(words), typed.err());
        assertFalse(typed.err().contains("Exception"), typed.err());
        assertEquals("", typed.out());
        assertEquals(
                before, Files.readString(folder.resolve("rig/latest/answer.json")), "the test read before is lost");
        assertEquals(text, Files.readString(folder.resolve("t.csv")), "the file itself was touched");
        try (Stream<Path> left = Files.list(folder.resolve("rig"))) {
            assertEquals(1, left.count(), "something half-written was left");
        }
    }

    @Test
    void aFileThatIsNoTextIsCalledSo() throws IOException {
        Files.write(folder.resolve("t.csv"), (HEAD + COLUMNS + ROWS).getBytes(StandardCharsets.UTF_16));
        Typed typed = Typed.on(new FakeBench(), "rig", "read", folder.toString(), "t.csv");
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("t.csv: is not text in UTF-8"), typed.err());
    }

    @Test
    void whatCanBeReadIsReadWithAWordOnWhatIsDoubtful() throws IOException {
        Typed open = read(HEAD + COLUMNS + ROWS.lines().limit(4).reduce("", (a, b) -> a + b + "\n"));
        assertEquals(0, open.code(), open.err());
        assertTrue(open.out().replaceAll("\\s+", " ").contains("t.csv:12: cycle 1 is only loaded"), open.out());
        Typed flipped = read(HEAD + COLUMNS + ROWS.replaceAll("(?m)^1, ", "1, -"));
        assertTrue(flipped.out().contains("turns against the torque"), flipped.out());
        Typed unread = read(HEAD + COLUMNS + ROWS.replaceAll("(?m), [^,]+$", ", "));
        assertTrue(unread.out().contains("\"rL\" at x = 2400 mm was never"), unread.out());
    }

    private Typed read(String text) throws IOException {
        Files.writeString(folder.resolve("t.csv"), text);
        return Typed.on(new FakeBench(), "rig", "read", folder.toString(), "t.csv");
    }

    private static String blank() {
        return ROWS.replaceAll("(?m)^(1, \\d+).*$", "$1, , , , ");
    }

    private static String still() {
        return ROWS.replaceAll("(?m)^(1, \\d+).*$", "$1, 0, 0, 0, 0");
    }

    private static String counted() {
        StringBuilder text = new StringBuilder();
        int[] count = {0};
        ROWS.lines()
                .forEach(line ->
                        text.append(++count[0]).append(line.substring(1)).append('\n'));
        return text.toString();
    }
}
