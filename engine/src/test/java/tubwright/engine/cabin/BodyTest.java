// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.cabin;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.cabin.Body.Length;
import tubwright.engine.cabin.Body.People;

/** The normal distributions against percentiles the survey itself prints. */
class BodyTest {
    /** A normal distribution misses counted percentiles by as much; sizes go by the half inch anyway. */
    private static final double WITHIN = 4e-3;

    private static void printed(double value, People people, Length length, double share) {
        assertEquals(value, Body.of(people).at(length, share), WITHIN, people + " " + length);
    }

    @Test
    void percentilesAreThoseOfTheSurvey() {
        // Gordon et al. (2014), NATICK/TR-15/007, read in a second publication that cites the report page by page.
        printed(1.870, People.MEN, Length.STATURE, 0.95);
        printed(0.977, People.MEN, Length.SITTING_HEIGHT, 0.95);
        printed(0.669, People.MEN, Length.BUTTOCK_KNEE, 0.95);
        printed(0.602, People.MEN, Length.KNEE_HEIGHT, 0.95);
        printed(0.567, People.MEN, Length.SHOULDER_BREADTH, 0.95);
        printed(0.293, People.MEN, Length.FOOT, 0.95);
        printed(1.525, People.WOMEN, Length.STATURE, 0.05);
        printed(0.803, People.WOMEN, Length.SITTING_HEIGHT, 0.05);
        printed(0.456, People.WOMEN, Length.HIP_BREADTH, 0.95);
    }

    @Test
    void theMedianIsTheMeanAndHalvesMirror() {
        assertEquals(0.91829, Body.of(People.MEN).at(Length.SITTING_HEIGHT, 0.5), 1e-12);
        assertEquals(
                2 * 0.91829,
                Body.of(People.MEN).at(Length.SITTING_HEIGHT, 0.05)
                        + Body.of(People.MEN).at(Length.SITTING_HEIGHT, 0.95),
                1e-12);
    }
}
