// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Maps values to places on a drawing.
 *
 * @param low value at {@code from}
 * @param high value at {@code to}
 * @param from place
 * @param to place
 * @param logarithmic whether equal ratios, not equal differences, take equal room
 */
record Axis(double low, double high, double from, double to, boolean logarithmic) {
    /** An even axis from {@code low} to {@code high}, not widened. */
    static Axis exact(double low, double high, double from, double to) {
        return new Axis(low, high, from, to, false);
    }

    /** An even axis whose ends are round numbers, about {@code steps} apart. */
    static Axis round(double low, double high, double from, double to, int steps) {
        double step = step(high - low, steps);
        return new Axis(Math.floor(low / step + 1e-9) * step, Math.ceil(high / step - 1e-9) * step, from, to, false);
    }

    /** A logarithmic axis whose ends are 1, 2 or 5 times a power of ten. */
    static Axis logarithmic(double low, double high, double from, double to) {
        double floor = 1;
        double ceiling = 1;
        for (double tick : oneTwoFive(low / 10, high * 10)) {
            if (tick <= low * 1.0001) {
                floor = tick;
            }
            if (tick < high * 0.9999) {
                continue;
            }
            ceiling = tick;
            break;
        }
        return new Axis(floor, Math.max(ceiling, floor * 2), from, to, true);
    }

    double at(double value) {
        double share = logarithmic ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
        return from + share * (to - from);
    }

    /** Round values for about {@code steps} marks; of a logarithmic axis all its 1, 2 and 5. */
    List<Double> ticks(int steps) {
        if (logarithmic) {
            return oneTwoFive(low, high);
        }
        double step = step(high - low, steps);
        List<Double> result = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - 1e-9); i <= Math.floor(high / step + 1e-9); i++) {
            result.add(i * step);
        }
        return result;
    }

    /** Digits after the point that tell the marks of {@link #ticks} apart. */
    int decimals(int steps) {
        double step = step(high - low, steps);
        return Math.max(0, (int) Math.ceil(-Math.log10(step) - 1e-9));
    }

    private static List<Double> oneTwoFive(double low, double high) {
        List<Double> result = new ArrayList<>();
        for (int power = (int) Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
            for (double digit : new double[] {1, 2, 5}) {
                double value = digit * Math.pow(10, power);
                if (value >= low * 0.9999 && value <= high * 1.0001) {
                    result.add(value);
                }
            }
        }
        return result;
    }

    private static double step(double range, int steps) {
        if (!(range > 0)) {
            return 1;
        }
        double rough = range / steps;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        for (double digit : new double[] {1, 2, 5, 10}) {
            if (rough <= digit * power * 1.0001) {
                return digit * power;
            }
        }
        return 10 * power;
    }
}
