// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * One corner of a suspension: an upright held by six links (two wishbone legs above, two below, a steering or toe link,
 * and a rod), the rod going to the tub or to a rocker, its other end at the upright or standing on one of the wishbones.
 *
 * <p>Every link is a bar with ball joints, so the forces follow from the six equations of equilibrium of the upright. A
 * wishbone that carries the rod is a rigid triangle with three ball joints instead of two bars ({@link Stand}); the rod
 * then follows from its moment about its inner joints. The rocker follows from the moment about its axis. No friction;
 * weight and inertia of wheel and upright come in through the load.
 *
 * @param name of the corner: "front R"
 * @param legs the five links that guide the upright, in any order
 * @param rod push or pull rod, or the spring and damper unit itself
 * @param rocker where the rod ends on one
 * @param standsOn indices of the two legs of the wishbone on which the rod stands; empty where it stands on the upright
 */
public record Corner(String name, List<Link> legs, Link rod, Optional<Rocker> rocker, List<Integer> standsOn) {
    /** A pivot below this share of the largest means that a motion is free. */
    private static final double SINGULAR = 1e-7;

    public Corner {
        legs = List.copyOf(legs);
        standsOn = List.copyOf(standsOn);
        if (legs.size() != 5) {
            throw new LoadException(
                    "the corner '" + name + "' guides its upright by " + legs.size() + " links",
                    "five links and a rod hold an upright: two legs a wishbone and a steering or toe link");
        }
        if (standsOn.size() == 2) {
            double[] a = legs.get(standsOn.get(0)).outer();
            double[] b = legs.get(standsOn.get(1)).outer();
            if (Vectors.length(Vectors.minus(a, b)) > 1e-9) {
                throw new LoadException(
                        "the rod of '" + name + "' stands on two legs that do not meet in one outer joint",
                        "give the wishbone one outer point, or let the rod stand on the upright");
            }
        } else if (!standsOn.isEmpty()) {
            throw new LoadException("the rod of '" + name + "' stands on no wishbone", "name two legs");
        }
    }

    /** A corner whose rod stands on the upright. */
    public Corner(String name, List<Link> legs, Link rod, Optional<Rocker> rocker) {
        this(name, legs, rod, rocker, List.of());
    }

    /** All six links of the upright, the rod last. */
    public List<Link> links() {
        List<Link> all = new ArrayList<>(legs);
        all.add(rod);
        return all;
    }

    /** Name of the rod of a corner where it does not end at a point of the tub that has one. */
    public static String rodName(String corner) {
        return corner + " rod";
    }

    /**
     * The mirror image on the other side of the car.
     *
     * @param other its name
     * @param twin name of a link or pivot on the other side
     */
    public Corner mirrored(String other, UnaryOperator<String> twin) {
        return new Corner(
                other,
                legs.stream().map(l -> l.mirrored(twin.apply(l.name()))).toList(),
                rod.mirrored(rod.name().equals(rodName(name)) ? rodName(other) : twin.apply(rod.name())),
                rocker.map(r -> r.mirrored(twin)),
                standsOn);
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
        return forces(contact, force, moment).tensions();
    }

    /**
     * Forces on the tub under a force of the ground.
     *
     * @return one for each leg, then the rod where it ends at the tub, or the rocker's pivot and the damper's end
     * @throws LoadException where links or rocker leave a motion free
     */
    public List<PointLoad> onTub(double[] contact, double[] force, double[] moment) {
        return forces(contact, force, moment).onTub();
    }

    /**
     * Everything at once: the forces in the links and on the tub under a force at a point of wheel or upright.
     *
     * @param at where it acts, m
     * @param force N
     * @param moment N·m beyond that
     * @throws LoadException where links or rocker leave a motion free
     */
    public CornerForces forces(double[] at, double[] force, double[] moment) {
        return standsOn.isEmpty() ? bars(at, force, moment) : onWishbone(at, force, moment);
    }

    /**
     * Strain energy of the links and of the spring and damper unit, J: the sum of N² L / 2 EA. Rockers and the bending of
     * a leg on which a rod stands are not in it.
     */
    public double energy(CornerForces forces) {
        double energy = 0;
        List<Link> links = links();
        for (int k = 0; k < 6; k++) {
            energy += 0.5 * links.get(k).flexibility() * forces.tensions()[k] * forces.tensions()[k];
        }
        double damper = forces.damper().orElse(0.0);
        return energy
                + rocker.map(r -> 0.5 * r.damper().flexibility() * damper * damper)
                        .orElse(0.0);
    }

