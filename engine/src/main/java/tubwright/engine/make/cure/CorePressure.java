// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/** Pressures about a honeycomb in the autoclave. */
public final class CorePressure {
    /**
     * Share of the core's flatwise compressive strength the autoclave may use (common practice, no source: 0.3 to 0.5 of
     * the strength at cure temperature; the lower end, since tables give the strength at room temperature).
     */
    public static final double SHARE_OF_STRENGTH = 0.3;

    private static final double ATMOSPHERE = 101_325;

    private CorePressure() {}

    /** Absolute pressure of the air in a cell that was sealed at one atmosphere, Pa (Gay-Lussac); temperatures in K. */
    public static double sealed(double sealedAt, double temperature) {
        return ATMOSPHERE * temperature / sealedAt;
    }

    /** What presses on the core when its cells are vented to the bag, Pa: autoclave above the room's, bag absolute. */
    public static double onVentedCore(double autoclave, double bag) {
        return autoclave + ATMOSPHERE - bag;
    }
}
