// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.statistics;

import java.util.Arrays;

/** How much scatter could be borne. */
public final class Suffices {
    private Suffices() {}

    /**
     * The factor on all scatter at which a share of the draws would just meet a limit, were deviations from the nominal
     * value to grow and shrink with the scatter (true to first order).
     *
     * @param nominal value without scatter
     * @param drawn values with it; NaN for none
     * @param limit to be met
     * @param atLeast whether values must lie above it
     * @param share that is to meet it, such as 0.99
     * @return above 1 where there is room; 0 where the nominal value itself fails; infinite where none would
     */
    public static double factor(double nominal, double[] drawn, double limit, boolean atLeast, double share) {
        double sign = atLeast ? 1 : -1;
        double room = sign * (nominal - limit);
        if (!(room > 0)) {
            return 0;
        }
        double[] losses = Arrays.stream(drawn)
                .filter(Double::isFinite)
                .map(v -> sign * (nominal - v))
                .sorted()
                .toArray();
        if (losses.length == 0) {
            return Double.NaN;
        }
        double loss = losses[Math.min(losses.length - 1, (int) Math.ceil(share * losses.length) - 1)];
        return loss <= 0 ? Double.POSITIVE_INFINITY : room / loss;
    }
}
