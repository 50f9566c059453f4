// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One corner of a suspension: an upright held by six links (two wishbone legs above, two below, a steering or toe link,
 * and a rod), the rod going to the tub or to a rocker.
 *
 * <p>Every link is a bar with ball joints, so the six bar forces follow from the six equations of equilibrium of the
 * upright; a rod that stands on a wishbone is taken to act at that wishbone's outer joint, so give it that outer point.
 * The rocker then follows from the moment about its axis. No weight of the unsprung parts, no friction.
 *
 * @param name of the corner: "front left"
 * @param legs the five links that guide the upright, in any order
 * @param rod push or pull rod, or the spring and damper unit itself
 * @param rocker where the rod ends on one
 */
public record Corner(String name, List<Link> legs, Link rod, Optional<Rocker> rocker) {
    /** A pivot below this share of the largest means that a motion is free. */
    private static final double SINGULAR = 1e-7;

    public Corner {
        legs = List.copyOf(legs);
        if (legs.size() != 5) {
            throw new LoadException(
                    "the corner '" + name + "' guides its upright by " + legs.size() + " links",
                    "five links and a rod hold an upright: two legs a wishbone and a steering or toe link");
        }
    }

    /** All six links of the upright, the rod last. */
    public List<Link> links() {
        List<Link> all = new ArrayList<>(legs);
        all.add(rod);
        return all;
    }

    /**
     * Force in each link, tension positive, N, in the order of {@link #links}.
     *
     * @param contact where the ground pushes, m
     * @param force of the ground on the tyre, N
     * @param moment of the ground or of a driveshaft on the upright beyond that, N·m
     * @throws LoadException where the links leave a motion free
     */
    public double[] linkForces(double[] contact, double[] force, double[] moment) {
        List<Link> links = links();
        // Lengths are measured against the spread of the outer joints, so that all rows are of one size.
        double size = links.stream()
                .mapToDouble(l -> Vectors.length(Vectors.minus(l.outer(), contact)))
                .max()
                .orElse(1);
        double[][] a = new double[6][7];
        for (int k = 0; k < 6; k++) {
            double[] d = links.get(k).inward();
            double[] m = Vectors.cross(Vectors.minus(links.get(k).outer(), contact), d);
            for (int i = 0; i < 3; i++) {
                a[i][k] = d[i];
                a[3 + i][k] = m[i] / size;
            }
        }
        for (int i = 0; i < 3; i++) {
            a[i][6] = -force[i];
            a[3 + i][6] = -moment[i] / size;
        }
        return solve(a);
    }

    /**
     * Forces on the tub under a force of the ground.
     *
     * @return one for each leg, then the rod where it ends at the tub, or the rocker's pivot and the damper's end
     * @throws LoadException where links or rocker leave a motion free
     */
    public List<PointLoad> onTub(double[] contact, double[] force, double[] moment) {
        double[] forces = linkForces(contact, force, moment);
        List<PointLoad> loads = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            loads.add(pull(legs.get(k), forces[k]));
        }
        if (rocker.isEmpty()) {
            loads.add(pull(rod, forces[5]));
            return List.copyOf(loads);
        }
        Rocker r = rocker.get();
        double[] axis = Vectors.unit(r.axis());
        double[] rodForce = pull(rod, forces[5]).force();
        double[] rodArm = Vectors.minus(rod.inner(), r.pivot());
        double[] toTub = r.damper().inward();
        double[] damperArm = Vectors.minus(r.damper().outer(), r.pivot());
        double lever = Vectors.dot(axis, Vectors.cross(damperArm, toTub));
        if (Math.abs(lever) < 1e-4 * Vectors.length(damperArm)) {
            throw new LoadException(
                    "the damper of the rocker '" + r.name() + "' points at the rocker's axis and cannot hold it",
                    "give the damper a lever about the axis, or check its points");
        }
        double tension = -Vectors.dot(axis, Vectors.cross(rodArm, rodForce)) / lever;
        double[] damperOnRocker = Vectors.times(tension, toTub);
        double[] moment0 = Vectors.plus(Vectors.cross(rodArm, rodForce), 1, Vectors.cross(damperArm, damperOnRocker));
        loads.add(new PointLoad(r.name(), r.pivot(), Vectors.plus(rodForce, 1, damperOnRocker), moment0));
        loads.add(pull(r.damper(), tension));
        return List.copyOf(loads);
    }

    /** A link under tension pulls whatever holds its inner end outward. */
    private static PointLoad pull(Link link, double tension) {
        return new PointLoad(link.name(), link.inner(), Vectors.times(-tension, link.inward()), new double[3]);
    }

    private double[] solve(double[][] a) {
        int[] column = {0, 1, 2, 3, 4, 5};
        double largest = 0;
        for (int p = 0; p < 6; p++) {
            int row = p;
            int best = p;
            for (int i = p; i < 6; i++) {
                for (int k = p; k < 6; k++) {
                    if (Math.abs(a[i][k]) > Math.abs(a[row][best])) {
                        row = i;
                        best = k;
                    }
                }
            }
            double pivot = Math.abs(a[row][best]);
            largest = Math.max(largest, pivot);
            if (pivot <= SINGULAR * largest) {
                throw new LoadException(
                        "the links of '" + name + "' leave the upright free to move (found at '"
                                + links().get(column[p]).name() + "')",
                        "no more than three links may meet in one point, and not all may cross one line");
            }
            double[] swap = a[p];
            a[p] = a[row];
            a[row] = swap;
            for (double[] each : a) {
                double value = each[p];
                each[p] = each[best];
                each[best] = value;
            }
            int name = column[p];
            column[p] = column[best];
            column[best] = name;
            for (int i = p + 1; i < 6; i++) {
                double factor = a[i][p] / a[p][p];
                for (int k = p; k < 7; k++) {
                    a[i][k] -= factor * a[p][k];
                }
            }
        }
        double[] x = new double[6];
        for (int i = 5; i >= 0; i--) {
            double sum = a[i][6];
            for (int k = i + 1; k < 6; k++) {
                sum -= a[i][k] * x[column[k]];
            }
            x[column[i]] = sum / a[i][i];
        }
        return Arrays.copyOf(x, 6);
    }
}
