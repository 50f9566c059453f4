// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tubwright.engine.load.Vehicle;

/**
 * What is bolted to a tub: tubes between hardpoints and free nodes, bodies such as an engine, masses; and the car on its
 * wheels, if the design has one.
 *
 * @param nodes points in space where tubes meet
 * @param tubes straight, one for each stretch
 * @param bodies engine, gearbox and the like
 * @param masses driver, fuel, battery: mass without stiffness
 * @param vehicle the car on its wheels
 */
public record Fittings(
        List<Node> nodes, List<Tube> tubes, List<Body> bodies, List<Mass> masses, Optional<Vehicle> vehicle) {
    /** Nothing. */
    public static final Fittings NONE = new Fittings(List.of(), List.of(), List.of(), List.of(), Optional.empty());

    public Fittings {
        nodes = List.copyOf(nodes);
        tubes = List.copyOf(tubes);
        bodies = List.copyOf(bodies);
        masses = List.copyOf(masses);
    }

    /** True where nothing is bolted on. */
    public boolean isEmpty() {
        return tubes.isEmpty() && bodies.isEmpty() && masses.isEmpty();
    }

    /** Kilograms bolted on, tubes included. */
    public double mass() {
        return Stream.of(
                        tubes.stream().map(Tube::mass),
                        bodies.stream().map(Body::mass),
                        masses.stream().map(Mass::mass))
                .flatMap(s -> s)
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    /**
     * A named point.
     *
     * @param name unique among hardpoints, nodes and points of bodies
     * @param position m, 3 numbers
     */
    public record Node(String name, double[] position) {}

    /**
     * A straight tube, welded to what it meets or pinned at both ends.
     *
     * @param name what it belongs to: "main hoop"
     * @param from hardpoint, node or point of a body
     * @param to likewise
     * @param section and material
     * @param pinned true where it carries force along itself only
     * @param words for the report
     * @param length m
     */
    public record Tube(
            String name, String from, String to, BeamSection section, boolean pinned, String words, double length) {
        /** Kilograms. */
        public double mass() {
            return section.density() * section.area() * length;
        }
    }

    /**
     * Something that is bolted on at its mounts and has more stiffness than mass of its own: engine, gearbox.
     *
     * @param name its name
     * @param mass kg
     * @param centre of its mass, m
     * @param mounts hardpoints (or nodes) it is bolted to, one bolt each that holds x, y and z and turns freely
     * @param mountStiffness of each bolt with its boss, N/m, the same in all directions
     * @param build how it carries
     * @param points named points that ride on it: pick-ups of the rear suspension
     */
    public record Body(
            String name,
            double mass,
            double[] centre,
            List<String> mounts,
            double mountStiffness,
            Build build,
            List<Node> points) {
        public Body {
            mounts = List.copyOf(mounts);
            points = List.copyOf(points);
        }
    }

    /** How a body carries between its mounts. */
    public sealed interface Build {}

    /** A body that does not deform. */
    public record Rigid() implements Build {}

    /**
     * A simple elastic body: a straight beam along x through its centre of mass; what is nearer to its front end rides on
     * that, the rest on its rear end.
     *
     * @param front x of its front end, m
     * @param rear x of its rear end, m
     * @param section whose EI, GJ and EA give the stated stiffnesses over that length; without mass
     */
    public record Elastic(double front, double rear, BeamSection section) implements Build {}

    /**
     * Stiffness at the mounts.
     *
     * @param matrix 3m × 3m, row-major, N/m: forces at the mounts (x, y, z of each in their order) for their movements
     */
    public record AtMounts(double[] matrix) implements Build {}

    /**
     * Mass without stiffness, shared equally by points, or spread evenly over skin and walls.
     *
     * @param name what it is
     * @param mass kg
     * @param at hardpoints, nodes or bodies; empty where it is spread
     * @param on strips or walls it is spread over
     * @param from station where the spread begins, m
     * @param to station where it ends, m
     */
    public record Mass(String name, double mass, List<String> at, List<String> on, double from, double to) {
        public Mass {
            at = List.copyOf(at);
            on = List.copyOf(on);
        }
    }
}
