// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** Files of panels and coupons at the desk: what can be read is read, what cannot is told with file and line. */
class RigSpecimensCommandTest {
    private static final String PANEL = """
            test, panel bend
            specimen, P1, 300 mm, 200 mm
            specimen, load [N], deflection [mm]
            """;
    private static final String ROWS = IntStream.rangeClosed(0, 10)
            .mapToObj(i -> String.format(Locale.ROOT, "P1, %d, %.3f%n", 100 * i, 0.03 * i))
            .collect(Collectors.joining());
    private static final String COUPON = """
            test, coupon tension
            specimen, C1, 25 mm, 2 mm
            specimen, load [kN], strain [%]
            """;

    @TempDir
    Path folder;

    static Stream<Arguments> files() {
        return Stream.of(
                Arguments.of("empty", "", ": the file holds no readings"),
                Arguments.of(
                        "no table", PANEL.replaceAll("specimen, load.*\n", ""), "the table of readings is missing"),
                Arguments.of("no rows", PANEL, ":2: specimen \"P1\" has 0 readings; at least 5 are needed"),
                Arguments.of("too few", PANEL + "P1, 0, 0\nP1, 100, 0.03\n", ":2: specimen \"P1\" has 2 readings"),
                Arguments.of(
                        "few where it counts", PANEL + few(), ":2: specimen \"P1\" has only 3 readings between 10"),
                Arguments.of(
                        "a column missing",
                        PANEL.replace(", deflection [mm]", "") + ROWS.replaceAll(", [^,]+\n", "\n"),
                        ":3: the table needs the columns specimen, load and deflection; missing: deflection"),
                Arguments.of(
                        "unit of another kind",
                        PANEL.replace("[mm]", "[N]") + ROWS,
                        ":3: the column \"deflection\" is in N"),
                Arguments.of("no unit", PANEL.replace(" [N]", "") + ROWS, ":3: the column \"load\" has no unit"),
                Arguments.of("width in newtons", PANEL.replace("200 mm", "200 N") + ROWS, ":2: width: "),
                Arguments.of("negative width", PANEL.replace("200 mm", "-200 mm") + ROWS, ":2: width is -200 mm"),
                Arguments.of("a word", PANEL + ROWS.replace("P1, 300", "P1, x"), ":7: \"x\" is not a number"),
                Arguments.of(
                        "decimal commas", PANEL + ROWS.replace('.', ','), ":4: the line has 4 cells under 3 columns"),
                Arguments.of(
                        "negative load",
                        PANEL + ROWS.replace("P1, ", "P1, -"),
                        ":2: specimen \"P1\": the load is negative"),
                Arguments.of(
                        "deflection turned",
                        PANEL + ROWS.replaceAll(", ([^,]+)\n", ", -$1\n"),
                        ":2: specimen \"P1\": the deflection goes the other way than the load"),
                Arguments.of(
                        "a gauge stuck",
                        PANEL + ROWS.replaceAll(", [^,]+\n", ", 0.1\n"),
                        ":2: specimen \"P1\": the deflection never changes"),
                Arguments.of(
                        "one load",
                        PANEL + ROWS.replaceAll("P1, \\d+", "P1, 100"),
                        ":2: specimen \"P1\": the load never changes"),
                Arguments.of(
                        "a rig softer than the whole",
                        "rig stiffness, 1 N/mm\n" + PANEL + ROWS,
                        "a rig in series cannot be the softer"),
                Arguments.of("a zone that is not", "zone, skn\n" + PANEL + ROWS, "did you mean \"skin\"?"),
                Arguments.of(
                        "strain in millionths",
                        COUPON + "C1, 0, 0\nC1, 1, 500\nC1, 2, 1000\nC1, 3, 1500\nC1, 4, 2000\n",
                        ":2: specimen \"C1\": the strain reaches 2000 %"),
                Arguments.of(
                        "pushed instead of pulled",
                        COUPON + "C1, 0, 0\nC1, -1, -0.1\nC1, -2, -0.2\nC1, -3, -0.3\nC1, -4, -0.4\n",
                        ":2: specimen \"C1\": the load is negative"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("files")
    void oneMessageSaysWhereAndWhat(String name, String text, String words) throws IOException {
        Typed typed = read(text);
        assertEquals(1, typed.code(), typed.out());
        assertTrue(typed.err().contains("p.csv"), typed.err());
        assertTrue(typed.err().contains(words), typed.err());
        assertFalse(typed.err().contains("Exception"), typed.err());
        assertEquals("", typed.out());
    }

    @Test
    void aSoundFileIsRead() throws IOException {
        Typed typed = read(PANEL + ROWS);
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("P1"), typed.out());
    }

    @Test
    void aFolderThatIsNotAndAFileThatIsNoTextAreCalledSo() throws IOException {
        Files.write(folder.resolve("p.csv"), (PANEL + ROWS).getBytes(StandardCharsets.UTF_16));
        Typed typed = Typed.on(new FakeBench(), "rig", "specimens", folder.toString(), "p.csv");
        assertTrue(typed.err().contains("p.csv: is not text in UTF-8"), typed.err());
        String nowhere = folder.resolve("nowhere").toString();
        Typed lost = Typed.on(new FakeBench(), "rig", "specimens", nowhere, "p.csv");
        assertTrue(lost.err().contains("there is no such folder"), lost.err());
    }

    private static String few() {
        return "P1, 0, 0\nP1, 100, 0.03\nP1, 200, 0.06\nP1, 300, 0.09\nP1, 800, 0.24\n";
    }

    private Typed read(String text) throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), RigRoundTripTest.DESIGN);
        Files.writeString(folder.resolve("p.csv"), text);
        return Typed.on(new FakeBench(), "rig", "specimens", folder.toString(), "p.csv");
    }
}
