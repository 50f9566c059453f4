// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class ProgressTest {
    private static String shown(boolean live) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);
        try (Progress progress = new Progress(new Terminal(stream, stream, live, false, true))) {
            progress.stage("as designed: mesh and solution, 24 mm (2 of 6)");
        }
        return err.toString(StandardCharsets.UTF_8);
    }

    @Test
    void nobodyWatchingMeansNothingPrinted() {
        assertEquals("", shown(false));
    }

    @Test
    void longWorkLeavesALineNowAndThenInALog() throws InterruptedException {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        PrintStream stream = new PrintStream(err, true, StandardCharsets.UTF_8);
        try (Progress progress = new Progress(new Terminal(stream, stream, false, false, true), Duration.ofMillis(5))) {
            progress.stage("design 12 of 200");
            for (int i = 0; i < 1000 && err.size() == 0; i++) {
                Thread.sleep(5);
            }
        }
        String first = err.toString(StandardCharsets.UTF_8).lines().findFirst().orElse("");
        assertTrue(first.matches("  design 12 of 200  \\S.*"), first);
        assertFalse(err.toString(StandardCharsets.UTF_8).contains("\u001b"));
    }

    @Test
    void theLineIsWipedAwayAtTheEnd() {
        String text = shown(true);
        assertTrue(text.contains("24 mm (2 of 6)"), text);
        assertTrue(text.endsWith("\r\u001b[2K"), text);
    }
}