    private CornerForces bars(double[] at, double[] force, double[] moment) {
        List<Link> links = links();
        List<double[]> directions = links.stream().map(Link::inward).toList();
        List<double[]> points = links.stream().map(Link::outer).toList();
        double[] tensions =
                upright(directions, points, links.stream().map(Link::name).toList(), at, force, moment);
        List<PointLoad> loads = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            loads.add(pull(legs.get(k), tensions[k]));
        }
        return withRod(tensions, loads);
    }

    private CornerForces onWishbone(double[] at, double[] force, double[] moment) {
        int first = standsOn.get(0);
        int second = standsOn.get(1);
        List<double[]> directions = new ArrayList<>();
        List<double[]> points = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (int d = 0; d < 3; d++) {
            double[] unit = new double[3];
            unit[d] = 1;
            directions.add(unit);
            points.add(legs.get(first).outer());
            names.add(legs.get(first).name());
        }
        List<Integer> others = new ArrayList<>();
        for (int k = 0; k < 5; k++) {
            if (k != first && k != second) {
                others.add(k);
                directions.add(legs.get(k).inward());
                points.add(legs.get(k).outer());
                names.add(legs.get(k).name());
            }
        }
        double[] x = upright(directions, points, names, at, force, moment);
        double[] joint = Arrays.copyOf(x, 3);
        Stand stand = new Stand(name, legs.get(first), legs.get(second), rod);
        double[] tensions = new double[6];
        tensions[5] = stand.rod(name, joint);
        double[][] inner = stand.inner(joint, tensions[5]);
        PointLoad[] loads = new PointLoad[5];
        for (int i = 0; i < 2; i++) {
            Link leg = legs.get(i == 0 ? first : second);
            tensions[i == 0 ? first : second] = -Vectors.dot(inner[i], leg.inward());
            loads[i == 0 ? first : second] = new PointLoad(leg.name(), leg.inner(), inner[i], new double[3]);
        }
        for (int i = 0; i < 3; i++) {
            int k = others.get(i);
            tensions[k] = x[3 + i];
            loads[k] = pull(legs.get(k), x[3 + i]);
        }
        return withRod(tensions, new ArrayList<>(List.of(loads)));
    }

    /** The six unknown forces on the upright, each along its direction at its point. */
    private double[] upright(
            List<double[]> directions,
            List<double[]> points,
            List<String> names,
            double[] at,
            double[] force,
            double[] moment) {
        // Lengths are measured against the spread of the outer joints, so that all rows are of one size.
        double size = points.stream()
                .mapToDouble(p -> Vectors.length(Vectors.minus(p, at)))
                .max()
                .orElse(1);
        double[][] a = new double[6][7];
        for (int k = 0; k < 6; k++) {
            double[] d = directions.get(k);
            double[] m = Vectors.cross(Vectors.minus(points.get(k), at), d);
            for (int i = 0; i < 3; i++) {
                a[i][k] = d[i];
                a[3 + i][k] = m[i] / size;
            }
        }
        for (int i = 0; i < 3; i++) {
            a[i][6] = -force[i];
            a[3 + i][6] = -moment[i] / size;
        }
        return solve(a, names);
    }

    private CornerForces withRod(double[] tensions, List<PointLoad> loads) {
        if (rocker.isEmpty()) {
            loads.add(pull(rod, tensions[5]));
            return new CornerForces(tensions, Optional.empty(), loads);
        }
        Rocker r = rocker.get();
        double[] axis = Vectors.unit(r.axis());
        double[] rodForce = pull(rod, tensions[5]).force();
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
        return new CornerForces(tensions, Optional.of(tension), loads);
    }

    /** A link under tension pulls whatever holds its inner end outward. */
    private static PointLoad pull(Link link, double tension) {
        return new PointLoad(link.name(), link.inner(), Vectors.times(-tension, link.inward()), new double[3]);
    }

    private double[] solve(double[][] a, List<String> names) {
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
                        "the links of '" + name + "' leave the upright free to move (found at '" + names.get(column[p])
                                + "')",
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
            int swapped = column[p];
            column[p] = column[best];
            column[best] = swapped;
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
