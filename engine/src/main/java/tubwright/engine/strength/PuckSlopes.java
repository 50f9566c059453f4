// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/**
 * Slopes of Puck's fracture curve at σ2 = 0 (Puck, Kopp and Knops 2002, Compos. Sci. Technol. 62, 371; values from
 * memory).
 *
 * @param tension p⊥∥(+), on the tension side
 * @param compression p⊥∥(−), on the compression side
 */
public record PuckSlopes(double tension, double compression) {
    /** Carbon fibres in epoxy. */
    public static final PuckSlopes CARBON = new PuckSlopes(0.35, 0.30);

    /** Glass fibres in epoxy. */
    public static final PuckSlopes GLASS = new PuckSlopes(0.30, 0.25);

    public PuckSlopes {
        if (!(tension >= 0 && compression > 0)) {
            throw new IllegalArgumentException(
                    "Puck's slopes must be positive, not " + tension + " and " + compression);
        }
    }
}
