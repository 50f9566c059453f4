// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.Optional;

/**
 * A car on four wheels as a rigid body on a flat road.
 *
 * @param mass with driver and fuel, kg
 * @param wheelbase m
 * @param frontTrack m
 * @param rearTrack m
 * @param centreHeight of the centre of mass above the road, m
 * @param centreAft of the centre of mass behind the front axle, m
 * @param frontRollShare share of the lateral load transfer that the front axle takes, 0 to 1
 * @param rollStiffness of both axles together, springs and bars, N·m/rad, where it is known
 */
public record Car(
        double mass,
        double wheelbase,
        double frontTrack,
        double rearTrack,
        double centreHeight,
        double centreAft,
        double frontRollShare,
        Optional<Double> rollStiffness) {
    /** Standard gravity, m/s². */
    public static final double GRAVITY = 9.80665;

    public Car {
        if (!(mass > 0 && wheelbase > 0 && frontTrack > 0 && rearTrack > 0 && centreHeight >= 0)) {
            throw new LoadException(
                    "mass, wheelbase and tracks of a car are greater than zero", "check the car's figures");
        }
        if (!(centreAft > 0 && centreAft < wheelbase)) {
            throw new LoadException(
                    "the centre of mass does not lie between the axles", "give its distance behind the front axle");
        }
        if (!(frontRollShare >= 0 && frontRollShare <= 1)) {
            throw new LoadException("the front share of the roll moment is not between 0 and 1", "0.5 is usual");
        }
    }

    /**
     * Forces of the road on the tyres.
     *
     * @param front (left, right), each 3 numbers, N
     * @param rear (left, right)
     */
    public record Contacts(double[][] front, double[][] rear) {}

    /**
     * What pushes the car beside gravity and its tyres: the air, a tow rope.
     *
     * @param force resultant, N, 3 numbers
     * @param moment about the point of the road below the middle of the front axle, N·m, 3 numbers
     */
    public record Outside(double[] force, double[] moment) {
        /** Nothing. */
        public static final Outside NONE = new Outside(new double[3], new double[3]);
    }

    /** As {@link #contacts(double[], double, Outside)} with nothing but gravity outside. */
    public Contacts contacts(double[] acceleration, double frontShare) {
        return contacts(acceleration, frontShare, Outside.NONE);
    }

    /**
     * Forces under the tyres while the car accelerates steadily (Newton; load transfer m a h over wheelbase and track).
     *
     * <p>Each tyre of an axle takes sideways force in proportion to its vertical load; the axles share it so that the
     * car does not yaw. Fore-and-aft force is shared equally by the wheels of an axle.
     *
     * @param acceleration of the car (aft, right, up), m/s²: braking is positive x, a right-hand bend positive y; z adds
     *     to gravity
     * @param frontShare share of the fore-and-aft force at the front axle, 0 to 1
     * @param outside what else pushes; the tyres carry it too
     * @throws LoadException where a wheel leaves the road
     */
    public Contacts contacts(double[] acceleration, double frontShare, Outside outside) {
        double[] f = outside.force();
        double[] m = outside.moment();
        double weight = mass * (GRAVITY + acceleration[2]);
        double rear = (weight * centreAft - mass * acceleration[0] * centreHeight + m[1]) / wheelbase;
        double[] axle = {weight - f[2] - rear, rear};
        double roll = mass * acceleration[1] * centreHeight + m[0];
        double[] transfer = {frontRollShare * roll / frontTrack, (1 - frontRollShare) * roll / rearTrack};
        double[] share = {frontShare, 1 - frontShare};
        double along = mass * acceleration[0] - f[0];
        double rearSide = (mass * acceleration[1] * centreAft - m[2]) / wheelbase;
        double[] side = {mass * acceleration[1] - f[1] - rearSide, rearSide};
        double[][][] contacts = new double[2][2][3];
        for (int a = 0; a < 2; a++) {
            for (int s = 0; s < 2; s++) {
                double up = axle[a] / 2 + (s == 0 ? transfer[a] : -transfer[a]);
                if (up < 0) {
                    throw new LoadException(
                            "the " + (a == 0 ? "front" : "rear") + (s == 0 ? " left" : " right")
                                    + " wheel leaves the road at this acceleration",
                            "ask for less, or give the wheel's force itself");
                }
                contacts[a][s][0] = 0.5 * share[a] * along;
                contacts[a][s][1] = axle[a] > 0 ? side[a] * up / axle[a] : 0;
                contacts[a][s][2] = up;
            }
        }
        return new Contacts(contacts[0], contacts[1]);
    }
}
