// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a load cycle leaves between its two branches.
 *
 * @param cycle its number
 * @param area work lost in the cycle, J
 * @param width widest difference of angle between unloading and loading at one torque, rad
 * @param range difference between the largest and the least angle, rad
 * @param residual angle left when the load is back at where it began, rad; NaN if it does not come back
 */
public record Loop(int cycle, double area, double width, double range, double residual) {
    /** The loop of one cycle, if it goes up and down. */
    static Optional<Loop> of(int cycle, List<Step> steps, double[] angles) {
        List<double[]> up = new ArrayList<>();
        List<double[]> down = new ArrayList<>();
        double least = Double.MAX_VALUE;
        double most = -Double.MAX_VALUE;
        double area = 0;
        int n = steps.size();
        for (int i = 0; i < n; i++) {
            double[] point = {steps.get(i).torque(), angles[i]};
            (steps.get(i).unloading() ? down : up).add(point);
            if (i + 1 < n && steps.get(i + 1).unloading() && !steps.get(i).unloading()) {
                down.add(point);
            }
            least = Math.min(least, angles[i]);
            most = Math.max(most, angles[i]);
            int next = (i + 1) % n;
            area += (steps.get(i).torque() + steps.get(next).torque()) / 2 * (angles[next] - angles[i]);
        }
        if (up.size() < 2 || down.size() < 3) {
            return Optional.empty();
        }
        double width = 0;
        for (double[] point : up) {
            double gap = Math.abs(at(down, point[0]) - point[1]);
            width = gap > width ? gap : width;
        }
        double greatest =
                steps.stream().mapToDouble(s -> Math.abs(s.torque())).max().orElse(0);
        boolean back = Math.abs(steps.getLast().torque() - steps.getFirst().torque()) < 0.02 * greatest;
        return Optional.of(
                new Loop(cycle, Math.abs(area), width, most - least, back ? angles[n - 1] - angles[0] : Double.NaN));
    }

    /** Width over range. */
    public double share() {
        return width / range;
    }

    private static double at(List<double[]> branch, double torque) {
        for (int i = 0; i + 1 < branch.size(); i++) {
            double[] a = branch.get(i);
            double[] b = branch.get(i + 1);
            if ((torque - a[0]) * (torque - b[0]) <= 0 && a[0] != b[0]) {
                return a[1] + (torque - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
            }
        }
        return Double.NaN;
    }
}
