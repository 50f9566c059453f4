// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** How the time for comparison bodies is shared out, in parts of the whole. */
class SharpeningTest {
    private static final double END = 0.62;

    @Test
    void bodiesThatAreQuicklyMadeHaveAnEvenShareOfTheTime() {
        assertEquals(0.405, Sharpening.leave(0.38, 0.004, 4, 0.48), 1e-12);
        assertTrue(Sharpening.fits(0.405, 0.004, 0.48));
    }

    /** Two targets take two bodies, and making them took longer than the even share: they were left with nothing done. */
    @Test
    void bodiesThatTookLongToMakeWorkAtLeastAsLong() {
        double making = 0.10;
        double ready = 0.48;
        assertTrue((END - ready) / 4 < making);
        assertTrue(Sharpening.leave(ready, making, 4, END) >= ready + making);
    }

    @Test
    void whereThereIsNoTimeForOthersTheseHaveWhatIsLeft() {
        assertEquals(END, Sharpening.leave(0.42, 0.075, 4, END), 1e-12);
        assertFalse(Sharpening.fits(0.50, 0.075, END));
    }

    @Test
    void theFirstOnesWorkEvenIfMakingThemTookAllTheTime() {
        assertEquals(0.90, Sharpening.leave(0.70, 0.20, 4, END), 1e-12);
    }
}
