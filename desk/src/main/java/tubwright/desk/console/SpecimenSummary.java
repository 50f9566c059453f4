// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.plusMinus;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.SpecimenAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.specimen.CouponReport;
import tubwright.engine.rig.specimen.PanelReport;
import tubwright.engine.rig.specimen.SpecimenTest;
import tubwright.engine.rig.statistics.Sample;

/** Tested panels or coupons in one screenful, with the lines for a material of the design. */
public final class SpecimenSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private SpecimenSummary() {}

    /** Lines to print. */
    public static List<String> lines(Terminal terminal, SpecimenAnswer answer) {
        SpecimenTest test = answer.test();
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, test.kind().word()) + "  " + test.source() + ", "
                + test.curves().size() + (test.curves().size() == 1 ? " specimen" : " specimens"));
        lines.add("");
        answer.panels().ifPresent(p -> panels(terminal, test, p, lines));
        answer.coupons().ifPresent(c -> coupons(terminal, test, c, lines));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }

    private static void panels(Terminal terminal, SpecimenTest test, PanelReport report, List<String> lines) {
        boolean predicted = report.panels().stream().anyMatch(p -> Double.isFinite(p.predicted()));
        TextTable table = new TextTable(true, false, false, false, false, false, false);
        table.row(
                "panel",
                "span",
                "stiffness N/mm",
                "rig was",
                "greatest load",
                predicted ? "predicted/measured" : "",
                predicted ? "skin, core then" : "");
        for (PanelReport.Panel each : report.panels()) {
            table.row(
                    each.name(),
                    fixed(1000 * each.span(), 0, GAP) + " mm",
                    plusMinus(
                            each.stiffness().stiffness() / 1000,
                            each.stiffness().uncertainty().expanded(0.95) / 1000,
                            GAP),
                    percent(1 - each.stiffness().asRead() / each.stiffness().stiffness()),
                    significant(each.greatestLoad(), 4, GAP) + " N",
                    predicted ? fixed(each.ratio(), 2, GAP) : "",
                    predicted
                            ? significant(each.skinStress() / 1e6, 3, GAP) + ", "
                                    + significant(each.coreStress() / 1e6, 3, GAP) + " MPa"
                            : "");
            if (each.stiffness().mostlyRig()) {
                lines.addAll(Wrap.lines(
                        each.name()
                                + ": more of the movement was the rig's than the panel's; measure beside the panel.",
                        "  ! ",
                        WIDTH));
            }
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        report.split()
                .ifPresentOrElse(
                        s -> {
                            lines.add("  bending stiffness " + plusMinus(s.bending(), 2 * s.bendingError(), GAP)
                                    + " N·m² for each metre of width");
                            lines.add(
                                    "  shear stiffness   " + plusMinus(s.shear() / 1000, 2 * s.shearError() / 1000, GAP)
                                            + " kN for each metre of width");
                        },
                        () -> lines.addAll(Wrap.lines(report.whyNoSplit() + ".", "  ", WIDTH)));
    }

    private static void coupons(Terminal terminal, SpecimenTest test, CouponReport report, List<String> lines) {
        boolean tension = test.kind() == SpecimenTest.Kind.COUPON_TENSION;
        TextTable table = new TextTable(true, false, false);
        table.row("specimen", tension ? "modulus" : "first skin", tension ? "strength" : "greatest");
        for (CouponReport.Coupon each : report.coupons()) {
            table.row(
                    each.name(),
                    tension
                            ? significant(each.modulus() / 1e9, 3, GAP) + " GPa"
                            : significant(each.strength() / 1e6, 3, GAP) + " MPa",
                    significant(each.last() / 1e6, 3, GAP) + " MPa");
        }
        lines.addAll(table.lines(terminal));
        lines.add("");
        report.modulus().ifPresent(s -> lines.add("  modulus   " + sample(s, 1e9, "GPa")));
        report.strength().ifPresent(s -> lines.add("  strength  " + sample(s, 1e6, "MPa")));
        if (report.strength().isEmpty()) {
            lines.add("  one specimen has no scatter: test more");
        } else {
            int n = report.coupons().size();
            lines.addAll(Wrap.lines(
                    "B basis: nine of ten exceed it with 95 % confidence, if the values are normal."
                            + (n < CouponReport.ALLOWABLE
                                    ? " Of " + n + " specimens it is no allowable yet: " + CouponReport.ALLOWABLE
                                            + " or more from several batches make one."
                                    : ""),
                    "  ",
                    WIDTH));
            if (tension) {
                lines.add("");
                lines.add("  for the material in the design:");
                lines.add("    source: " + test.source() + ", mean of " + n);
                lines.add("    properties: {E1: "
                        + significant(report.modulus().orElseThrow().mean() / 1e9, 3, "") + " GPa, XT: "
                        + significant(report.strength().orElseThrow().mean() / 1e6, 3, "") + " MPa}");
            }
        }
    }

    private static String sample(Sample s, double unit, String name) {
        return significant(s.mean() / unit, 3, GAP) + " " + name + ", scatter " + percent(s.deviation() / s.mean())
                + ", B basis " + significant(s.bBasis() / unit, 3, GAP) + " " + name;
    }
}
