// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.sample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.random.SobolSequenceGenerator;

/** Points in the unit cube, one array of coordinates from 0 to 1 for each. The same seed gives the same points. */
public final class UnitCube {
    /** Squares kept apart from those of other uses of the seed. */
    private static final long ROTATION = 0x5eed_0f_10L;

    private UnitCube() {}

    /**
     * All combinations of levels, the last coordinate running fastest.
     *
     * @param levels of each coordinate, at least one; level i of n stands for i/(n−1), a single one for ½
     * @param most combinations allowed
     * @throws IllegalArgumentException if there are more
     */
    public static List<double[]> grid(int[] levels, int most) {
        long count = 1;
        for (int each : levels) {
            count *= each;
            if (count > most) {
                throw new IllegalArgumentException("all combinations are more than " + most);
            }
        }
        List<double[]> points = new ArrayList<>();
        int[] at = new int[levels.length];
        for (long k = 0; k < count; k++) {
            double[] point = new double[levels.length];
            for (int d = 0; d < point.length; d++) {
                point[d] = levels[d] == 1 ? 0.5 : (double) at[d] / (levels[d] - 1);
            }
            points.add(point);
            for (int d = levels.length - 1; d >= 0 && ++at[d] == levels[d]; d--) {
                at[d] = 0;
            }
        }
        return points;
    }

    /** Latin hypercube: of n slices of each coordinate each holds one point, somewhere in it (McKay, Beckman, Conover 1979). */
    public static List<double[]> latin(int count, int dimensions, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[][] points = new double[count][dimensions];
        for (int d = 0; d < dimensions; d++) {
            int[] order = new int[count];
            for (int i = 0; i < count; i++) {
                int j = random.nextInt(i + 1);
                order[i] = order[j];
                order[j] = i;
            }
            for (int i = 0; i < count; i++) {
                points[i][d] = (order[i] + random.nextDouble()) / count;
            }
        }
        return Arrays.asList(points);
    }

    /**
     * The first points of the Sobol sequence (Sobol 1967, direction numbers of Joe and Kuo 2008), origin included: it
     * belongs to the net (Owen 2020).
     */
    public static List<double[]> sobol(int count, int dimensions) {
        SobolSequenceGenerator generator = new SobolSequenceGenerator(dimensions);
        List<double[]> points = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            points.add(generator.nextVector());
        }
        return points;
    }

    /** The same turned round in each coordinate by a random share (Cranley and Patterson 1976): never at an end. */
    public static List<double[]> sobol(int count, int dimensions, long seed) {
        SplittableRandom random = new SplittableRandom(seed ^ ROTATION);
        double[] shift = random.doubles(dimensions).toArray();
        List<double[]> points = sobol(count, dimensions);
        for (double[] point : points) {
            for (int d = 0; d < dimensions; d++) {
                double turned = point[d] + shift[d];
                point[d] = Math.clamp(turned - Math.floor(turned), 1e-12, 1 - 1e-12);
            }
        }
        return points;
    }

    /**
     * How unevenly points fill the cube: their L2 star discrepancy (Warnock 1972).
     *
     * @return 0 is even
     */
    public static double discrepancy(List<double[]> points) {
        int n = points.size();
        int d = points.getFirst().length;
        double single = 0;
        double pairs = 0;
        for (double[] x : points) {
            double product = 1;
            for (double each : x) {
                product *= 1 - each * each;
            }
            single += product;
            for (double[] y : points) {
                double both = 1;
                for (int k = 0; k < d; k++) {
                    both *= 1 - Math.max(x[k], y[k]);
                }
                pairs += both;
            }
        }
        return Math.sqrt(Math.pow(3, -d) - single * Math.pow(2, 1 - d) / n + pairs / n / n);
    }
}
