// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.material.Adhesive;

/**
 * How a hardpoint is made: what its strength is found from.
 *
 * @param kind how it sits in the panel
 * @param diameter of the insert itself where it goes through the skin, m
 * @param bolts what is screwed into it or through it
 * @param flange diameter of the flange bonded to the skin, of the pad, or of the washers, m
 * @param adhesive under flange or pad
 * @param tested strengths by test; they go before what is computed
 */
public record InsertDetail(
        Kind kind,
        OptionalDouble diameter,
        Optional<Bolts> bolts,
        OptionalDouble flange,
        Optional<Adhesive> adhesive,
        Tested tested) {
    /** Potted, and nothing else known of it. */
    public static final InsertDetail UNKNOWN = new InsertDetail(
            Kind.POTTED,
            OptionalDouble.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Tested.NOT);

    /** How an insert sits in the panel. */
    public enum Kind {
        /** In resin through the whole core. */
        POTTED,
        /** A solid block in place of the core under the whole footprint. */
        BLOCK,
        /** Bonded onto the skin. */
        PAD,
        /** Bolts through a solid laminate or sheet. */
        BOLTED
    }

    /**
     * Bolts of one hardpoint.
     *
     * @param diameter of the shank, m
     * @param count how many
     * @param circle diameter of the circle they stand on, m; 0 for a single one
     */
    public record Bolts(double diameter, int count, double circle) {}

    /**
     * Strengths by test.
     *
     * @param pull along the insert, N
     * @param shear in the plane of the skin, N
     * @param torque about the insert, N·m
     */
    public record Tested(OptionalDouble pull, OptionalDouble shear, OptionalDouble torque) {
        /** Nothing tested. */
        public static final Tested NOT =
                new Tested(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }
}
