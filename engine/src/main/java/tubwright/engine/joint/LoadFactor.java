// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.function.DoubleUnaryOperator;

/** Reserve factors of stresses that do not quite grow with the load: the load itself is scaled until they are reached. */
final class LoadFactor {
    private static final double HIGHEST = 1e6;
    private static final double TOLERANCE = 1e-10;

    private LoadFactor() {}

    /**
     * Factor at which a used share reaches one; infinite beyond {@value #HIGHEST}. False position with the Illinois rule
     * (Dowell and Jarratt 1971), which needs a handful of steps since the share is nearly a straight line.
     *
     * @param used share of the strength used under the load times a factor: rising, 0 at 0
     */
    static double of(DoubleUnaryOperator used) {
        double now = used.applyAsDouble(1);
        if (!(now > 0)) {
            return Double.POSITIVE_INFINITY;
        }
        double low = 0;
        double atLow = -1;
        double high = Math.max(1 / now, 1e-12);
        double atHigh = used.applyAsDouble(high) - 1;
        while (atHigh < 0) {
            low = high;
            atLow = atHigh;
            high *= 2;
            if (high > HIGHEST) {
                return Double.POSITIVE_INFINITY;
            }
            atHigh = used.applyAsDouble(high) - 1;
        }
        for (int i = 0; i < 200 && Math.abs(high - low) > TOLERANCE * high; i++) {
            double next = high - atHigh * (high - low) / (atHigh - atLow);
            double at = used.applyAsDouble(next) - 1;
            if (Math.abs(at) < TOLERANCE) {
                return next;
            }
            if (at * atHigh < 0) {
                low = high;
                atLow = atHigh;
            } else {
                atLow *= 0.5;
            }
            high = next;
            atHigh = at;
        }
        return high;
    }
}
