// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeBench;
import tubwright.desk.Typed;

/** A hard body against the Larkspur's skin, asked from the command line. */
class PunchCommandTest {
    @TempDir
    Path folder;

    @BeforeEach
    void copyTheExample() throws IOException {
        Files.copy(Path.of("..", "examples", "larkspur", "tub.yaml"), folder.resolve("tub.yaml"));
    }

    private Typed typed(String mass, String... more) {
        List<String> all = new ArrayList<>(List.of(
                "punch",
                folder.toString(),
                "--laminate",
                "cockpit side",
                "--mass",
                mass,
                "--diameter",
                "25 mm",
                "--speed",
                "12 m/s"));
        all.addAll(List.of(more));
        return Typed.on(new FakeBench(), all.toArray(String[]::new));
    }

    /** Heavy and slow, each skin takes ¼ π D² T σe (Wen 2000, from memory), the core its stress times the hole. */
    @Test
    void aHeavyBodyNeedsWhatASlowPunchOfSkinsAndCoreNeeds() throws IOException {
        Typed typed = typed("1e7 kg", "--resistance", "180 MPa", "--core-crush", "1.6 MPa", "--json");
        assertEquals(0, typed.code(), typed.err());
        JsonNode answer = JsonMapper.builder().build().readTree(typed.out());
        double hole = 0.25 * Math.PI * 0.025 * 0.025;
        double skins = 0;
        for (JsonNode skin : answer.path("skins")) {
            double slow = hole * skin.path("thickness_m").asDouble() * 180e6;
            assertEquals(slow, skin.path("fastEnergy_J").asDouble(), 1e-3 * slow);
            skins += slow;
        }
        assertTrue(answer.path("fastEnergy_J").asDouble() > skins * 1.01, "the core takes its share");
        assertTrue(answer.path("slowEnergy_J").isNull(), "no perimeter shear strength was given");
        assertFalse(answer.path("notChecked").isEmpty());
    }

    @Test
    void whatIsNotGivenIsNotChecked() {
        Typed typed = typed("2 kg");
        assertEquals(0, typed.code(), typed.err());
        assertTrue(typed.out().contains("not checked: needs"), typed.out());
        assertTrue(typed.out().contains("licensed"), "the caution");
    }

    @Test
    void ofTwoEstimatesTheLowerCounts() throws IOException {
        String[] panel = {"--punch-shear", "10 MPa", "--resistance", "180 MPa", "--core-crush", "1.6 MPa"};
        List<String> asJson = new ArrayList<>(List.of(panel));
        asJson.add("--json");
        JsonNode answer = JsonMapper.builder()
                .build()
                .readTree(typed("0.5 kg", asJson.toArray(String[]::new)).out());
        double slow = answer.path("slowEnergy_J").asDouble();
        assertTrue(slow < answer.path("energy_J").asDouble(), "a weak skin, pushed slowly");
        assertEquals(slow, answer.path("countedEnergy_J").asDouble());
        assertTrue(
                answer.path("fastEnergy_J").asDouble() > answer.path("energy_J").asDouble());
        String out = typed("0.5 kg", panel).out().replaceAll("\\s+", " ");
        assertTrue(out.contains("the lower one counts: reckon with the body coming through"), out);
        assertTrue(typed("0.5 kg").out().contains("One estimate is missing"));
    }

    @Test
    void badInputIsOneMessage() {
        for (String[] bad : new String[][] {
            {"-2 kg", "a mass is greater than zero"}, {"2", "unit"}, {"2 m", "mass"}, {"much", "--mass"}
        }) {
            Typed typed = typed(bad[0]);
            assertTrue(typed.code() != 0, bad[0]);
            assertTrue(typed.err().contains(bad[1]), typed.err());
            assertFalse(typed.err().contains("\tat "), typed.err());
        }
        assertTrue(typed("2 kg", "--nose", "sharp").err().contains("flat or round"));
        assertTrue(typed("2 kg", "--resistance", "-1 MPa").err().contains("greater than zero"));
        assertFalse(Files.exists(folder.resolve("runs/punch")), "nothing is written");
    }
}
