// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.text;

/** The few conversions the desk needs to show SI values in the units of the trade. */
public final class Conversions {
    /** One pound-force foot in N·m: 0.3048 m × 0.45359237 kg × 9.80665 m/s², all exact (NIST SP 811, 2008, App. B). */
    public static final double POUND_FORCE_FOOT = 0.3048 * 0.45359237 * 9.80665;

    /** One pound in kg, exact (NIST SP 811, 2008, App. B). */
    public static final double POUND = 0.45359237;

    private Conversions() {}

    /** N·m/rad to N·m/deg. */
    public static double perDegree(double perRadian) {
        return perRadian * Math.PI / 180;
    }

    /** N·m/rad to lbf·ft/deg. */
    public static double poundFeetPerDegree(double perRadian) {
        return perDegree(perRadian) / POUND_FORCE_FOOT;
    }
}
