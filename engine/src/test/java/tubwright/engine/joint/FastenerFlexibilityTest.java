// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.joint.FastenerFlexibility.Huth;
import tubwright.engine.joint.FastenerFlexibility.NelsonBuninHartSmith;
import tubwright.engine.joint.FastenerFlexibility.Plate;
import tubwright.engine.joint.FastenerFlexibility.SquaredGrip;
import tubwright.engine.joint.FastenerFlexibility.Swift;
import tubwright.engine.joint.FastenerFlexibility.TateRosenfeld;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * A published table of fastener flexibilities, given in 1e-5 mm/N to four digits. The rows of aluminium and the first of
 * carbon were read in a tutorial that works them out; those marked "computed here" were computed apart from this code.
 */
class FastenerFlexibilityTest {
    private static final Ladder LADDER = Ladder.of(
            Family.FASTENERS, "Tutorial citing Huth 1984, Swift 1971, Tate and Rosenfeld 1946 and others", Mark.READ);
    private static final Ladder APART =
            Ladder.of(Family.FASTENERS, "Formulas of the same, independent program", Mark.COMPUTED);

    private static final double GPA = 1e9;
    private static final double MM = 1e-3;
    private static final FastenerFlexibility[] ALL = {
        Huth.BOLTED_METAL,
        Huth.RIVETED_METAL,
        Huth.BOLTED_CARBON,
        Swift.ALUMINIUM,
        new NelsonBuninHartSmith(),
        new SquaredGrip(),
        TateRosenfeld.METAL
    };

    private static Plate plate(double thickness, double modulus) {
        return new Plate(thickness * MM, modulus * GPA);
    }

    /** In 1e-5 mm/N. */
    private static double single(FastenerFlexibility formula, Plate one, Plate two, double ef) {
        return formula.singleShear(one, two, 6.35 * MM, ef * GPA) * 1e8;
    }

