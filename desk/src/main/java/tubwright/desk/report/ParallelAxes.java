// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import static tubwright.desk.text.Figures.NARROW_SPACE;
import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.Variation;

/** Points of a study as lines across upright axes, one for each thing varied and each read. */
final class ParallelAxes {
    private static final double WIDTH = 860;
    private static final double TOP = 60;
    private static final double BOTTOM = 380;
    private static final double SIDE = 60;
    private static final int MOST = 400;
    private static final int LOOKS = 4;

    private ParallelAxes() {}

    /** One upright. */
    private record Upright(String name, String unit, List<double[]> values) {}

    static String draw(StudyAnswer answer) {
        List<Upright> uprights = new ArrayList<>();
        List<Findings.OfVariant> variants = answer.findings().variants();
        List<Variation> variations = answer.plan().variations();
        for (int d = 0; d < variations.size(); d++) {
            int at = d;
            uprights.add(new Upright(
                    variations.get(d).name(),
                    variations.get(d).unit(),
                    variants.stream()
                            .map(v -> v.points().stream()
                                    .mapToDouble(p -> variations.get(at).number(p.shares()[at]))
                                    .toArray())
                            .toList()));
        }
        answer.columns().forEach(c -> uprights.add(new Upright(c.name(), c.unit(), c.byVariant())));
        uprights.removeIf(u -> u.values.stream().flatMapToDouble(Arrays::stream).noneMatch(Double::isFinite));
        Svg svg = new Svg(
                WIDTH, BOTTOM + 40, answer.plan().name() + ": every design a line across what is varied and read");
        Axis[] axes = new Axis[uprights.size()];
        double[] x = new double[uprights.size()];
        for (int u = 0; u < axes.length; u++) {
            double[] all = uprights.get(u).values.stream()
                    .flatMapToDouble(Arrays::stream)
                    .filter(Double::isFinite)
                    .sorted()
                    .toArray();
            double most = all[all.length - 1];
            axes[u] = Axis.exact(all[0], most > all[0] ? most : all[0] + Math.max(1e-9, Math.abs(all[0])), BOTTOM, TOP);
            x[u] = axes.length == 1 ? WIDTH / 2 : SIDE + u * (WIDTH - 2 * SIDE) / (axes.length - 1);
        }
        for (int v = 0; v < variants.size(); v++) {
            List<Findings.OfPoint> points = variants.get(v).points();
            for (int p = 0; p < Math.min(MOST, points.size()); p++) {
                double[] y = new double[axes.length];
                for (int u = 0; u < axes.length; u++) {
                    y[u] = axes[u].at(uprights.get(u).values.get(v)[p]);
                }
                boolean front = variants.get(v).front().contains(p);
                svg.path("curve " + (front ? "" : "thin ") + "s" + (front ? (v + 1) % LOOKS : v % LOOKS), x, y);
            }
        }
        for (int u = 0; u < axes.length; u++) {
            svg.line("zero", x[u], TOP, x[u], BOTTOM);
            svg.text("figure middle", x[u], TOP - 8, round(axes[u].high()));
            svg.text("figure middle", x[u], BOTTOM + 16, round(axes[u].low()));
            svg.text("axis middle", x[u], BOTTOM + 32, uprights.get(u).unit.equals("1") ? "" : uprights.get(u).unit);
            String name = uprights.get(u).name;
            double height = u % 2 == 0 ? TOP - 40 : TOP - 26;
            svg.text("name middle", x[u], height, name.length() > 26 ? name.substring(0, 25) + "…" : name);
        }
        return svg.done();
    }

    private static String round(double value) {
        int decimals = value == 0 ? 0 : Math.clamp(2 - (long) Math.floor(Math.log10(Math.abs(value))), 0, 6);
        return fixed(value, decimals, NARROW_SPACE);
    }
}
