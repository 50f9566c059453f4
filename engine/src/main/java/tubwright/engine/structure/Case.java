// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;
import tubwright.engine.load.Vehicle;

/** A case: what is held and what pushes, and between which stations the answer is read. */
public sealed interface Case {
    /** Name as the designer wrote it. */
    String name();

    /** What is held. */
    List<Support> hold();

    /**
     * Directions held at one hardpoint, in the car's axes.
     *
     * @param hardpoint name
     * @param directions six flags: x, y, z, about x, about y, about z
     */
    record Support(String hardpoint, boolean[] directions) {}

    /**
     * A couple about x shared by hardpoints: forces in the y-z plane proportional to distance from their centre. Where the
     * hardpoints lie at different stations the sideways forces have a moment about z as well. Positive torsion is
     * right-handed about +x.
     *
     * @param name name
     * @param hold what is held
     * @param loaded hardpoints that share the couple
     * @param couple N·m
     * @param frontStation x at which the loaded end's twist is read, m
     * @param rearStation x at which the held end's twist is read, m
     */
    record Torsion(
            String name,
            List<Support> hold,
            List<String> loaded,
            double couple,
            double frontStation,
            double rearStation)
            implements Case {}

    /**
     * Forces shared equally by hardpoints; stiffness is the force over the mean vertical movement of the skin section
     * at a station.
     *
     * @param name name
     * @param hold what is held
     * @param loaded hardpoints that share the force
     * @param force total force in the car's axes, N, 3 numbers
     * @param station x at which the movement is read, m
     */
    record Bending(String name, List<Support> hold, List<String> loaded, double[] force, double station)
            implements Case {}

    /**
     * Forces and moments at hardpoints, and what the structure's own mass feels; answered by reserve factors.
     *
     * <p>Where nothing is held the body is free in space: it is accelerated as a rigid body by what pushes it, and its own
     * mass (with that of its inserts and of what is bolted on) resists (inertia relief).
     *
     * @param name name
     * @param hold what is held; empty for a free body
     * @param forces what pushes
     * @param pressures on skin and walls
     * @param acceleration of the frame in which the structure stands still, felt by its mass: gravity is (0, 0, −g), m/s²
     * @param wheels what the wheels feel, where the loads come from the road
     * @param source where the loads come from, in the designer's words
     * @param spreads forces spread over skin and walls
     */
    record Loads(
            String name,
            List<Support> hold,
            List<Force> forces,
            List<Pressure> pressures,
            double[] acceleration,
            List<Vehicle.AtWheel> wheels,
            String source,
            List<Spread> spreads)
            implements Case {
        public Loads {
            spreads = List.copyOf(spreads);
            hold = List.copyOf(hold);
            forces = List.copyOf(forces);
            pressures = List.copyOf(pressures);
            wheels = List.copyOf(wheels);
        }

        /** Loads that come neither from the air nor from the road. */
        public Loads(String name, List<Support> hold, List<Force> forces, double[] acceleration, String source) {
            this(name, hold, forces, List.of(), acceleration, List.of(), source, List.of());
        }

        /** The same with forces spread over skin and walls. */
        public Loads with(List<Spread> others) {
            return new Loads(name, hold, forces, pressures, acceleration, wheels, source, others);
        }

        /** True where nothing is held. */
        public boolean free() {
            return hold.isEmpty();
        }
    }

    /**
     * Pressure on the outside of skin.
     *
     * @param on strip
     * @param from station where it begins, m
     * @param to station where it ends, m
     * @param pressure Pa; negative sucks
     */
    record Pressure(String on, double from, double to, double pressure) {}

    /**
     * A force spread evenly over the elements of strips or walls whose middles lie in a box.
     *
     * @param name for messages
     * @param on strips and walls; empty for any
     * @param low corner of the box, m, 3 numbers; −∞ where it does not count
     * @param high likewise
     * @param force the whole of it in the car's axes, N, 3 numbers
     */
    record Spread(String name, List<String> on, double[] low, double[] high, double[] force) {
        public Spread {
            on = List.copyOf(on);
        }
    }

    /**
     * What pushes at one hardpoint (or node, body, or point of a body), in the car's axes.
     *
     * @param hardpoint name
     * @param force N, 3 numbers
     * @param moment N·m, 3 numbers
     */
    record Force(String hardpoint, double[] force, double[] moment) {}
}
