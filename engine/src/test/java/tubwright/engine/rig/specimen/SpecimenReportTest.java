// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.SandwichBeam;

/** Panels and coupons whose true values are known. */
class SpecimenReportTest {
    private static final Laminate PANEL = panel();

    private static Laminate panel() {
        MaterialLibrary library = MaterialLibrary.shipped();
        Layer cloth = Layer.ofDegrees(library.find("pw-t650-976").orElseThrow(), 0);
        Layer core = new Layer(library.find("al-honeycomb-3.1-small-cell").orElseThrow(), 0.02, 0);
        return Laminate.of(cloth, cloth, core, cloth, cloth);
    }

    private static String bend(String arrangement, double[] spans, double noise) {
        StringBuilder text = new StringBuilder("test, panel bend\narrangement, " + arrangement + "\n");
        text.append("rig stiffness, 8 kN/mm, 0.4 kN/mm\n");
        for (double span : spans) {
            text.append(String.format(Locale.ROOT, "specimen, L%.0f, %.0f mm, 200 mm%n", 1000 * span, 1000 * span));
        }
        text.append("specimen, load [N], deflection [mm]\n");
        SandwichBeam beam = PanelReport.beam(PANEL, 0.2).orElseThrow();
        Arrangement how = arrangement.equals("third-point") ? Arrangement.THIRD_POINT : Arrangement.THREE_POINT;
        Random random = new Random(11);
        for (double span : spans) {
            double flexibility =
                    how.bendingFlexibility(span, beam.bending()) + how.shearFlexibility(span, beam.shear()) + 1 / 8e6;
            for (int i = 0; i <= 20; i++) {
                double load = 200.0 * i;
                text.append(String.format(
                        Locale.ROOT,
                        "L%.0f, %.1f, %.6f%n",
                        1000 * span,
                        load,
                        1000 * (load * flexibility + noise * random.nextGaussian())));
            }
        }
        return text.toString();
    }

    @Test
    void theBeamTableIsThatOfTheHandbooks() {
        // Timoshenko & Young, tables of beams: middle load L³/48, third points 23 L³/1296, quarter points 11 L³/768,
        // for
        // the whole load 1; moments L/4, L/6, L/8.
        assertEquals(1 / 48.0, Arrangement.THREE_POINT.bendingFlexibility(1, 1), 1e-15);
        assertEquals(23 / 1296.0, Arrangement.THIRD_POINT.bendingFlexibility(1, 1), 1e-15);
        assertEquals(11 / 768.0, Arrangement.QUARTER_POINT.bendingFlexibility(1, 1), 1e-15);
        // By integration of the moment line: the movement in the middle of two loads 1/2 at a from the supports.
        for (Arrangement each : List.of(Arrangement.THIRD_POINT, Arrangement.QUARTER_POINT)) {
            double a = 2 * each.momentArm(1);
            double sum = 0;
            int n = 20_000;
            for (int i = 0; i < n; i++) {
                double x = (i + 0.5) / n;
                double moment = 0.5 * Math.min(Math.min(x, a), 1 - x);
                sum += moment * 0.5 * Math.min(x, 1 - x) / n;
            }
            assertEquals(sum, each.bendingFlexibility(1, 1), 1e-8, each.word());
            assertEquals(a / 2, each.shearFlexibility(1, 1), 1e-15);
        }
    }

    @Test
    void panelsOnSeveralSpansGiveBackBendingAndShear() {
        for (String arrangement : List.of("three-point", "third-point")) {
            double[] spans = {0.25, 0.4, 0.6, 0.8};
            PanelReport report =
                    PanelReport.of(SpecimenReader.read("p.csv", bend(arrangement, spans, 0)), Optional.of(PANEL));
            SandwichBeam beam = PanelReport.beam(PANEL, 1).orElseThrow();
            assertEquals(1, report.split().orElseThrow().bending() / beam.bending(), 1e-5, arrangement);
            assertEquals(1, report.split().orElseThrow().shear() / beam.shear(), 1e-5, arrangement);
            report.panels().forEach(p -> assertEquals(1, p.ratio(), 1e-5, p.name()));
            // The rig's own movement counts most where the panel is shortest.
            assertTrue(report.panels().getFirst().stiffness().correction()
                    > report.panels().getLast().stiffness().correction());
        }
    }

    @Test
    void stressesAtFailureBalanceTheLoad() {
        PanelReport.Panel panel = PanelReport.of(
                        SpecimenReader.read("p.csv", bend("three-point", new double[] {0.4}, 0)), Optional.of(PANEL))
                .panels()
                .getFirst();
        SandwichBeam beam = PanelReport.beam(PANEL, 0.2).orElseThrow();
        // Moment P L/4 by the couple of the skins; shear P/2 on width times distance of the skins (Allen 1969).
        assertEquals(4000 * 0.4 / 4, panel.skinStress() * 0.2 * beam.outer().thickness() * beam.depth(), 1e-6);
        assertEquals(2000, panel.coreStress() * 0.2 * beam.depth(), 1e-6);
    }

