// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.specimen;

import java.util.Arrays;
import java.util.List;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.statistics.LinearFit;

/**
 * What was read of one specimen.
 *
 * @param name of the specimen
 * @param sizes in the order its kind of test has them, SI
 * @param load N, in the order read
 * @param movement m, or strain for a coupon
 * @param place file and line that declare the specimen
 */
public record Curve(String name, double[] sizes, double[] load, double[] movement, String place) {

    /** Greatest load, N. */
    public double greatestLoad() {
        return Arrays.stream(load).max().orElse(0);
    }

    /** Place of the greatest load. */
    private int top() {
        int top = 0;
        for (int i = 1; i < load.length; i++) {
            top = load[i] > load[top] ? i : top;
        }
        return top;
    }

    /**
     * Straight line through the rising part between two shares of the greatest load.
     *
     * @throws ReadingsException if fewer than four readings lie there
     */
    public LinearFit slopeBetweenLoads(double low, double high) {
        double most = greatestLoad();
        int top = top();
        int[] used = java.util.stream.IntStream.rangeClosed(0, top)
                .filter(i -> load[i] >= low * most && load[i] <= high * most)
                .toArray();
        return fit(
                used,
                "between " + Math.round(100 * low) + " and " + Math.round(100 * high) + " % of its greatest load");
    }

    /**
     * Straight line through the rising part between two movements.
     *
     * @throws ReadingsException if fewer than four readings lie there
     */
    public LinearFit slopeBetweenMovements(double low, double high) {
        int top = top();
        int[] used = java.util.stream.IntStream.rangeClosed(0, top)
                .filter(i -> movement[i] >= low && movement[i] <= high)
                .toArray();
        return fit(
                used,
                String.format(java.util.Locale.ROOT, "between strains of %.1f and %.1f %%", 100 * low, 100 * high));
    }

    private LinearFit fit(int[] used, String where) {
        if (used.length < 4) {
            throw new ReadingsException(place + ": specimen \"" + name + "\" has "
                    + (used.length == 0
                            ? "no reading"
                            : used.length == 1 ? "only 1 reading" : "only " + used.length + " readings")
                    + " " + where + "; a slope with its scatter needs at least 4");
        }
        double[] x = Arrays.stream(used).mapToDouble(i -> movement[i]).toArray();
        double[] y = Arrays.stream(used).mapToDouble(i -> load[i]).toArray();
        LinearFit line = LinearFit.line(x, y);
        if (!(line.coefficients()[1] > 0)) {
            throw new ReadingsException(place + ": specimen \"" + name + "\": load falls while it moves, " + where
                    + "; is the sign of the movement right?");
        }
        return line;
    }

    /**
     * The first load from which the curve falls by a tenth or more before it rises further, N: a first skin giving way;
     * the greatest load where it never does.
     */
    public double firstPeak() {
        double peak = 0;
        double least = Double.POSITIVE_INFINITY;
        for (double each : load) {
            if (each > peak && least < 0.9 * peak) {
                return peak;
            }
            if (each > peak) {
                peak = each;
                least = each;
            }
            least = Math.min(least, each);
        }
        return peak;
    }

    /** The names of several, for messages. */
    static String names(List<Curve> curves) {
        return String.join(", ", curves.stream().map(Curve::name).toList());
    }
}
