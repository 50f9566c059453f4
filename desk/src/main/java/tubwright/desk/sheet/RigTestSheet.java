// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Conversions.perDegree;
import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.RigPlanAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.console.RigPlanWords;
import tubwright.engine.rig.plan.GaugePair;
import tubwright.engine.rig.plan.TestPlan;

/** The sheet that goes to the torsion rig: how to hold, how far to load, where gauges stand, what they should read. */
public final class RigTestSheet {
    private static final String GAP = " ";
    private static final float DRAWING = 190;

    private RigTestSheet() {}

    /** The PDF file. */
    public static byte[] write(RigPlanAnswer answer) {
        TestPlan plan = answer.plan();
        String foot = plan.tub() + ", " + answer.variant() + "   -   Tubwright " + answer.version() + "   -   "
                + answer.stamp();
        try (Paper paper = new Paper(plan.tub() + ": torsion test", foot)) {
            paper.title(plan.tub() + ": torsion test");
            paper.paragraph("Case " + plan.loading().name() + ". Held at: "
                    + String.join(
                            ", ",
                            plan.loading().hold().stream()
                                    .map(h -> h.hardpoint())
                                    .toList())
                    + ". Loaded by a couple at: "
                    + String.join(", ", plan.loading().loaded()) + ".");
            paper.heading("Before you load");
            paper.paragraph(RigPlanWords.CAUTION);
            paper.paragraph(RigPlanWords.strength(plan));
            paper.paragraph(RigPlanWords.restraint(plan.restraint()));
            paper.paragraph(RunAnswer.CAUTION);
            paper.heading("What to expect");
            paper.paragraph("Torsional stiffness " + significant(perDegree(plan.stiffness()), 4, GAP)
                    + " N·m/deg; at " + significant(plan.torque(), 3, GAP) + " N·m the ends turn "
                    + fixed(Math.toDegrees(plan.twist()), 3, GAP)
                    + "° against each other. With these gauges the stiffness will be known to ± "
                    + percent(plan.expanded() / plan.stiffness())
                    + " (95 %). A rig that is not read at the held end needs "
                    + significant(perDegree(plan.rigNeeded()), 2, GAP) + " N·m/deg or more.");
            gauges(paper, plan);
            readings(paper, plan);
            return paper.done();
        }
    }

