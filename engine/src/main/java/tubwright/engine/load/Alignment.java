// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.List;
import java.util.function.Function;

/**
 * What a wheel's position loses to the give of pick-ups and links under a load, by the theorem of virtual forces (unit
 * load method; Mohr 1874): the movement along a unit load on the wheel is the sum of the forces that this load alone calls
 * up at the pick-ups times their movements, and of the tensions it calls up times the stretch of their links.
 *
 * @param camber change of the wheel's lean, top outward positive, rad
 * @param toe change, toe-in positive, rad
 * @param sideways movement of the hub to the right, m
 */
public record Alignment(double camber, double toe, double sideways) {
    /**
     * The change of a held wheel.
     *
     * @param wheel with a corner of links
     * @param real forces in its links under the load
     * @param movement of the point of a load on tub or body: translation (m) and rotation (rad), 6 numbers, against the car
     */
    public static Alignment of(Wheel wheel, CornerForces real, Function<PointLoad, double[]> movement) {
        Corner corner = wheel.held().orElseThrow();
        double side = wheel.left() ? 1 : -1;
        double lean = along(corner, wheel, real, movement, new double[3], new double[] {1, 0, 0});
        double steer = along(corner, wheel, real, movement, new double[3], new double[] {0, 0, 1});
        double right = along(corner, wheel, real, movement, new double[] {0, 1, 0}, new double[3]);
        return new Alignment(side * lean, -side * steer, right);
    }

    private static double along(
            Corner corner,
            Wheel wheel,
            CornerForces real,
            Function<PointLoad, double[]> movement,
            double[] force,
            double[] moment) {
        CornerForces unit = corner.forces(wheel.hub(), force, moment);
        double sum = 0;
        for (PointLoad load : unit.onTub()) {
            double[] u = movement.apply(load);
            for (int d = 0; d < 3; d++) {
                sum += load.force()[d] * u[d] + load.moment()[d] * u[3 + d];
            }
        }
        List<Link> links = corner.links();
        for (int k = 0; k < 6; k++) {
            sum += unit.tensions()[k] * real.tensions()[k] * links.get(k).flexibility();
        }
        if (corner.rocker().isPresent()) {
            sum += unit.damper().orElse(0.0)
                    * real.damper().orElse(0.0)
                    * corner.rocker().get().damper().flexibility();
        }
        return sum;
    }
}