    @Test
    void oneSpanAloneTellsNothingApartAndSaysSo() {
        PanelReport report = PanelReport.of(
                SpecimenReader.read("p.csv", bend("three-point", new double[] {0.4}, 0)), Optional.empty());
        assertTrue(report.split().isEmpty());
        assertTrue(report.whyNoSplit().contains("at least three tests"), report.whyNoSplit());
        assertTrue(Double.isNaN(report.panels().getFirst().predicted()));
    }

    @Test
    void couponsGiveModulusStrengthAndTheirBasis() {
        double[] moduli = {60e9, 62e9, 61e9, 59e9, 63e9, 61e9};
        StringBuilder text = new StringBuilder("test, coupon tension\nmaterial, pw-t650-976\n");
        for (int i = 0; i < moduli.length; i++) {
            text.append("specimen, c").append(i).append(", 25 mm, 2 mm\n");
        }
        text.append("specimen, load [kN], strain [%]\n");
        for (int i = 0; i < moduli.length; i++) {
            for (int step = 0; step <= 20; step++) {
                double strain = 0.0005 * step;
                text.append(String.format(
                        Locale.ROOT, "c%d, %.6f, %.3f%n", i, moduli[i] * strain * 50e-6 / 1000, 100 * strain));
            }
        }
        CouponReport report = CouponReport.of(SpecimenReader.read("c.csv", text.toString()));
        assertEquals(61e9, report.modulus().orElseThrow().mean(), 1e3);
        // s by hand: squares of −1, 1, 0, −2, 2, 0 over 5.
        assertEquals(Math.sqrt(2) * 1e9, report.modulus().orElseThrow().deviation(), 1e3);
        assertEquals(0.01 * 63e9, report.coupons().get(4).strength(), 1e3);
        // CMH-17 table of one-sided B factors, n = 6: 3.007 (from memory).
        assertEquals(
                610e6 - 3.007 * 0.01 * Math.sqrt(2) * 1e9,
                report.strength().orElseThrow().bBasis(),
                0.03e6);
    }

    @Test
    void aPunchTellsTheFirstSkinFromTheSecond() {
        String text = """
                test, perimeter shear
                specimen, s1, 25 mm, 0.9 mm
                specimen, load [N], deflection [mm]
                s1, 0, 0
                s1, 2000, 0.5
                s1, 4100, 1.0
                s1, 2500, 1.4
                s1, 3600, 4.0
                s1, 4900, 8.0
                s1, 1000, 9.0
                """;
        CouponReport report = CouponReport.of(SpecimenReader.read("s.csv", text));
        double area = Math.PI * 0.025 * 0.0009;
        assertEquals(4100 / area, report.coupons().getFirst().strength(), 1e-6);
        assertEquals(4900 / area, report.coupons().getFirst().last(), 1e-6);
        assertTrue(report.strength().isEmpty(), "one specimen has no scatter");
    }

    @Test
    void everythingWrongIsToldAtOnceWithItsLine() {
        String text = """
                test, panel band
                rig stifness, 8 kN/mm
                specimen, a, 400 mm, 200 kg
                specimen, load [N], deflection [N]
                b, x, 1
                """;
        String told = assertThrows(ReadingsException.class, () -> SpecimenReader.read("p.csv", text))
                .getMessage();
        assertTrue(told.contains("p.csv:1: \"panel band\" is no kind of test"), told);
        assertTrue(told.contains("p.csv:2: \"rig stifness\" is no setting; did you mean \"rig stiffness\"?"), told);
        String second = text.replace("panel band", "panel bend").replace("rig stifness", "rig stiffness");
        String units = assertThrows(ReadingsException.class, () -> SpecimenReader.read("p.csv", second))
                .getMessage();
        assertTrue(units.contains("p.csv:4: the column \"deflection\" is in N"), units);
        String third = second.replace("deflection [N]", "deflection [mm]");
        String rows = assertThrows(ReadingsException.class, () -> SpecimenReader.read("p.csv", third))
                .getMessage();
        assertTrue(rows.contains("p.csv:5: there is no specimen \"b\""), rows);
        assertTrue(rows.contains("p.csv:3: width: "), rows);
        assertTrue(rows.contains("p.csv:3: specimen \"a\" has 0 readings"), rows);
        assertFalse(rows.contains("Exception"));
        assertThrows(ReadingsException.class, () -> SpecimenReader.read("p.csv", "# nothing\n"));
    }
}