    private static void gauges(Paper paper, TestPlan plan) {
        paper.heading("Where the gauges stand");
        drawing(paper, plan);
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("pair", "station x, mm", "apart, mm", "height z, mm", "each moves, mm", "why there"));
        for (int i = 0; i < plan.pairs().size(); i++) {
            GaugePair pair = plan.pairs().get(i);
            rows.add(List.of(
                    Integer.toString(i + 1),
                    fixed(1000 * pair.station(), 0, GAP),
                    fixed(1000 * pair.spacing(), 0, GAP),
                    fixed(1000 * pair.height(), 0, GAP),
                    pair.angle() == 0 ? "little" : fixed(1000 * pair.movement(), 2, GAP),
                    pair.reason()));
        }
        paper.table(new float[] {0.07f, 0.14f, 0.12f, 0.14f, 0.15f, 0.38f}, rows, 16);
        paper.paragraph(
                "Both gauges of a pair stand vertical, one on either side, the same distance from the middle; a"
                        + " single gauge cannot tell turning from bodily motion. Measure and write down where they really stand.");
    }

    /** Seen from the side and from above, on one scale. */
    private static void drawing(Paper paper, TestPlan plan) {
        List<double[]> outline = plan.outline();
        double first = outline.getFirst()[0];
        double last = outline.getLast()[0];
        double low = outline.stream().mapToDouble(r -> r[1]).min().orElse(0);
        double high = outline.stream().mapToDouble(r -> r[2]).max().orElse(1);
        double half =
                plan.pairs().stream().mapToDouble(GaugePair::spacing).max().orElse(1) / 2;
        float bottom = paper.room(DRAWING + 34) + 14;
        double scale = Math.min(Paper.WIDTH / (last - first), DRAWING / (high - low + 2 * half + 0.15));
        float left = Paper.MARGIN + (float) (Paper.WIDTH - scale * (last - first)) / 2;
        float side = bottom + (float) (scale * (2 * half + 0.1)) + 14;
        float above = bottom + (float) (scale * half) + 10;
        for (int i = 0; i + 1 < outline.size(); i++) {
            double[] a = outline.get(i);
            double[] b = outline.get(i + 1);
            float xa = left + (float) (scale * (a[0] - first));
            float xb = left + (float) (scale * (b[0] - first));
            for (int edge = 1; edge <= 2; edge++) {
                paper.line(
                        xa,
                        side + (float) (scale * (a[edge] - low)),
                        xb,
                        side + (float) (scale * (b[edge] - low)),
                        0.9f,
                        0.2f);
            }
            for (int sign = -1; sign <= 1; sign += 2) {
                paper.line(
                        xa,
                        above + (float) (sign * scale * a[3]),
                        xb,
                        above + (float) (sign * scale * b[3]),
                        0.9f,
                        0.2f);
            }
        }
        for (int i = 0; i < plan.pairs().size(); i++) {
            GaugePair pair = plan.pairs().get(i);
            float x = left + (float) (scale * (Math.clamp(pair.station(), first, last) - first));
            float reach = (float) (scale * pair.spacing() / 2);
            paper.line(x, above - reach, x, above + reach, 0.5f, 0.45f);
            paper.dot(x, above - reach, 2.4f);
            paper.dot(x, above + reach, 2.4f);
            paper.line(x, side - 2, x, side + (float) (scale * (high - low)) + 2, 0.4f, 0.6f);
            paper.label(x, side + (float) (scale * (high - low)) + 5, Integer.toString(i + 1));
        }
        paper.label(Paper.MARGIN + 26, side - 4, "from the side");
        paper.label(Paper.MARGIN + 24, bottom - 4, "from above");
    }

    private static void readings(Paper paper, TestPlan plan) {
        paper.page();
        paper.heading("Readings, mm (expected by turning alone, in brackets; bodily motion comes on top)");
        paper.paragraph(
                "Cycle 1 is the bed-in. Arm " + fixed(1000 * plan.means().arm(), 0, GAP)
                        + " mm. Write 0 at the first line of each cycle or note what the gauges show.");
        int pairs = plan.pairs().size();
        List<List<String>> rows = new ArrayList<>();
        List<String> head = new ArrayList<>(List.of("cycle", "load, N"));
        float[] shares = new float[2 + 2 * pairs];
        shares[0] = 0.06f;
        shares[1] = 0.1f;
        for (int i = 0; i < pairs; i++) {
            for (String side : List.of("R", "L")) {
                head.add((i + 1) + side);
                shares[head.size() - 1] = 0.84f / (2 * pairs);
            }
        }
        rows.add(head);
        double[] torques = plan.torques();
        for (int cycle = 1; cycle <= plan.means().cycles() + 1; cycle++) {
            for (int i = 0; i < 2 * torques.length - 1; i++) {
                double torque = torques[i < torques.length ? i : 2 * torques.length - 2 - i];
                List<String> row = new ArrayList<>();
                row.add(Integer.toString(cycle));
                row.add(fixed(torque / plan.means().arm(), 0, GAP));
                for (GaugePair pair : plan.pairs()) {
                    double move = 1000 * pair.angle() * torque / plan.torque() * pair.spacing() / 2;
                    for (int sign : new int[] {1, -1}) {
                        row.add(cycle == 1 && pair.angle() != 0 ? "(" + fixed(sign * move, 2, GAP) + ")" : "");
                    }
                }
                rows.add(row);
            }
        }
        paper.table(shares, rows, 15);
        paper.paragraph(
                "Measured by:                                              Date:                              Signed:");
    }
}
