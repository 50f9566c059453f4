// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import java.util.ArrayList;
import java.util.List;

/**
 * How the tub is held on the rig, and whether it is held too much.
 *
 * <p>Six directions hold a body. What is held beyond them keeps the held end from warping and from changing its shape,
 * and a tub that cannot warp reads stiffer than it will be in the car.
 *
 * @param held directions held in the case
 * @param stiffness between the case's stations as it is held, N·m/rad
 * @param least words for a way to hold it that is just enough; empty where none was found
 * @param leastStiffness the same stiffness when just held, N·m/rad; NaN where no way was found
 */
public record Restraint(int held, double stiffness, List<String> least, double leastStiffness) {
    public Restraint {
        least = List.copyOf(least);
    }

    /** By how much holding more than needed stiffens the reading, as a share. */
    public double excess() {
        return stiffness / leastStiffness - 1;
    }

    /** Rows of the restraint of rigid motion by one direction at one point. */
    static double[] row(double[] point, int direction, double[] centre) {
        double x = point[0] - centre[0];
        double y = point[1] - centre[1];
        double z = point[2] - centre[2];
        return switch (direction) {
            case 0 -> new double[] {1, 0, 0, 0, z, -y};
            case 1 -> new double[] {0, 1, 0, -z, 0, x};
            default -> new double[] {0, 0, 1, y, -x, 0};
        };
    }

    /**
     * The six of these rows that hold best, chosen one by one by what each adds that those before it lack; fewer where
     * the rows do not hold six motions.
     *
     * @param rows restraint rows, rotations scaled by a length of the tub
     */
    static List<Integer> six(List<double[]> rows) {
        List<Integer> chosen = new ArrayList<>();
        List<double[]> left = new ArrayList<>();
        rows.forEach(r -> left.add(r.clone()));
        while (chosen.size() < 6) {
            int best = -1;
            double most = 1e-6;
            for (int i = 0; i < left.size(); i++) {
                double length = length(left.get(i));
                if (length > most * 1.0001) {
                    most = length;
                    best = i;
                }
            }
            if (best < 0) {
                break;
            }
            chosen.add(best);
            double[] unit = left.get(best).clone();
            for (int d = 0; d < 6; d++) {
                unit[d] /= most;
            }
            for (double[] row : left) {
                double along = 0;
                for (int d = 0; d < 6; d++) {
                    along += row[d] * unit[d];
                }
                for (int d = 0; d < 6; d++) {
                    row[d] -= along * unit[d];
                }
            }
        }
        return chosen;
    }

    private static double length(double[] row) {
        double sum = 0;
        for (double r : row) {
            sum += r * r;
        }
        return Math.sqrt(sum);
    }
}
