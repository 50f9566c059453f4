// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
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
        refuses(
                "t.csv:4: no gauge has a reading in any of the 5 load steps",
                head + "1,0,,\n1,1,,\n1,2,,\n1,3,,\n1,0,,\n");
        refuses("does not turn at all", head + "1,0,0,0\n1,1,0,0\n1,2,0,0\n1,3,0,0\n1,0,0,0\n");
    }

    @Test
    void aPairOfWhichOneGaugeWasNeverReadIsNamedAndTheTestIsReadWithoutIt() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.unread = List.of("g1L");
        TorsionReading reading = rig.reduce();
        assertTrue(
                only(reading, Finding.Kind.UNREAD)
                        .words()
                        .contains("gauge \"g1L\" at x = 900 mm was never read: its column is empty; with it the pair is"
                                + " lost"),
                reading.findings().toString());
        assertTrue(only(reading, Finding.Kind.ONE_SIDED).words().contains("\"g1R\" is alone at x = 900 mm"));
        assertEquals(3, reading.twist().size());
        assertEquals(1, reading.all().stiffness() / SyntheticRig.TUB, 1e-5);
    }

    @Test
    void aPairThatWasNeverReadIsNamedAndTheTestIsReadWithoutIt() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.unread = List.of("g2L", "g2R");
        TorsionReading reading = rig.reduce();
        assertTrue(
                only(reading, Finding.Kind.UNREAD)
                        .words()
                        .contains("\"g2L\" and \"g2R\" at x = 1500 mm were never read"),
                reading.findings().toString());
        assertEquals(3, reading.twist().size());
        assertEquals(1, reading.all().stiffness() / SyntheticRig.TUB, 1e-5);
    }

    @Test
    void aPairReadTooSeldomIsNamedAndTheTestIsReadWithoutIt() {
        String head = "gauge, M, 900 mm, z, 500 mm, 0 mm\ngauge, N, 900 mm, z, -500 mm, 0 mm\n" + GAUGES
                + "cycle, torque [N·m], M [mm], N [mm], R [mm], L [mm]\n";
        String rows = "1,0,0,0,0,0\n1,1,0.5,-0.5,1,-1\n1,2,,-1,2,-2\n1,3,,,3,-3\n1,0,,,0,0\n";
        TorsionReading reading = TorsionReduction.of(ReadingsReader.read("t.csv", head + rows), false);
        Finding finding = only(reading, Finding.Kind.UNREAD);
        assertTrue(finding.words().contains("were read together at only 2 steps"), finding.words());
        assertEquals("t.csv:1", finding.place());
        assertEquals(1, reading.twist().size());
    }

    @Test
    void thePairOfTheHeldEndAloneTellsNoTwist() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.unread = List.of("g0L", "g1R", "g2L");
        ReadingsException e = assertThrows(ReadingsException.class, rig::reduce);
        assertTrue(
                e.getMessage().contains("only the pair at the held end, x = 2400 mm, tells an angle"), e.getMessage());
        assertTrue(e.getMessage().contains("\"g0L\" at x = 300 mm was never read"), e.getMessage());
    }

    @Test
    void aPairBehindTheHeldEndIsNotTakenForTheLoadedOne() {
        SyntheticRig rig = new SyntheticRig(1);
        String text = rig.text().replace("held station, 2400 mm", "held station, 1500 mm");
        TorsionReading reading = TorsionReduction.of(ReadingsReader.read("t.csv", text), false);
        assertTrue(reading.span().startsWith("x = 300 mm against x = 1500 mm"), reading.span());
        assertTrue(
                only(reading, Finding.Kind.SET_UP).words().contains("x = 2400 mm stands behind the held end"),
                reading.findings().toString());
        rig.unread = List.of("g0L", "g1R");
        String only = rig.text().replace("held station, 2400 mm", "held station, 1500 mm");
        ReadingsException e = assertThrows(
                ReadingsException.class, () -> TorsionReduction.of(ReadingsReader.read("t.csv", only), false));
        assertTrue(
                e.getMessage().contains("no pair tells the angle between the held end and the loaded one"),
                e.getMessage());
    }

    @Test
    void aHeldEndThatWasReadOnOneSideOnlyIsNotSubtracted() {
        SyntheticRig rig = new SyntheticRig(1);
        rig.unread = List.of("g3L");
        TorsionReading reading = rig.reduce();
        assertTrue(
                reading.findings().stream()
                        .anyMatch(f -> f.words().contains("whatever it gives is counted as twist of the tub")),
                reading.findings().toString());
        // The held end turned by 0.3 of the twist.
        assertEquals(1 / 1.3, reading.all().stiffness() / SyntheticRig.TUB, 1e-5);
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
    void gaugesExchangedBetweenStationsAreNamed() {
        SyntheticRig rig = new SyntheticRig(1);
        String text = rig.text();
        String crossed = text.replace("g0R [mm]", "held [mm]")
                .replace("g2R [mm]", "g0R [mm]")
                .replace("held [mm]", "g2R [mm]");
        Finding finding = only(reduce(crossed), Finding.Kind.DOUBTFUL_GAUGE);
        assertTrue(finding.words().contains("\"g0R\" and \"g2R\" seem to be exchanged"), finding.words());
        String pairs = crossed.replace("g0L [mm]", "held [mm]")
                .replace("g2L [mm]", "g0L [mm]")
                .replace("held [mm]", "g2L [mm]");
        finding = only(reduce(pairs), Finding.Kind.DOUBTFUL_GAUGE);
        assertTrue(
                finding.words().contains("the pairs at x = 300 mm and x = 1500 mm seem to be exchanged"),
                finding.words());
    }

    @Test
    void aColumnInAnotherUnitThanItsHeaderSaysIsNamed() {
        String text = new SyntheticRig(1).text();
        Finding finding = only(reduce(text.replace("g1R [mm]", "g1R [in]")), Finding.Kind.DOUBTFUL_GAUGE);
        assertTrue(
                finding.words()
                        .contains("gauge \"g1R\" seems to read in another unit than the column says, 25.4 times"),
                finding.words());
        assertTrue(reduce(text.replace("[mm]", "[m]")).findings().stream()
                .anyMatch(f -> f.words().contains("tubs break long before")));
        assertTrue(reduce(text.replace("[N·m]", "[kN·m]")).findings().stream()
                .anyMatch(f -> f.words().contains("is stiffer than any tub")));
    }

    @Test
    void aFactorThatNoTubExplainsIsToldWithTheUnitsThatWould() {
        assertTrue(Plausibility.against(12_000, 10_000).isEmpty());
        assertTrue(Plausibility.against(12e6, 10_000).orElseThrow().contains("as between mm and m"));
        assertTrue(Plausibility.against(400, 11_000).orElseThrow().contains("as between inches and millimetres"));
    }

    @Test
    void withTwoStationsAPairThatMovesTogetherIsAskedAbout() {
        String head = GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n";
        Finding finding = only(
                reduce(head + "1,0,0,0\n1,100,1,0.9\n1,200,2,1.8\n1,300,3,2.7\n1,0,0,0\n"),
                Finding.Kind.DOUBTFUL_GAUGE);
        assertTrue(finding.words().contains("move together: 19 times as far"), finding.words());
    }

    @Test
    void anAngleThatDoesNotFollowTheTorqueGivesNoStiffness() {
        refuses(
                "does not follow the torque",
                GAUGES
                        + "cycle, torque [N·m], R [mm], L [mm]\n1,0,0,0\n1,100,1,-1\n1,200,-1,1\n1,300,0.5,-0.5\n1,0,0,0\n");
    }

    @Test
    void stepsNumberedAsCyclesAreCalledSo() {
        says(
                "5 cycles in 5 load steps are too many",
                GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n1,0,0,0\n2,1,1,-1\n3,2,2,-2\n4,3,3,-3\n5,0,0,0\n");
        says("cycle 1.5 is no whole number", GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n1.5,0,0,0\n");
    }

    @Test
    void settingsThatCannotBeAreRefused() {
        String table = GAUGES + "cycle, load [N], R [mm], L [mm]\n1, 0, 0, 0\n";
        says("t.csv:1: arm is -600 mm; it must be greater than zero", "arm, -600 mm\n" + table);
        says("rig stiffness is 0 N·m/deg", "arm, 1 m\nrig stiffness, 0 N·m/deg\n" + table);
        says("torque uncertainty is 120 %; it must be below 100 %", "arm, 1 m\ntorque uncertainty, 120 %\n" + table);
        says("loaded where it is held", "arm, 1 m\nheld station, 1 m\nloaded station, 1000 mm\n" + table);
    }

    @Test
    void aWholeColumnInTheWrongFormIsToldShortly() {
        StringBuilder text = new StringBuilder(GAUGES + "cycle, torque [N·m], R [mm], L [mm]\n");
        for (int i = 0; i < 30; i++) {
            text.append("1, ").append(i).append(",5, 0,1, -0,1\n");
        }
        ReadingsException e =
                assertThrows(ReadingsException.class, () -> ReadingsReader.read("t.csv", text.toString()));
        assertEquals(9, e.faults().size(), e.getMessage());
        assertTrue(e.faults().getFirst().contains("7 values stand below 4 columns; are there decimal commas?"));
        assertTrue(e.faults().getLast().contains("and 22 more, the last in t.csv:33"), e.getMessage());
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

    private static TorsionReading reduce(String text) {
        return TorsionReduction.of(ReadingsReader.read("t.csv", text), false);
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
