// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** The examples held against rules from the command line. */
class RulesCommandTest {
    @TempDir
    Path folder;

    @Test
    void everyClauseOfTheBrambleComesToAVerdictAndNothingIsCalledSafe() throws IOException {
        Files.copy(Path.of("..", "examples", "bramble", "tub.yaml"), folder.resolve("tub.yaml"));
        Typed typed = Typed.on(new FakeBench(), "rules", folder.toString(), "--mesh", "150 mm", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode set = JsonMapper.builder()
                .build()
                .readTree(typed.out())
                .path("ruleSets")
                .get(0);
        assertEquals(2026, set.path("year").asInt());
        for (JsonNode clause : set.path("clauses")) {
            String verdict = clause.path("verdict").asString();
            assertTrue(verdict.matches("met|not met|not checked"), verdict);
            assertEquals(verdict.equals("not checked"), !clause.path("needs").isEmpty(), clause.toString());
        }
        String page = Files.readString(folder.resolve("runs/rules/rules.html"));
        assertTrue(page.contains("licensed engineer") && page.contains("scrutineers decide"));
        assertFalse(Pattern.compile("\\bsafe\\b")
                .matcher(page.toLowerCase(Locale.ROOT))
                .find());
    }

    @Test
    void aDesignWithoutRulesIsTold() throws IOException {
        String text = Files.readString(Path.of("..", "examples", "bramble", "tub.yaml"));
        Files.writeString(
                folder.resolve("tub.yaml"),
                text.substring(0, text.indexOf("\nrules:")) + text.substring(text.indexOf("\nmesh:")));
        Typed typed = Typed.on(new FakeBench(), "rules", folder.toString());
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("there are no rules"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs")));
    }

    @Test
    void aPadOffTheTubIsNamedWithItsLine() throws IOException {
        String text = Files.readString(Path.of("..", "examples", "larkspur", "tub.yaml"))
                .replace("side: {at: \"1400, 262, 240 mm\"", "side: {at: \"1400, 900, 240 mm\"");
        int line = (int)
                text.substring(0, text.indexOf("1400, 900, 240 mm")).lines().count();
        Files.writeString(folder.resolve("tub.yaml"), text);
        Typed typed = Typed.on(new FakeBench(), "rules", folder.toString(), "--mesh", "150 mm");
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("tub.yaml:" + line + ":"), typed.err());
        assertTrue(typed.err().contains("pushes where there is no skin"), typed.err());
    }
}
