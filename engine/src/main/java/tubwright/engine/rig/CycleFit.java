// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.rig.statistics.LinearFit;

/**
 * A straight line with one slope for all cycles and a zero of its own for each, so that a gauge that was nudged between
 * cycles does no harm. With one cycle it is the common regression line.
 *
 * @param fit slope first, then a constant a cycle
 * @param rSquared share of the variation within the cycles explained
 * @param used indices of the points used
 */
record CycleFit(LinearFit fit, double rSquared, int[] used) {
    /** The line {@code y = slope x + zero of the cycle}; points whose x or y is NaN are passed over. */
    static CycleFit of(double[] x, double[] y, int[] cycle) {
        int[] used = java.util.stream.IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        List<Integer> cycles =
                Arrays.stream(used).mapToObj(i -> cycle[i]).distinct().sorted().toList();
        double[][] design = new double[used.length][1 + cycles.size()];
        double[] right = new double[used.length];
        double[] mean = new double[cycles.size()];
        int[] count = new int[cycles.size()];
        for (int r = 0; r < used.length; r++) {
            int c = cycles.indexOf(cycle[used[r]]);
            design[r][0] = x[used[r]];
            design[r][1 + c] = 1;
            right[r] = y[used[r]];
            mean[c] += right[r];
            count[c]++;
        }
        LinearFit fit = LinearFit.of(design, right);
        double total = 0;
        double left = 0;
        for (int r = 0; r < used.length; r++) {
            int c = cycles.indexOf(cycle[used[r]]);
            double away = right[r] - mean[c] / count[c];
            total += away * away;
            left += fit.residuals()[r] * fit.residuals()[r];
        }
        return new CycleFit(fit, total > 0 ? 1 - left / total : 0, used);
    }

    double slope() {
        return fit.coefficients()[0];
    }

    double standardError() {
        return fit.standardErrors()[0];
    }
}
