// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Bond lines after Volkersen, Goland and Reissner, Hart-Smith; all values computed apart from the published formulas. */
class BondedJointTest {
    private static final Ladder LADDER = Ladder.of(Family.JOINTS, "Volkersen 1938", Mark.COMPUTED);
    private static final Ladder SINGLE =
            Ladder.of(Family.JOINTS, "Goland and Reissner 1944; Hart-Smith 1973, NASA CR-112236", Mark.COMPUTED);
    private static final Ladder DOUBLE = Ladder.of(Family.JOINTS, "Hart-Smith 1973, NASA CR-112235", Mark.COMPUTED);

    private static final double MM = 1e-3;
    private static final double MPA = 1e6;
    private static final BondLine BOND = new BondLine(0.2 * MM, 800 * MPA, 2200 * MPA);

    @Test
    void shearPeaksAtBothEndsOfAnAluminiumLap() {
        Adherend sheet = new Adherend(1.6 * MM, 70e9, 0.33);
        Volkersen half = new Volkersen(sheet, sheet, BOND, 12.5 * MM);
        LADDER.equal(
                "Lap of aluminium 1.6 mm, 12.5 mm long, length parameter", 3.3408, half.lengthParameter(), 0.00005);
        LADDER.equal("Lap of aluminium 1.6 mm, 12.5 mm long, peak shear", 1.7930, half.peakRatio(), 0.00005);
        LADDER.equal("Lap of aluminium 1.6 mm, 12.5 mm long, least shear", 0.6517, half.shearRatio(0), 0.00005);
        Volkersen full = new Volkersen(sheet, sheet, BOND, 25 * MM);
        LADDER.equal("Lap of aluminium 1.6 mm, 25 mm long, length parameter", 6.6815, full.lengthParameter(), 0.00005);
        LADDER.equal("Lap of aluminium 1.6 mm, 25 mm long, peak shear", 3.3492, full.peakRatio(), 0.00005);
        LADDER.equal("Lap of aluminium 1.6 mm, 25 mm long, least shear", 0.2369, full.shearRatio(0), 0.00005);
    }

    @Test
    void shearPeaksHigherAtTheEndOfTheStifferSheet() {
        Volkersen lap = new Volkersen(new Adherend(2 * MM, 60e9, 0.3), new Adherend(3 * MM, 70e9, 0.33), BOND, 25 * MM);
        LADDER.equal("Lap of carbon and aluminium, length parameter", 5.7217, lap.lengthParameter(), 0.00005);
        LADDER.equal("Lap of carbon and aluminium, peak shear", 3.6548, lap.peakRatio(), 0.00005);
        LADDER.equal(
                "Lap of carbon and aluminium, other end",
                2.1045,
                Math.min(lap.shearRatio(0.5), lap.shearRatio(-0.5)),
                0.00005);
        assertEquals(1, mean(lap), 1e-6);
    }

    private static double mean(Volkersen lap) {
        double sum = 0;
        int n = 20000;
        for (int i = 0; i < n; i++) {
            sum += lap.shearRatio((i + 0.5) / n - 0.5);
        }
        return sum / n;
    }

