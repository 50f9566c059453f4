// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.picture;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;

/**
 * A logarithmic scale for energy density: a tub's values span several powers of ten, and it is the ratio that tells
 * where material works.
 *
 * @param low J/m² at the quiet end; anything less looks the same
 * @param high J/m² at the hot end; anything more looks the same
 */
public record EnergyScale(double low, double high) {
    /** Powers of ten the scale spans. */
    private static final double DECADES = 2;

    /**
     * The scale for a mesh: its hot end is passed by one hundredth of the area, rounded up to 1, 2 or 5 times a power of
     * ten, so that peaks at single elements do not dim the rest.
     */
    public static EnergyScale of(Mesh mesh, double[] densities) {
        double[] areas = new double[mesh.elementCount()];
        double whole = 0;
        for (int e = 0; e < areas.length; e++) {
            areas[e] = mesh.area(e);
            whole += areas[e];
        }
        int[] order = IntStream.range(0, areas.length)
                .boxed()
                .sorted(Comparator.comparingDouble(e -> -densities[e]))
                .mapToInt(Integer::intValue)
                .toArray();
        double passed = 0;
        double top = 0;
        for (int e : order) {
            top = densities[e];
            passed += areas[e];
            if (passed > 0.01 * whole) {
                break;
            }
        }
        if (!(top > 0) || !Double.isFinite(top)) {
            top = Arrays.stream(densities).filter(Double::isFinite).max().orElse(0);
        }
        double high = roundUp(top > 0 ? top : 1);
        return new EnergyScale(high / Math.pow(10, DECADES), high);
    }

    /** Position of a value on the scale, 0 to 1. */
    public double position(double value) {
        if (!(value > low)) {
            return 0;
        }
        return Math.min(1, Math.log(value / low) / Math.log(high / low));
    }

    /** Round values to print beside the scale, from low to high: each 1, 2 or 5 times a power of ten. */
    public double[] ticks() {
        int from = (int) Math.floor(Math.log10(low));
        return IntStream.range(3 * from, 3 * from + 15)
                .mapToDouble(i -> new double[] {1, 2, 5}[Math.floorMod(i, 3)] * Math.pow(10, Math.floorDiv(i, 3)))
                .filter(v -> v >= low * 0.999 && v <= high * 1.001)
                .toArray();
    }

    private static double roundUp(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double step : new double[] {1, 2, 5}) {
            if (value <= step * power * 1.0001) {
                return step * power;
            }
        }
        return 10 * power;
    }
}
