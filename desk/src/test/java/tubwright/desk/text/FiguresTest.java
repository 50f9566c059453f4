// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.text;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Locale;
import org.junit.jupiter.api.Test;

class FiguresTest {
    @Test
    void errorsDecideHowManyDigitsAreShown() {
        assertEquals("21 340 ± 120", Figures.plusMinus(21_339.7, 119.5, " "));
        assertEquals("8.520 ± 0.070", Figures.plusMinus(8.52, 0.07, " "));
        assertEquals("8.5 ± 1.3", Figures.plusMinus(8.52, 1.28, " "));
        assertEquals("21 340 ± 3", Figures.plusMinus(21_340, 3, " "));
        assertEquals("123.5", Figures.plusMinus(123.456, Double.NaN, " "));
    }

    @Test
    void groupsOfThreePartFromFiveDigitsOn() {
        assertEquals("1250", Figures.fixed(1250, 0, " "));
        assertEquals("12 500.0", Figures.fixed(12_500, 1, " "));
        assertEquals("−1 234 567", Figures.fixed(-1_234_567, 0, " "));
    }

    @Test
    void nothingRoundsToMinusNothing() {
        assertEquals("0.0", Figures.fixed(-0.01, 1, " "));
    }

    @Test
    void theMachinesLanguageDoesNotMatter() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertEquals("12 500.50", Figures.fixed(12_500.5, 2, " "));
            assertEquals("9.4 %", Figures.percent(0.094));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void timesAreSaidAsPeopleSayThem() {
        assertEquals("0.4 s", Figures.elapsed(0.41));
        assertEquals("12 s", Figures.elapsed(12.4));
        assertEquals("3 min 05 s", Figures.elapsed(185.2));
    }

    /** 1 lbf·ft = 1.355 818 N·m (NIST SP 811, 2008, App. B.8); a degree is π/180. */
    @Test
    void inchPoundStiffnessFollowsTheStandard() {
        assertEquals(1.355818, Conversions.POUND_FORCE_FOOT, 5e-7);
        assertEquals(1, Conversions.poundFeetPerDegree(1.3558179483314004 * 180 / Math.PI), 1e-12);
    }
}
