// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tubwright.engine.quantity.QuantityFormat;
import tubwright.engine.rig.statistics.LinearFit;
import tubwright.engine.rig.statistics.Uncertainty;

/**
 * Readings far from what their own gauge says at the other steps: studentised residuals of a smooth curve for each
 * branch, judged at 1 % for the whole table of the gauge (Bonferroni; Cook & Weisberg 1982).
 */
final class Outliers {
    private static final double CHANCE = 0.01;
    private static final int MOST = 5;

    private Outliers() {}

    static List<Finding> of(Readings readings) {
        List<Finding> result = new ArrayList<>();
        for (int g = 0; g < readings.gauges().size(); g++) {
            Set<Integer> named = new HashSet<>();
            while (named.size() < MOST && search(readings, g, named, result)) {
                // Each round names one and looks again without it: two outliers can hide each other.
            }
        }
        return result;
    }

    private static boolean search(Readings readings, int gauge, Set<Integer> named, List<Finding> result) {
        List<Step> steps = readings.steps();
        List<Integer> cycles = readings.cycles();
        double most = readings.greatestTorque();
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            if (!named.contains(i) && Double.isFinite(steps.get(i).readings()[gauge])) {
                rows.add(i);
            }
        }
        boolean down = rows.stream().filter(i -> steps.get(i).unloading()).count() > 2;
        int unknowns = cycles.size() + 2 + (down ? 2 : 0);
        if (rows.size() < unknowns + 4) {
            return false;
        }
        double[][] design = new double[rows.size()][unknowns];
        double[] right = new double[rows.size()];
        for (int r = 0; r < rows.size(); r++) {
            Step step = steps.get(rows.get(r));
            double t = step.torque() / most;
            design[r][0] = t;
            design[r][1] = t * t;
            if (down && step.unloading()) {
                design[r][2] = 1;
                design[r][3] = t;
            }
            design[r][unknowns - cycles.size() + cycles.indexOf(step.cycle())] = 1;
            right[r] = step.readings()[gauge];
        }
        LinearFit fit;
        try {
            fit = LinearFit.of(design, right);
        } catch (tubwright.engine.rig.statistics.IllPosedException e) {
            return false;
        }
        double limit = Uncertainty.studentFactor(1 - CHANCE / rows.size(), fit.degreesOfFreedom() - 1.0);
        double[] studentised = fit.studentised();
        int worst = 0;
        double range = 0;
        for (int r = 0; r < rows.size(); r++) {
            worst = Math.abs(studentised[r]) > Math.abs(studentised[worst]) ? r : worst;
            range = Math.max(range, Math.abs(right[r] - right[0]));
        }
        // Below a thousandth of the range a departure is rounding, not a slip, however straight the rest.
        double away = fit.residuals()[worst] / (1 - fit.leverages()[worst]);
        if (!(Math.abs(studentised[worst]) > limit) || Math.abs(away) < 1e-3 * range) {
            return false;
        }
        Step step = steps.get(rows.get(worst));
        named.add(rows.get(worst));
        Gauge read = readings.gauges().get(gauge);
        boolean angle = read.sense() == Gauge.Sense.ANGLE;
        double scale = angle ? 180 / Math.PI : 1000;
        String unit = angle ? " deg" : " mm";
        result.add(new Finding(
                Finding.Kind.OUTLIER,
                readings.source() + ":" + step.line(),
                "gauge \"" + read.name() + "\" reads " + QuantityFormat.significant(right[worst] * scale, 4) + unit
                        + " where its other readings say "
                        + QuantityFormat.significant((right[worst] - away) * scale, 4) + unit
                        + "; it is kept, and the answer without this step stands beside the answer with it"));
        return true;
    }
}
