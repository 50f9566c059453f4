// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import tubwright.engine.rig.statistics.Uncertainty;

/** Springs one behind the other: their flexibilities add. Any unit of stiffness, the same throughout. */
public final class Series {
    private Series() {}

    /**
     * What is left of a stiffness when a spring in series is taken out: 1/K = 1/K_whole − 1/K_part.
     *
     * @throws ReadingsException if the part alone would be no stiffer than the whole
     */
    public static double without(double whole, double part) {
        if (!(part > whole)) {
            throw new ReadingsException("a spring of " + words(part) + " cannot be part of a chain that is as stiff as "
                    + words(whole) + ": one of the two is wrong");
        }
        return 1 / (1 / whole - 1 / part);
    }

    /** Stiffness of two springs in series. */
    public static double of(double first, double second) {
        return 1 / (1 / first + 1 / second);
    }

    /** Standard uncertainty of {@link #without}: each flexibility's error grows by the square of the stiffness ratio. */
    public static double uncertaintyWithout(double whole, double uWhole, double part, double uPart) {
        double left = without(whole, part);
        return Math.hypot(uWhole * left * left / (whole * whole), uPart * left * left / (part * part));
    }

    /**
     * Share of the car's roll flexibility that is in its wheels, v = 1/(1 + K_wheels/K_suspension + K_wheels/K_tub): how
     * much of an intended shift of roll stiffness between the axles arrives.
     *
     * @param wheels stiffness in torsion that the wheel rates make
     */
    public static double shareArriving(double wheels, double suspension, double tub) {
        return 1 / (1 + wheels / suspension + wheels / tub);
    }

    /**
     * Stiffness the tub needs for a share to arrive.
     *
     * @throws ReadingsException if the suspension alone already takes more
     */
    public static double tubFor(double share, double wheels, double suspension) {
        double room = 1 / share - 1 - wheels / suspension;
        if (!(room > 0)) {
            throw new ReadingsException("the suspension alone already keeps the share below " + words(share));
        }
        return wheels / room;
    }

    private static String words(double value) {
        return tubwright.engine.quantity.QuantityFormat.significant(value, 4);
    }

    /** The same uncertainty with its parts kept: those of the whole, and the part's. */
    static Uncertainty.Contribution scaled(Uncertainty.Contribution c, double factor) {
        return new Uncertainty.Contribution(c.name(), c.standard() * factor, c.degreesOfFreedom());
    }
}
