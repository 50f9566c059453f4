// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/** What goes wrong on a shop floor, and what is said about it. */
class DoubtfulReadingsTest {
    private static final String GAUGES = "gauge, R, 300 mm, z, 500 mm, 0 mm\ngauge, L, 300 mm, z, -500 mm, 0 mm\n";

    @Test
    void anEmptyFileIsCalledEmpty() {
        says("t.csv: the file holds no readings", "# nothing yet\n\n");
    }

    @Test
    void aMissingTableIsAskedFor() {
        says("t.csv:2: the table of readings is missing", GAUGES);
    }

    @Test
    void aMissingColumnIsNamed() {
        says("t.csv:3: no column for the gauge \"L\" of line 2", GAUGES + "cycle, torque [N·m], R [mm]\n1, 0, 0\n");
        says("t.csv:3: no column says the load", GAUGES + "cycle, R [mm], L [mm]\n1, 0, 0\n");
    }

    @Test
    void aUnitOfTheWrongKindIsRefused() {
        says("in N, which is no unit of moment", GAUGES + "cycle, torque [N], R [mm], L [mm]\n1, 0, 0, 0\n");
        says("no unit of length", GAUGES + "cycle, torque [N·m], R [deg], L [mm]\n1, 0, 0, 0\n");
        says("has no unit", GAUGES + "cycle, torque [N·m], R, L [mm]\n1, 0, 0, 0\n");
    }

    @Test
    void unitsOfTheHeaderAreHonoured() {
        String rows = "1, 0, 0, 0\n1, 100, 1, -25.4\n1, 200, 2, -50.8\n1, 300, 3, -76.2\n1, 400, 4, -101.6\n";
        Readings readings = ReadingsReader.read("t.csv", GAUGES + "cycle, torque [lbf·ft], R [in], L [mm]\n" + rows);
        TorsionReading reading = TorsionReduction.of(readings, false);
        // 1.3558 N·m a pound-foot; 50.8 mm between the gauges over 1 m for each 100 lbf·ft.
        assertEquals(135.58 / 0.0508, reading.all().stiffness(), 0.1);
        assertEquals(0, reading.twist().getFirst().bodily(), 1e-12);
    }

    @Test
    void aLoadNeedsItsArm() {
        says("say its arm", GAUGES + "cycle, load [N], R [mm], L [mm]\n1, 0, 0, 0\n");
        String rows = "1, 0, 0, 0\n1, 100, 1, -1\n1, 200, 2, -2\n1, 300, 3, -3\n1, 0, 0, 0\n";
        Readings readings =
                ReadingsReader.read("t.csv", "arm, 600 mm\n" + GAUGES + "cycle, load [N], R [mm], L [mm]\n" + rows);
        assertEquals(180, readings.greatestTorque(), 1e-9);
    }

    @Test
    void tooFewReadingsAreCalledSo() {
        says("3 load steps are too few", GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n1,0,0,0\n1,1,1,-1\n1,2,2,-2\n");
    }

    @Test
    void aWordForANumberIsFoundByLine() {
        says("t.csv:5: \"1.o\" is not a number", GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n1,0,0,0\n1,1,1.o,-1\n");
    }

    @Test
    void aMisspeltSettingIsGuessed() {
        says("did you mean \"held station\"", "held staton, 2 m\n" + GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n");
    }

    @Test
    void aSingleGaugeIsLeftOutAndSaysByHowMuchItCouldLie() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.leave = "g1L";
        Finding finding = only(rig.reduce(), Finding.Kind.ONE_SIDED);
        // 0.8 mm bodily over a lever of 500 mm.
        assertTrue(finding.words().contains("by 0.0917 deg"), finding.words());
        assertTrue(finding.words().contains("\"g1R\""), finding.words());
    }

    @Test
    void aTestWithSingleGaugesOnlyIsRefused() {
        String one = "gauge, R, 300 mm, z, 500 mm, 0 mm\ncycle, torque [N·m], R [mm]\n";
        Readings readings = ReadingsReader.read("t.csv", one + "1,0,0\n1,1,1\n1,2,2\n1,3,3\n1,0,0\n");
        ReadingsException e = assertThrows(ReadingsException.class, () -> TorsionReduction.of(readings, false));
        assertTrue(e.getMessage().contains("for every millimetre the body moves"), e.getMessage());
    }

    @Test
    void gaugesThatWereNotReadOrStoodStillAreCalledSo() {
        String head = GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n";
        refuses("only 0 steps have readings", head + "1,0,,\n1,1,,\n1,2,,\n1,3,,\n1,0,,\n");
        refuses("does not turn at all", head + "1,0,0,0\n1,1,0,0\n1,2,0,0\n1,3,0,0\n1,0,0,0\n");
    }

    @Test
    void aRigSofterThanWhatWasMeasuredIsRefused() {
        String rows = "1,0,0,0\n1,100,1,-1\n1,200,2,-2\n1,300,3,-3.1\n1,0,0,0\n";
        refuses(
                "cannot be the softer",
                "rig stiffness, 1 N·m/deg\n" + GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n" + rows);
    }

    @Test
    void loadsThatNeverReturnToZeroAreTold() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.back = false;
        rig.cycles = 1;
        Finding finding = only(rig.reduce(), Finding.Kind.NO_ZERO);
        assertTrue(finding.words().contains("never returns to zero"), finding.words());
    }

    @Test
    void exchangedGaugesAreNamed() {
        for (String station : new String[] {"g0", "g1", "g2"}) {
            SyntheticRig rig = new SyntheticRig(1);
            rig.noise = 1e-5;
            rig.exchange = station;
            Finding finding = only(rig.reduce(), Finding.Kind.DOUBTFUL_GAUGE);
            assertTrue(
                    finding.words().contains("\"" + station + "L\" and \"" + station + "R\" seem to be exchanged"),
                    finding.words());
        }
    }

    @Test
    void aFlippedSignIsNamed() {
        for (String gauge : new String[] {"g0L", "g1R", "g2L"}) {
            SyntheticRig rig = new SyntheticRig(1);
            rig.noise = 1e-5;
            rig.bodily = 0.3e-3;
            rig.flip = gauge;
            Finding finding = only(rig.reduce(), Finding.Kind.DOUBTFUL_GAUGE);
            assertTrue(finding.words().contains("sign of gauge \"" + gauge + "\""), finding.words());
        }
    }

    @Test
    void gaugesInOrderRaiseNoDoubt() {
        for (int seed = 0; seed < 50; seed++) {
            SyntheticRig rig = new SyntheticRig(seed);
            rig.noise = 3e-5;
            assertTrue(
                    rig.reduce().findings().stream().noneMatch(f -> f.kind() == Finding.Kind.DOUBTFUL_GAUGE),
                    "seed " + seed);
        }
    }

    private static Finding only(TorsionReading reading, Finding.Kind kind) {
        var found = reading.findings().stream().filter(f -> f.kind() == kind).toList();
        assertEquals(1, found.size(), reading.findings().toString());
        return found.getFirst();
    }

    private static void refuses(String words, String text) {
        Readings readings = ReadingsReader.read("t.csv", text);
        ReadingsException e = assertThrows(ReadingsException.class, () -> TorsionReduction.of(readings, false));
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }

    private static void says(String words, String text) {
        ReadingsException e = assertThrows(ReadingsException.class, () -> ReadingsReader.read("t.csv", text));
        assertTrue(e.getMessage().contains(words), e.getMessage());
    }
}
