// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

/**
 * A stiffness of the built tub, or a property of its test, that may differ from what the model takes.
 *
 * <p>It is a factor e^θ on the modelled value, θ normally distributed about 0 with the spread as its standard deviation:
 * a stiffness cannot be negative, and twice as stiff is as likely as half as stiff.
 */
public sealed interface Doubt {
    /** What a person calls it. */
    String name();

    /** Standard deviation of ln(factor) before the test. */
    double spread();

    /** The same doubt with another spread. */
    Doubt spread(double other);

    /** Whether it belongs to the test and not to the tub: it is found along and not carried to the next tub. */
    default boolean ofTheTest() {
        return false;
    }

    /** All moduli of a ply or sheet, by the material's name. */
    record LaminateStiffness(String material, double spread) implements Doubt {
        @Override
        public String name() {
            return "stiffness of " + material;
        }

        @Override
        public Doubt spread(double other) {
            return new LaminateStiffness(material, other);
        }
    }

    /** Both transverse shear moduli of a core, by the material's name. */
    record CoreShear(String material, double spread) implements Doubt {
        @Override
        public String name() {
            return "shear stiffness of " + material;
        }

        @Override
        public Doubt spread(double other) {
            return new CoreShear(material, other);
        }
    }

    /** Everything laid in one zone: a ply forgotten or turned, resin rich or dry, by the zone's name. */
    record ZoneStiffness(String zone, double spread) implements Doubt {
        @Override
        public String name() {
            return "layup of " + zone;
        }

        @Override
        public Doubt spread(double other) {
            return new ZoneStiffness(zone, other);
        }
    }

    /** All stiffnesses of a joint, by the name of its line. */
    record JointStiffness(String line, double spread) implements Doubt {
        @Override
        public String name() {
            return "joint " + line;
        }

        @Override
        public Doubt spread(double other) {
            return new JointStiffness(line, other);
        }
    }

    /** Inserts at which the tub is held, and the mounts under them. */
    record HeldInserts(double spread) implements Doubt {
        @Override
        public String name() {
            return "held hardpoints";
        }

        @Override
        public Doubt spread(double other) {
            return new HeldInserts(other);
        }
    }

    /** The torque that really acted over the torque written down, and with it every common factor of the readings. */
    record TorqueScale(double spread) implements Doubt {
        @Override
        public String name() {
            return "scale of torque and model";
        }

        @Override
        public Doubt spread(double other) {
            return new TorqueScale(other);
        }

        @Override
        public boolean ofTheTest() {
            return true;
        }
    }

    /**
     * Rotation of the whole tub with the rig, as a share of the predicted twist; θ itself, not its exponential. Only where
     * nobody read the held end.
     */
    record RigGive(double spread) implements Doubt {
        @Override
        public String name() {
            return "give of the rig at the held end";
        }

        @Override
        public Doubt spread(double other) {
            return new RigGive(other);
        }

        @Override
        public boolean ofTheTest() {
            return true;
        }
    }
}