    @Test
    void aSteelBoltThroughTwoAluminiumSheets() {
        Plate one = plate(3, 72);
        Plate two = plate(4, 72);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 4 mm, Huth (1e-5 mm/N)",
                1.928,
                single(Huth.BOLTED_METAL, one, two, 200),
                0.0005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 4 mm, Swift (1e-5 mm/N)",
                1.042,
                single(Swift.ALUMINIUM, one, two, 200),
                0.0005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 4 mm, Nelson, Bunin and Hart-Smith (1e-5 mm/N)",
                1.387,
                single(new NelsonBuninHartSmith(), one, two, 200),
                0.0005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 4 mm, squared grip (1e-5 mm/N)",
                3.110,
                single(new SquaredGrip(), one, two, 200),
                0.0005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 4 mm, Tate and Rosenfeld (1e-5 mm/N)",
                1.310,
                single(TateRosenfeld.METAL, one, two, 200),
                0.0005);
    }

    @Test
    void aSteelBoltThroughThreeAluminiumSheets() {
        Plate middle = plate(6, 72);
        Plate outer = plate(3, 72);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 6 + 3 mm, Huth (1e-5 mm/N)",
                0.5584,
                Huth.BOLTED_METAL.doubleShear(middle, outer, 8 * MM, 200 * GPA) * 1e8,
                0.00005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 6 + 3 mm, Nelson, Bunin and Hart-Smith (1e-5 mm/N)",
                0.892,
                new NelsonBuninHartSmith().doubleShear(middle, outer, 8 * MM, 200 * GPA) * 1e8,
                0.0005);
        LADDER.equal(
                "Steel bolt, aluminium 3 + 6 + 3 mm, Tate and Rosenfeld (1e-5 mm/N)",
                1.159,
                TateRosenfeld.METAL.doubleShear(middle, outer, 8 * MM, 200 * GPA) * 1e8,
                0.0005);
    }

    @Test
    void aTitaniumBoltThroughTwoCarbonLaminates() {
        LADDER.equal(
                "Titanium bolt, carbon 4 + 4 mm, Huth (1e-5 mm/N)",
                3.507,
                single(Huth.BOLTED_CARBON, plate(4, 55), plate(4, 55), 110),
                0.0005);
        // computed here
        Plate thin = plate(3, 55);
        APART.equal(
                "Titanium bolt, carbon 3 + 3 mm, Huth (1e-5 mm/N)",
                3.860,
                single(Huth.BOLTED_CARBON, thin, thin, 110),
                0.0005);
        APART.equal(
                "Titanium bolt, carbon 3 + 3 mm, Nelson, Bunin and Hart-Smith (1e-5 mm/N)",
                2.076,
                single(new NelsonBuninHartSmith(), thin, thin, 110),
                0.0005);
        // the table has 4.613 here and 3.618 below, having taken 3.7 for 3.72 in these two rows
        APART.equal(
                "Titanium bolt, carbon 3 + 3 mm, squared grip (1e-5 mm/N)",
                4.637,
                single(new SquaredGrip(), thin, thin, 110),
                0.0005);
        APART.equal(
                "Titanium bolt, carbon 3 + 3 mm, Tate and Rosenfeld (1e-5 mm/N)",
                2.109,
                single(TateRosenfeld.METAL, thin, thin, 110),
                0.0005);
        // with the plates' modulus for the shank's, as the table notes
        APART.equal(
                "Titanium bolt, carbon 3 + 3 mm, Swift with the modulus of the plates (1e-5 mm/N)",
                2.401,
                single(Swift.ALUMINIUM, thin, thin, 55),
                0.0005);
    }

    @Test
    void aTitaniumBoltThroughCarbonAndAluminium() {
        // computed here
        Plate carbon = plate(4, 55);
        Plate aluminium = plate(3, 70);
        APART.equal(
                "Titanium bolt, carbon 4 + aluminium 3 mm, Huth (1e-5 mm/N)",
                3.377,
                single(Huth.BOLTED_CARBON, carbon, aluminium, 110),
                0.0005);
        APART.equal(
                "Titanium bolt, carbon 4 + aluminium 3 mm, Nelson, Bunin and Hart-Smith (1e-5 mm/N)",
                1.713,
                single(new NelsonBuninHartSmith(), carbon, aluminium, 110),
                0.0005);
        APART.equal(
                "Titanium bolt, carbon 4 + aluminium 3 mm, squared grip (1e-5 mm/N)",
                3.636,
                single(new SquaredGrip(), carbon, aluminium, 110),
                0.0005);
        APART.equal(
                "Titanium bolt, carbon 4 + aluminium 3 mm, Tate and Rosenfeld (1e-5 mm/N)",
                1.839,
                single(TateRosenfeld.METAL, carbon, aluminium, 110),
                0.0005);
    }

    @Test
    void sheetsMayChangePlacesInSingleShear() {
        for (FastenerFlexibility formula : ALL) {
            Plate thin = plate(1.2, 70);
            Plate thick = plate(2, 71);
            assertEquals(
                    formula.singleShear(thin, thick, 4 * MM, 72 * GPA),
                    formula.singleShear(thick, thin, 4 * MM, 72 * GPA),
                    1e-20);
        }
    }

    @Test
    void flexibilityIsOneOverModulusTimesLength() {
        for (FastenerFlexibility formula : ALL) {
            double c = formula.singleShear(plate(1.2, 70), plate(2, 71), 4 * MM, 72 * GPA);
            double larger = formula.singleShear(plate(12, 70), plate(20, 71), 40 * MM, 72 * GPA);
            double softer = formula.singleShear(plate(1.2, 35), plate(2, 35.5), 4 * MM, 36 * GPA);
            assertEquals(c / 10, larger, 1e-12 * c, formula.source());
            assertEquals(2 * c, softer, 1e-12 * c, formula.source());
        }
    }
}
