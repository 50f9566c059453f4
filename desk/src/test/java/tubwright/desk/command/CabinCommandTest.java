// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** Whether the example's driver, pedals, column, belt and tank go in. */
class CabinCommandTest {
    @TempDir
    Path folder;

    private String design;

    @BeforeEach
    void copyTheExample() throws IOException {
        design = Files.readString(Path.of("..", "examples", "larkspur", "tub.yaml"));
    }

    private Typed cabin(String text, String... more) throws IOException {
        Files.writeString(folder.resolve("tub.yaml"), text);
        String[] all = new String[more.length + 2];
        all[0] = "cabin";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void whatGoesInIsToldDrawnAndWritten() throws IOException {
        Typed typed = cabin(design);
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("steering column"), typed.out());
        assertTrue(typed.out().contains("The tank is to hold"), typed.out());
        assertTrue(typed.out().contains("mock-up"), typed.out());
        JsonNode answer = JsonMapper.shared().readTree(Files.readString(folder.resolve("runs/cabin/answer.json")));
        assertTrue(answer.get("tankRoom_m3").asDouble() > 0.018, answer.toString());
        String page = Files.readString(folder.resolve("runs/cabin/cabin.html"));
        assertTrue(page.contains("From the side") && page.contains("From above"));
        JsonNode json = JsonMapper.shared().readTree(cabin(design, "--json").out());
        assertEquals(answer, json);
    }

    @Test
    void aLargerDriverHasLessRoom() throws IOException {
        double medium = shoulders(design);
        double large = shoulders(design.replace("percentile: 50 %", "percentile: 95 %"));
        assertTrue(large < medium - 0.01, medium + " and " + large);
    }

    private double shoulders(String text) throws IOException {
        for (JsonNode each :
                JsonMapper.shared().readTree(cabin(text, "--json").out()).get("nearest")) {
            if (each.get("of").asString().equals("shoulders")) {
                return each.get("distance_m").asDouble();
            }
        }
        throw new AssertionError("no shoulders");
    }

    @Test
    void whatIsWrongIsToldWithLineAndColumn() throws IOException {
        bad(design.replace("percentile: 50 %", "percentile: 100 %"), "write 1 % to 99 %");
        bad(design.replace("people: women", "people: giants"), "people");
        bad(design.replace("hips: 1300, 200 mm", "hips: 14200, 200 mm"), "lie outside the tub");
        bad(design.replace("holds: 18 l", "holds: 18 kg"), "volume");
        bad(
                design.replace("holds: 18 l, x: 1900 .. 2200 mm", "holds: 18 l, x: 1900 .. 2900 mm"),
                "reaches out of the tub");
        bad(design.replace(", diameter: 40 mm}", "}"), "\"diameter\" is missing");
    }

    private void bad(String text, String words) throws IOException {
        Typed typed = cabin(text);
        assertEquals(1, typed.code(), typed.out());
        assertTrue(typed.err().contains(words), typed.err());
        assertTrue(typed.err().matches("(?s).*tub\\.yaml:\\d+:\\d+.*"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs")), "something was written");
    }
}
