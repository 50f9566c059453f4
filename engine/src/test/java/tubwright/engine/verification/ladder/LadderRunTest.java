// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class LadderRunTest {
    private static LadderRun run(Set<String> tests, Finding... findings) {
        Map<String, Finding> byKey = new LinkedHashMap<>();
        List.of(findings).forEach(f -> byKey.put(f.key(), f));
        return new LadderRun(byKey, Map.of(), tests);
    }

    private static Finding finding(String name, double ours, String test) {
        return new Finding(Family.SOLVER, name, "", "statics", Mark.EXACT, 1, ours, .1, Double.NaN, test);
    }

    @Test
    void aRunOfAFewClassesKeepsWhatTheReportHasOfTheOthers() {
        LadderRun report = run(
                Set.of(),
                finding("kept", 1.01, "a.KeptTest#x"),
                finding("renamed away", 1.01, "a.RunTest#x"),
                finding("changed", 1.01, "a.RunTest#y"),
                finding("of a class taken out", 1.01, "a.GoneTest#x"));
        LadderRun now = run(Set.of("a.RunTest#y"), finding("changed", 1.02, "a.RunTest#y"));
        Map<String, Finding> all =
                now.over(report, name -> !name.equals("a.GoneTest")).findings();
        assertEquals(Set.of("SOLVER | kept | ", "SOLVER | changed | "), all.keySet());
        assertEquals(1.02, all.get("SOLVER | changed | ").ours());
    }
}
