// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.Terminal.Look;
import tubwright.engine.rig.ScaleModel;

/** A small model beside its tub, in a few lines. */
public final class RigScaleSummary {
    private static final int WIDTH = 78;
    private static final String GAP = " ";

    private RigScaleSummary() {}

    /**
     * Lines to print.
     *
     * @param scale as typed, and so {@code plies} and {@code cores}
     * @param measured torsional stiffness of the model, N·m/rad
     */
    public static List<String> lines(
            Terminal terminal,
            String tub,
            String scale,
            String plies,
            String cores,
            ScaleModel model,
            Optional<Double> measured) {
        List<String> lines = new ArrayList<>();
        lines.add("");
        lines.add(terminal.look(Look.STRONG, tub) + "  as a model " + scale + ", plies " + plies + ", cores " + cores);
        lines.add("");
        TextTable table = new TextTable(true, false, false);
        table.row("", "full size", "model");
        table.row(
                "torsional stiffness, N·m/deg",
                fixed(perDegree(model.fullStiffness()), 0, GAP),
                significant(perDegree(model.modelStiffness()), 4, GAP));
        table.row("mass, kg", significant(model.fullMass(), 4, GAP), significant(model.modelMass(), 3, GAP));
        table.row("torque of equal strain, N·m", "1000", significant(model.torqueOfEqualStrain(1000), 3, GAP));
        lines.addAll(table.lines(terminal));
        lines.add("");
        lines.addAll(Wrap.lines(
                "The plain rule, stiffness as the cube of the scale, "
                        + (Math.abs(model.errorOfPlainRule()) < 1e-6
                                ? "holds: everything is to scale."
                                : "would be off by " + percent(model.errorOfPlainRule()) + " for this model."),
                "  ",
                WIDTH));
        measured.ifPresent(k -> lines.addAll(Wrap.lines(
                "A model measured at " + significant(perDegree(k), 4, GAP) + " N·m/deg speaks for "
                        + fixed(perDegree(model.fullSize(k)), 0, GAP) + " N·m/deg at full size.",
                "  ",
                WIDTH)));
        lines.add("");
        lines.addAll(Wrap.lines(RunAnswer.CAUTION, "  ", WIDTH));
        return lines;
    }
}
