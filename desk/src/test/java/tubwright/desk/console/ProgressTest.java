// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
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
    void theLineIsWipedAwayAtTheEnd() {
        String text = shown(true);
        assertTrue(text.contains("24 mm (2 of 6)"), text);
        assertTrue(text.endsWith("\r\u001b[2K"), text);
    }
}
