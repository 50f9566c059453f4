// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.material.Core;
import tubwright.engine.material.MaterialLibrary;

/** Rules as digested from MIL-HDBK-17-3F chapter 12; which layups break which rule is plain to see. */
class LayupPracticeTest {
    private static final MaterialLibrary LIBRARY = MaterialLibrary.shipped();

    private static final Legend LEGEND = Legend.of(LIBRARY.get("ud-im7-8552"))
            .with("c", LIBRARY.get("pw-t650-976"))
            .with("g", LIBRARY.get("8hs-e-glass-7781"))
            .with("film", LIBRARY.get("film-epoxy-150"))
            .with("core", LIBRARY.get("al-honeycomb-3.1", Core.class), 0.02)
            .with("coarse", LIBRARY.get("al-honeycomb-3.4", Core.class), 0.02)
            .with("sheet", LIBRARY.get("al-2024-t3"), 0.001);

    @ParameterizedTest
    @CsvSource({
        "[45/-45/0/90]s, ''",
        "[45c/0c/0c/45c], ''",
        "[45c/0c/film/core/film/0c/45c], ''",
        "[45/-45/0/90], symmetric; surface plies",
        "[45/45/0/90]s, balanced; ten per cent",
        "[45/-45/0_5/90]s, grouping",
        "[45/-45/0_4/90]s, ''",
        "[45/-45/0_9/90]s, grouping; ten per cent",
        "[0/45/-45/90]s, surface plies; surface plies",
        "[45/-45/0/90/film/core/film/90/0/-45/45], bond line; bond line",
        "[45c/0c/film/coarse/film/0c/45c], cell size",
        "[45c/0c/core/0c/45c], corrosion",
        "[45c/0c/0g/core/0g/0c/45c], ''",
        "[45c/-45c/0c]s, cloth counted twice",
        "[sheet], ''",
    })
    void aLayupIsHeldAgainstTheRules(String code, String rules) {
        List<LayupAdvice> advice =
                LayupPractice.check(OrientationCode.parse(code).toLaminate(LEGEND, Reference.OUTER));
        List<String> expected = rules.isEmpty() ? List.of() : List.of(rules.split("; "));
        assertEquals(
                expected.stream().sorted().toList(),
                advice.stream().map(LayupAdvice::rule).sorted().toList());
    }

    @Test
    void everyRemarkNamesItsSource() {
        LayupPractice.check(OrientationCode.parse("[0_9/30/coarse]").toLaminate(LEGEND, Reference.OUTER))
                .forEach(a -> {
                    assertFalse(a.source().isBlank());
                    assertFalse(a.text().isBlank());
                });
    }
}
