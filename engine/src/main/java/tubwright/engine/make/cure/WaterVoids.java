// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/**
 * Pressure that keeps water in the resin from growing into voids (Kardos, Davé and Duduković 1986): at least
 * 4962 φ exp(−4892 K/T) atm with φ the relative humidity in per cent at which the prepreg was stored.
 */
public final class WaterVoids {
    private static final double ATMOSPHERE = 101_325;

    private WaterVoids() {}

    /**
     * Least pressure in the resin, Pa absolute.
     *
     * @param humidity relative humidity the prepreg was in balance with, 0 to 1
     * @param temperature of the resin, K
     */
    public static double leastPressure(double humidity, double temperature) {
        return ATMOSPHERE * 4962 * (100 * humidity) * Math.exp(-4892 / temperature);
    }
}
