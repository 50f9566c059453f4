// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What nothing else beats in every respect (Pareto 1896). */
public final class Front {
    private Front() {}

    /**
     * @param values of each point, the less the better in every respect; points with one that is not finite are out
     * @return numbers of the points on the front, by rising first value
     */
    public static List<Integer> of(List<double[]> values) {
        List<Integer> front = new ArrayList<>();
        for (int i = 0; i < values.size(); i++) {
            double[] own = values.get(i);
            boolean beaten = !finite(own);
            for (int j = 0; j < values.size() && !beaten; j++) {
                beaten = j != i && finite(values.get(j)) && beats(values.get(j), own, j < i);
            }
            if (!beaten) {
                front.add(i);
            }
        }
        front.sort(Comparator.comparingDouble(i -> values.get(i)[0]));
        return front;
    }

    /** Of equals the first stands for all. */
    private static boolean beats(double[] a, double[] b, boolean earlier) {
        boolean better = earlier;
        for (int k = 0; k < a.length; k++) {
            if (a[k] > b[k]) {
                return false;
            }
            better |= a[k] < b[k];
        }
        return better;
    }

    private static boolean finite(double[] values) {
        for (double each : values) {
            if (!Double.isFinite(each)) {
                return false;
            }
        }
        return true;
    }

    /** At most so many of a front, its ends among them, as evenly spread along the first value as may be. */
    public static List<Integer> some(List<Integer> front, int most) {
        if (front.size() <= most) {
            return front;
        }
        List<Integer> some = new ArrayList<>();
        for (int k = 0; k < most; k++) {
            some.add(front.get(most == 1 ? 0 : (int) Math.round((double) k * (front.size() - 1) / (most - 1))));
        }
        return some.stream().distinct().toList();
    }
}
