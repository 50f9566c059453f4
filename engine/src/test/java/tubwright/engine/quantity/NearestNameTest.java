// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestNameTest {
    /** First four: textbook examples of the edit distance; "ca"/"abc" is 3 where only neighbours swap once. */
    @ParameterizedTest
    @CsvSource({
        "kitten, sitting, 3",
        "saturday, sunday, 3",
        "flank, falnk, 1",
        "ca, abc, 3",
        "'', abc, 3",
        "same, same, 0"
    })
    void distanceCountsEdits(String a, String b, int distance) {
        assertEquals(distance, NearestName.distance(a, b));
        assertEquals(distance, NearestName.distance(b, a));
    }

    @Test
    void theNearestIsSuggestedAndNothingIfNoneIsNear() {
        List<String> strips = List.of("floor", "chine", "flank", "shoulder", "deck");
        assertEquals(Optional.of("flank"), NearestName.of("flnak", strips));
        assertEquals(Optional.of("shoulder"), NearestName.of("Sholder", strips));
        assertEquals(Optional.empty(), NearestName.of("bulkhead", strips));
        assertEquals(
                Optional.of("torsional stiffness"),
                NearestName.of("stiffness", List.of("mass", "torsional stiffness")));
    }
}
