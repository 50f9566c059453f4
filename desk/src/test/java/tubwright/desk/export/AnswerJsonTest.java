// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tubwright.desk.FakeRun;
import tubwright.desk.answer.RunAnswer;

class AnswerJsonTest {
    private static final RunAnswer ANSWER = FakeRun.answer();
    private static final String TEXT = AnswerJson.write(ANSWER);
    private static final JsonNode ROOT = JsonMapper.builder().build().readTree(TEXT);

    @Test
    void theNumbersAreThoseOfTheAnswerInSi() {
        JsonNode torsion = ROOT.get("variants").get(0).get("cases").get(0);
        double stiffness = ANSWER.main().cases().getFirst().stiffness().value();
        assertEquals(stiffness, torsion.get("torsionalStiffness_N_m_per_rad").asDouble(), 1e-9 * stiffness);
        assertEquals(FakeRun.COUPLE, torsion.get("couple_N_m").asDouble());
        assertEquals(
                31.42, ROOT.get("variants").get(0).get("mass").get("mass_kg").asDouble());
    }

    @Test
    void whatIsNotANumberIsNull() {
        JsonNode line = ROOT.get("variants").get(0).get("cases").get(0).get("twistLine");
        assertTrue(line.get("rigidities_N_m2").get(0).isNull());
        assertEquals(line.get("stations_m").size(), line.get("rigidities_N_m2").size());
    }

    @Test
    void twoRunsGiveTheSameBytesButForTheStamp() {
        assertEquals(TEXT, AnswerJson.write(FakeRun.answer()));
        String later = AnswerJson.write(FakeRun.answer().stamped("2027-01-01T00:00:00Z"));
        assertEquals(TEXT, later.replace("2027-01-01T00:00:00Z", ANSWER.stamp()));
    }

    @Test
    void everyKeyIsExplainedInTheDocumentation() throws IOException {
        Set<String> written = new TreeSet<>();
        collect(ROOT, written);
        String page = Files.readString(Path.of("../docs/json.md"));
        Set<String> explained = new TreeSet<>();
        Matcher matcher = Pattern.compile("`([A-Za-z0-9_]+)`").matcher(page);
        while (matcher.find()) {
            explained.add(matcher.group(1));
        }
        written.removeAll(explained);
        assertEquals(Set.of(), written, "keys missing in docs/json.md");
    }

    private static void collect(JsonNode node, Set<String> keys) {
        node.propertyNames().forEach(keys::add);
        node.forEach(child -> collect(child, keys));
    }
}
