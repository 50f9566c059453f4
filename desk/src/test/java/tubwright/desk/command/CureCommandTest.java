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

/** Every laminate of an example through its cures. */
class CureCommandTest {
    @TempDir
    Path folder;

    @BeforeEach
    void copyTheExample() throws IOException {
        Files.copy(Path.of("..", "examples", "bramble", "tub.yaml"), folder.resolve("tub.yaml"));
    }

    private Typed typed(String... more) {
        String[] all = new String[more.length + 2];
        all[0] = "cure";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    @Test
    void everyLaminateHasItsCuresOnPaperAndAsData() throws IOException {
        Files.writeString(folder.resolve("cure.yaml"), """
                sources:
                  ours: {source: "invented for this test", trust: invented for the demo}
                plies:
                  works-cloth: {resin: "3501-6", fibre: carbon, source: ours, values: {fibre volume fraction: 55 %}}
                """);
        Typed typed = typed("--json", "--service", "80 °C", "--humidity", "20 %", "--order", "one-shot");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        assertEquals("cure", answer.path("answer").asString());
        assertTrue(answer.path("laminates").size() > 3);
        for (JsonNode laminate : answer.path("laminates")) {
            assertEquals(
                    1, laminate.path("cures").size(), laminate.path("missing").toString());
            for (JsonNode cure : laminate.path("cures")) {
                for (JsonNode check : cure.path("checks")) {
                    boolean open = check.path("verdict").asString().equals("not checked");
                    assertEquals(open, check.path("words").asString().startsWith("needs "), check.toString());
                }
            }
        }
        assertTrue(answer.path("moulds").size() > 3);
        assertTrue(answer.path("caution").asString().contains("does not replace tests"));
        String page = Files.readString(folder.resolve("runs/cure/cure.html"));
        assertTrue(page.contains("leading place") && page.contains("cold over part"));
    }

    @Test
    void aPlyWhoseResinIsNotKnownIsNotCheckedAndTheRestIsAnsweredAllTheSame() throws IOException {
        Typed typed = typed();
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("not checked: needs the resin of the ply 'works-cloth'"), typed.out());
        assertTrue(Files.exists(folder.resolve("runs/cure/answer.json")));
    }

    @Test
    void aFaultInOnesOwnDataIsToldWithItsLineAndNothingIsWritten() throws IOException {
        Files.writeString(folder.resolve("cure.yaml"), """
                sources:
                  ours: {source: "sheet", trust: stated}
                cycles:
                  solid-180:
                    description: "ours"
                    source: ours
                    start: 20 °C
                    steps:
                      - {to: 150, rate: 1 K/min, hold: 1 h, hold from: air, pressure: 6 bar, bag: 1 bar}
                """);
        Typed typed = typed();
        assertEquals(ExitCode.WRONG_INPUT, typed.code());
        assertTrue(typed.err().contains("cure.yaml:9:"), typed.err());
        assertFalse(Files.exists(folder.resolve("runs")));
    }

    @Test
    void anUnknownCycleOrMouldIsToldWithTheNearestName() {
        Typed cycle = typed("--cycle", "solid-18");
        assertEquals(ExitCode.WRONG_INPUT, cycle.code());
        assertTrue(cycle.err().contains("did you mean 'solid-180'"), cycle.err());
        Typed mould = typed("--mould", "stel");
        assertTrue(mould.err().contains("did you mean 'steel'"), mould.err());
    }
}
