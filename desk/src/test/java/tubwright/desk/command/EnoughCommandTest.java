// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** How stiff is enough, asked of the example's car. */
class EnoughCommandTest {
    private static final double DEGREE = Math.PI / 180;

    @TempDir
    Path folder;

    private Path design;

    @BeforeEach
    void copyTheExample() throws IOException {
        design = folder.resolve("tub.yaml");
        Files.copy(Path.of("..", "examples", "larkspur", "tub.yaml"), design);
    }

    /** A run that has 4000 N·m/deg between the axles, of which the tub gives way by half and has 9000 between sections. */
    private void pretendARun() throws IOException {
        Path latest = Files.createDirectories(folder.resolve("runs").resolve("latest"));
        Files.createDirectories(latest.resolve("inputs"));
        Files.copy(design, latest.resolve("inputs").resolve("tub.yaml"));
        Files.writeString(latest.resolve("answer.json"), """
                {"variants": [{"variant": "aluminium"}, {"variant": "as designed",
                  "cases": [{"kind": "torsion", "torsionalStiffness_N_m_per_rad": %f}],
                  "installed": {"hubToHub": {
                    "stiffness_N_m_per_rad": %f, "linksRigid_N_m_per_rad": %f,
                    "springs": [{"name": "tub: skin, walls and stiffeners", "share": 0.4},
                      {"name": "inserts", "share": 0.4}, {"name": "front links", "share": 0.2}]}}}]}
                """.formatted(9000 / DEGREE, 3200 / DEGREE, 4000 / DEGREE));
    }

    private Typed typed(String... more) {
        String[] all = new String[more.length + 2];
        all[0] = "enough";
        all[1] = folder.toString();
        System.arraycopy(more, 0, all, 2, more.length);
        return Typed.on(new FakeBench(), all);
    }

    /** Flexibilities add up: 1/3000 is asked for, 1/8000 lies elsewhere, so the tub may have 5/24000 where it had 1/8000. */
    @Test
    void whatTheTubNeedsFollowsFromTheSpringsInSeries() throws IOException {
        pretendARun();
        Typed typed = typed("--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        double needed = answer.path("needed_N_m_per_rad").asDouble();
        double rest = DEGREE / 8000;
        assertEquals(
                9000 / DEGREE * rest / (1 / needed - rest),
                answer.path("lastRun").path("tubNeeded_N_m_per_rad").asDouble(),
                1e-3);
        assertEquals(
                4000 / DEGREE,
                answer.path("lastRun").path("betweenAxles_N_m_per_rad").asDouble(),
                1);
        assertTrue(Files.readString(folder.resolve("runs/enough/enough.html")).contains("last run"));
    }

    @Test
    void theTargetIsStoredAndNothingElseChanges() throws IOException {
        pretendARun();
        String before = Files.readString(design);
        assertEquals(0, typed("--store").code());
        String after = Files.readString(design);
        String target = after.lines()
                .filter(l -> l.strip().startsWith("torsional stiffness: at least"))
                .findFirst()
                .orElseThrow();
        assertFalse(before.contains(target), target);
        assertEquals(before, after.replace(target, "  torsional stiffness: at least 10 kN·m/deg"));
    }

    @Test
    void withoutARunNothingIsStored() throws IOException {
        String before = Files.readString(design);
        Typed typed = typed("--store");
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("what the tub needs follows from a run"), typed.err());
        assertEquals(before, Files.readString(design));
    }

    @Test
    void whatCannotBeAskedIsSaid() {
        assertTrue(typed("--share", "100 %").err().contains("only a rigid chassis"));
        assertTrue(typed("--share", "much").err().contains("cannot read 'much'"));
        assertTrue(typed("--roll-stiffness", "0 N·m/deg").err().contains("not greater than zero"));
    }

    @Test
    void aDesignWithoutACarIsToldWhatIsMissing() throws IOException {
        Files.copy(Path.of("..", "examples", "bramble", "tub.yaml"), design, StandardCopyOption.REPLACE_EXISTING);
        Typed typed = typed();
        assertEquals(1, typed.code());
        assertTrue(typed.err().contains("under \"car\""), typed.err());
    }
}