    @Test
    void theOffsetLoadBendsASingleLap() {
        SingleLap lap = new SingleLap(new Adherend(1.6 * MM, 70e9, 0.33), BOND, 25 * MM);
        double[][] rows = {
            {50, .6522, .6296, 2, 10.40, 10.21, .547, 13.30, 11.41},
            {100, .5729, .5375, 4, 19.45, 18.84, 1.327, 23.93, 19.47},
            {200, .4926, .4398, 8, 36.16, 34.36, 3.127, 42.53, 31.87},
            {400, .4177, .3430, 16, 67.21, 62.11, 7.138, 75.44, 49.71}
        };
        for (double[] row : rows) {
            double p = row[0] / MM;
            double k = lap.momentFactorGolandReissner(p);
            double hart = lap.momentFactorHartSmith(p);
            SINGLE.equal("Single lap at " + row[0] + " N/mm, moment factor of Goland and Reissner", row[1], k, 0.00005);
            SINGLE.equal("Single lap at " + row[0] + " N/mm, moment factor of Hart-Smith", row[2], hart, 0.00005);
            assertEquals(row[3], lap.meanShear(p) / MPA, 1e-9);
            SINGLE.equal(
                    "Single lap at " + row[0] + " N/mm, peak shear by Goland and Reissner (MPa)",
                    row[4],
                    lap.peakShear(p, k) / MPA,
                    0.0051);
            SINGLE.equal(
                    "Single lap at " + row[0] + " N/mm, peak shear by Hart-Smith (MPa)",
                    row[5],
                    lap.peakShear(p, hart) / MPA,
                    0.0051);
            SINGLE.equal(
                    "Single lap at " + row[0] + " N/mm, shear in the middle (MPa)",
                    row[6],
                    lap.shear(p, k, 0) / MPA,
                    0.00051);
            SINGLE.equal(
                    "Single lap at " + row[0] + " N/mm, peak peel by Goland and Reissner (MPa)",
                    row[7],
                    lap.peakPeel(p, k) / MPA,
                    0.0051);
            SINGLE.equal(
                    "Single lap at " + row[0] + " N/mm, peel by the moment of Hart-Smith (MPa)",
                    row[8],
                    lap.peelByMoment(p, hart) / MPA,
                    0.0051);
        }
        SINGLE.equal(
                "Single lap at 200 N/mm, stress of the sheet (MPa)",
                309.7,
                lap.sheetStress(200 / MM, lap.momentFactorGolandReissner(200 / MM)) / MPA,
                0.05);
    }

    @Test
    void shearCarriesTheLoadAndPeelCarriesNone() {
        SingleLap lap = new SingleLap(new Adherend(1.6 * MM, 70e9, 0.33), BOND, 25 * MM);
        double p = 200 / MM;
        double k = lap.momentFactorGolandReissner(p);
        int n = 20000;
        double shear = 0;
        double peel = 0;
        for (int i = 0; i < n; i++) {
            double x = ((i + 0.5) / n - 0.5) * lap.overlap();
            shear += lap.shear(p, k, x) * lap.overlap() / n;
            peel += lap.peel(p, k, x) * lap.overlap() / n;
        }
        assertEquals(p, shear, 1e-5 * p);
        // What goes up at the ends comes down between, but for the shear force V0 at both ends of the overlap.
        assertTrue(Math.abs(peel) < 0.1 * p, "resultant of peel " + peel);
    }

    @Test
    void aPlasticDoubleLapBearsFourTimesTheElastic() {
        Adherend outer = new Adherend(1.5 * MM, 60e9, 0.3);
        DoubleLap lap = new DoubleLap(outer, new Adherend(3 * MM, 60e9, 0.3), 0.125 * MM, 40 * MPA, 0.05, 0.45);
        DOUBLE.equal("Double lap, plastic strength (N/mm)", 1849, lap.strengthPerWidth() * MM, 0.5);
        DOUBLE.equal("Double lap, elastic strength (N/mm)", 424, lap.elasticStrengthPerWidth() * MM, 0.5);
        DOUBLE.equal("Double lap, decay (1/mm)", 0.377, lap.decay() * MM, 0.0005);
        DOUBLE.equal("Double lap, design overlap (mm)", 28.4, lap.designOverlap(lap.strengthPerWidth()) / MM, 0.05);
    }

    @Test
    void anUnbalancedDoubleLapFailsAtItsSofterSide() {
        DoubleLap lap = new DoubleLap(
                new Adherend(1 * MM, 60e9, 0.3), new Adherend(4 * MM, 70e9, 0.33), 0.125 * MM, 40 * MPA, 0.05, 0.45);
        DOUBLE.equal("Unbalanced double lap, inner end (N/mm)", 2978, lap.strengthAtInnerEnd() * MM, 0.5);
        DOUBLE.equal("Unbalanced double lap, outer end (N/mm)", 1276, lap.strengthAtOuterEnd() * MM, 0.5);
        DOUBLE.equal("Unbalanced double lap, strength (N/mm)", 1276, lap.strengthPerWidth() * MM, 0.5);
    }
}
