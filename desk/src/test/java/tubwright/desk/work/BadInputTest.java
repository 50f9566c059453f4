// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import tubwright.desk.Typed;
import tubwright.engine.design.Template;

/** Whatever is wrong with a design ends in one message that says where and what, and leaves no file behind. */
class BadInputTest {
    @TempDir
    Path folder;

    /** What is wrong, the text it replaces, the text that is wrong, words the message must have. */
    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of("unknown key", "construction: carbon sandwich", "constuction: carbon", "construction"),
                Arguments.of("missing unit", "station: 600 mm", "station: 600", "unit"),
                Arguments.of("wrong unit", "station: 600 mm", "station: 600 kg", "kg"),
                Arguments.of("dangling name", "laminate: rim}", "laminate: rin}", "rim"),
                Arguments.of(
                        "crossed outline",
                        "(0, 100) (170, 100) (190, 460) (0, 490) mm",
                        "(0, 100) (190, 460) (170, 100) (0, 490) mm",
                        "outline"),
                Arguments.of("opening larger than its strip", "width: 330 mm", "width: 900 mm", "cockpit"),
                Arguments.of("wall outside the tub", "station: 1900 mm\n\n#", "station: 2900 mm\n\n#", "rear bulkhead"),
                Arguments.of("frames out of order", "station: 1200 mm", "station: 500 mm", "front to rear"),
                Arguments.of("thickness of nothing", "core thickness: 12 mm", "core thickness: 0 mm", "greater than"),
                Arguments.of("negative thickness", "core thickness: 12 mm", "core thickness: -12 mm", "greater than"),
                Arguments.of("no finite number", "couple: 1000 N·m", "couple: .inf N·m", "couple"),
                Arguments.of(
                        "unstable support",
                        "{engine mount lower: \"x, y, z\", engine mount upper: \"x, y, z\"}",
                        "{engine mount lower: \"x, y\", engine mount upper: \"x, y\"}",
                        "z"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void everyFaultEndsInOneMessageAndNoFile(String name, String right, String wrong, String word) throws IOException {
        String text = Template.text("Trial");
        assertTrue(text.contains(right), "the template no longer has: " + right);
        refused(text.replace(right, wrong), word);
    }

    @Test
    void anEmptyFileIsRefused() throws IOException {
        refused("", "empty");
    }

    @Test
    void anAliasBombIsRefused() throws IOException {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 12; i++) {
            bomb.append("a").append(i).append(": &a").append(i).append(" [");
            bomb.append(("*a" + (i - 1) + ", ").repeat(9))
                    .append("*a")
                    .append(i - 1)
                    .append("]\n");
        }
        refused(bomb.toString(), "alias");
    }

    @Test
    void aFolderWithoutADesignIsRefused() {
        Typed typed = Typed.on(new EngineWorkbench(), "run", folder.toString());
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("tub.yaml"), typed.err());
    }

    private void refused(String text, String word) throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), text);
        Typed typed = Typed.on(new EngineWorkbench(), "run", folder.toString(), "--quick", "--mesh", "60 mm");
        assertEquals(1, typed.code(), typed.err());
        assertEquals("", typed.out());
        assertTrue(typed.err().startsWith("tubwright: "), typed.err());
        assertTrue(typed.err().contains(word), typed.err());
        assertFalse(typed.err().contains("\tat "), typed.err());
        try (Stream<Path> files = Files.walk(folder)) {
            assertEquals(
                    List.of("tub.yaml"),
                    files.filter(f -> !f.equals(folder))
                            .map(f -> folder.relativize(f).toString())
                            .toList());
        }
    }
}
