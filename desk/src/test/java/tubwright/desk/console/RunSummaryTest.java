// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.desk.FakeRun;

/** The short answer is laid out as agreed; a change of a single blank calls for a look. */
class RunSummaryTest {
    private static Terminal terminal(boolean colour, boolean unicode) {
        PrintStream nowhere = new PrintStream(OutputStream.nullOutputStream());
        return new Terminal(nowhere, nowhere, false, colour, unicode);
    }

    private static String printed(Terminal terminal) {
        return String.join(
                        "\n",
                        RunSummary.lines(terminal, FakeRun.answer()).stream()
                                .map(terminal::shown)
                                .toList()) + "\n";
    }

    private static String agreed(String name) throws IOException {
        try (InputStream in = RunSummaryTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void theAnswerIsLaidOutAsAgreed() throws IOException {
        assertEquals(agreed("summary.txt"), printed(terminal(false, true)));
    }

    @Test
    void asciiTerminalsGetAsciiInTheSameColumns() throws IOException {
        String text = printed(terminal(false, false));
        assertEquals(agreed("summary-ascii.txt"), text);
        assertTrue(text.chars().allMatch(c -> c < 128));
    }

    @Test
    void coloursChangeNothingButLooks() {
        String plain = printed(terminal(false, true));
        String coloured = printed(terminal(true, true));
        assertFalse(plain.contains("\u001b"));
        assertEquals(plain, coloured.replaceAll("\u001b\\[[0-9]+m", ""));
    }

    @Test
    void everyLineFitsAnOrdinaryWindow() {
        List<String> lines = printed(terminal(false, true)).lines().toList();
        lines.forEach(line -> assertTrue(line.length() <= 80, line));
    }
}
