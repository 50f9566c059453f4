// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Overlaps usual in practice (Hart-Smith's rules as digested in design guides; a transcription): a first choice before any
 * joint is computed.
 */
public final class OverlapRules {
    /** Thinnest bond line that wets and thickest that does not run short of strength, m. */
    public static final double THINNEST_BOND = 0.10e-3;

    /** See {@link #THINNEST_BOND}. */
    public static final double THICKEST_BOND = 0.30e-3;

    private OverlapRules() {}

    /** Of a single lap, about 80 thicknesses, m. */
    public static double singleLap(double thickness) {
        return 80 * thickness;
    }

    /** Of a double lap, about 30 thicknesses of the inner sheet, m. */
    public static double doubleLap(double thickness) {
        return 30 * thickness;
    }

    /** Length of a scarf of slope 1 in 50, m. */
    public static double scarf(double thickness) {
        return 50 * thickness;
    }
}
