// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tubwright.engine.material.Core;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Inserts in honeycomb after ESA PSS-03-1202 (coefficients from memory); examples computed apart. */
class InsertTest {
    private static final Ladder LADDER =
            Ladder.of(Family.SANDWICH, "ESA PSS-03-1202 (1987), independent program", Mark.COMPUTED);
    private static final Ladder TABLE =
            Ladder.of(Family.SANDWICH, "Abramowitz and Stegun 1964, table 9.8", Mark.MEMORY);

    private static final double MM = 1e-3;
    private static final double MPA = 1e6;

    private static InsertPullOut insert(double potting, double face, double core, double ef, double gc) {
        return new InsertPullOut(potting * MM, new Adherend(face * MM, ef * 1e9, 0.3), core * MM, gc * MPA);
    }

    @Test
    void pottingFillsWholeCells() {
        LADDER.equal(
                "Potting, insert 7 mm in cells of 4.76 mm, least radius (mm)",
                10.02,
                Potting.leastRadius(7 * MM, 4.76 * MM) / MM,
                0.005);
        LADDER.equal(
                "Potting, insert 7 mm in cells of 4.76 mm, usual radius (mm)",
                10.78,
                Potting.usualRadius(7 * MM, 4.76 * MM) / MM,
                0.005);
        LADDER.equal(
                "Potting, insert 4.5 mm in cells of 6.4 mm, least radius (mm)",
                9.13,
                Potting.leastRadius(4.5 * MM, 6.4 * MM) / MM,
                0.005);
        LADDER.equal(
                "Potting, insert 4.5 mm in cells of 6.4 mm, usual radius (mm)",
                9.82,
                Potting.usualRadius(4.5 * MM, 6.4 * MM) / MM,
                0.005);
        LADDER.equal(
                "Potting, insert 7 mm in cells of 3.2 mm, least radius (mm)",
                8.66,
                Potting.leastRadius(7 * MM, 3.2 * MM) / MM,
                0.005);
    }

    @Test
    void theFacesTakePartOfThePull() {
        InsertPullOut insert = insert(Potting.leastRadius(7 * MM, 4.76 * MM) / MM, 0.6, 20, 60, 152);
        LADDER.equal("Insert, decay (1/mm)", 1.166, insert.decay() * MM, 0.0005);
        LADDER.equal("Insert, largest shear ratio", 0.7524, insert.largestShearRatio(), 0.00005);
        LADDER.equal("Insert, radius of largest shear (mm)", 12.43, insert.radiusOfLargestShear() / MM, 0.005);
        LADDER.equal("Insert, core shear capacity at least radius (N)", 1552, insert.coreShearCapacity(0.9 * MPA), 0.5);
        LADDER.equal("Insert, plain capacity (N)", 1133, insert.plainCapacity(0.9 * MPA), 0.5);
        LADDER.equal(
                "Insert, core shear capacity at usual radius (N)",
                1645,
                insert(Potting.usualRadius(7 * MM, 4.76 * MM) / MM, 0.6, 20, 60, 152)
                        .coreShearCapacity(0.9 * MPA),
                0.5);
    }

    @Test
    void otherInserts() {
        double least = Potting.leastRadius(4.5 * MM, 6.4 * MM) / MM;
        double usual = Potting.usualRadius(4.5 * MM, 6.4 * MM) / MM;
        LADDER.equal(
                "Insert 4.5 mm, capacity at least radius (N)",
                886,
                insert(least, 0.5, 19, 70, 140).coreShearCapacity(0.6 * MPA),
                0.5);
        LADDER.equal(
                "Insert 4.5 mm, capacity at usual radius (N)",
                940,
                insert(usual, 0.5, 19, 70, 140).coreShearCapacity(0.6 * MPA),
                0.5);
        double fine = Potting.leastRadius(7 * MM, 3.2 * MM) / MM;
        LADDER.equal(
                "Insert 7 mm in fine cells, capacity (N)",
                2153,
                insert(fine, 1.0, 15, 60, 220).coreShearCapacity(1.5 * MPA),
                0.5);
    }

    @Test
    void theClosedFormFollowsTheBesselSolution() {
        InsertPullOut stiff = insert(10.02, 0.6, 20, 60, 152);
        assertEquals(1, stiff.largestShearRatioClosedForm() / stiff.largestShearRatio(), 0.01);
        InsertPullOut base = insert(10, 0.6, 20, 60, 152);
        InsertPullOut five = insert(5 / (base.decay() * MM), 0.6, 20, 60, 152);
        assertEquals(5, five.decay() * five.pottingRadius(), 1e-9);
        assertEquals(-0.037, five.largestShearRatioClosedForm() / five.largestShearRatio() - 1, 0.002);
    }

    /** Abramowitz and Stegun 1964, table 9.8 (from memory) and the small-argument limit x K1 = 1. */
    @Test
    void theBesselFunctionIsThatOfTheTables() {
        TABLE.equal("K1(1)", 0.6019072302, BesselK1.scaled(1) / Math.E, 1e-10);
        TABLE.equal("K1(2)", 0.1398658818, BesselK1.scaled(2) * Math.exp(-2), 1e-10);
        assertEquals(1, BesselK1.scaled(1e-4) * 1e-4, 2e-4);
        assertEquals(Math.sqrt(Math.PI / 2000) * (1 + 3.0 / 8000), BesselK1.scaled(1000), 1e-8);
    }

    @Test
    void anUntestedPottingIsNotPassed() {
        Core core = MaterialLibrary.shipped().get("al-honeycomb-3.1", Core.class);
        var checks = insert(10.02, 0.6, 20, 60, 152).checks(core, 500, OptionalDouble.empty(), KnockDown.NONE);
        assertInstanceOf(Check.Reserve.class, checks.get(0));
        assertInstanceOf(Check.NotChecked.class, checks.get(1));
    }
}
