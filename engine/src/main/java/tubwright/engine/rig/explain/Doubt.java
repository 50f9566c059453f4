// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

/**
 * A stiffness of the built tub, or a property of its test, that may differ from what the model takes.
 *
 * <p>It is a factor e^θ on the modelled value, θ normally distributed about 0 with the spread as its standard deviation:
 * a stiffness cannot be negative, and twice as stiff is as likely as half as stiff.
 *
 * @param kind what it is a factor on
 * @param of the material, zone or line it speaks of; "" where there is but one
 * @param spread standard deviation of ln(factor) before the test
 */
public record Doubt(Kind kind, String of, double spread) {
    /** What may differ. */
    public enum Kind {
        /** All moduli of a ply or sheet, by the material's name. */
        LAMINATE("stiffness of ", false),
        /** Both transverse shear moduli of a core, by the material's name. */
        CORE_SHEAR("shear stiffness of ", false),
        /** Everything laid in one zone: a ply forgotten or turned, resin rich or dry, by the zone's name. */
        ZONE("layup of ", false),
        /** All stiffnesses of a joint, by the name of its line. */
        JOINT("joint ", false),
        /** Inserts at which the tub is held, and the mounts under them. */
        HELD_HARDPOINTS("held hardpoints", false),
        /** The torque that really acted over the torque written down, and with it every common factor of the readings. */
        TORQUE_SCALE("scale of torque and model", true),
        /**
         * Rotation of the whole tub with the rig, as a share of the predicted twist; θ itself, not its exponential. Only
         * where nobody read the held end.
         */
        RIG_GIVE("give of the rig at the held end", true);

        private final String words;
        private final boolean ofTheTest;

        Kind(String words, boolean ofTheTest) {
            this.words = words;
            this.ofTheTest = ofTheTest;
        }
    }

    /** One of a kind of which there is but one. */
    public static Doubt of(Kind kind, double spread) {
        return new Doubt(kind, "", spread);
    }

    /** What a person calls it. */
    public String name() {
        return kind.words + of;
    }

    /** The same doubt with another spread. */
    public Doubt withSpread(double other) {
        return new Doubt(kind, of, other);
    }

    /** Whether it belongs to the test and not to the tub: it is found along and not carried to the next tub. */
    public boolean ofTheTest() {
        return kind.ofTheTest;
    }

    /** Whether it is of that kind. */
    public boolean is(Kind other) {
        return kind == other;
    }
}
