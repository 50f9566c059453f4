// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.structure.FastenerFlexibility.Plate;

/**
 * Rows of a published table of fastener flexibilities after Huth (1986), given in 1e-5 mm/N to four digits. Two rows were
 * read in a tutorial that works them out; rows marked "computed here" were computed independently of this code.
 */
class FastenerFlexibilityTest {
    private static final double GPA = 1e9;
    private static final double MM = 1e-3;
    /** 1e-5 mm/N in m/N. */
    private static final double UNIT = 1e-8;

    @Test
    void aSteelBoltThroughTwoAluminiumSheets() {
        double c = FastenerFlexibility.BOLTED_METAL.singleShear(
                new Plate(3 * MM, 72 * GPA), new Plate(4 * MM, 72 * GPA), 6.35 * MM, 200 * GPA);
        assertEquals(1.928, c / UNIT, 0.0005);
    }

    @Test
    void aSteelBoltThroughThreeAluminiumSheets() {
        double c = FastenerFlexibility.BOLTED_METAL.doubleShear(
                new Plate(6 * MM, 72 * GPA), new Plate(3 * MM, 72 * GPA), 8 * MM, 200 * GPA);
        assertEquals(0.5584, c / UNIT, 0.00005);
    }

    @Test
    void aTitaniumBoltThroughTwoCarbonLaminates() {
        double c = FastenerFlexibility.BOLTED_CARBON.singleShear(
                new Plate(4 * MM, 55 * GPA), new Plate(4 * MM, 55 * GPA), 6.35 * MM, 110 * GPA);
        assertEquals(3.507, c / UNIT, 0.0005);
    }

    @Test
    void aTitaniumBoltThroughTwoThinnerCarbonLaminates() {
        // computed here
        double c = FastenerFlexibility.BOLTED_CARBON.singleShear(
                new Plate(3 * MM, 55 * GPA), new Plate(3 * MM, 55 * GPA), 6.35 * MM, 110 * GPA);
        assertEquals(3.860, c / UNIT, 0.0005);
    }

    @Test
    void aTitaniumBoltThroughCarbonAndAluminium() {
        // computed here
        double c = FastenerFlexibility.BOLTED_CARBON.singleShear(
                new Plate(4 * MM, 55 * GPA), new Plate(3 * MM, 70 * GPA), 6.35 * MM, 110 * GPA);
        assertEquals(3.377, c / UNIT, 0.0005);
    }

    @Test
    void sheetsMayChangePlacesInSingleShear() {
        Plate thin = new Plate(1.2 * MM, 70 * GPA);
        Plate thick = new Plate(2 * MM, 71 * GPA);
        assertEquals(
                FastenerFlexibility.RIVETED_METAL.singleShear(thin, thick, 4 * MM, 72 * GPA),
                FastenerFlexibility.RIVETED_METAL.singleShear(thick, thin, 4 * MM, 72 * GPA),
                1e-20);
    }
}
