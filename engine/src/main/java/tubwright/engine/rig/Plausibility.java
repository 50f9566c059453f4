// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.Arrays;
import java.util.Optional;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityFormat;

/** Whether numbers that fit their units are those of a tub at all. */
public final class Plausibility {
    /** No tub is loaded this far: common practice, no source. */
    private static final double FURTHEST = Math.toRadians(5);

    /** No tub is stiffer: common practice, no source. */
    private static final double STIFFEST = 500_000 * 180 / Math.PI;

    /** Measured and predicted further apart than this are no matter of plies and joints. */
    private static final double APART = 5;

    /** What exchanged units multiply by, in words. */
    private static final Object[][] UNITS = {
        {1000.0, "a thousand, as between mm and m, N and kN"},
        {25.4, "25.4, as between inches and millimetres"},
        {180 / Math.PI, "57.3, as between radians and degrees"},
        {9.80665, "9.81, as between kilograms and newtons"},
        {12.0, "12, as between inches and feet"},
        {100.0, "a hundred, as with hundredths of a millimetre"},
        {10.0, "ten, as with a point set wrongly"}
    };

    private Plausibility() {}

    /** What is not plausible about a stiffness read with these angles, if anything. */
    static Optional<Finding> of(Readings readings, double[] angles, double stiffness) {
        double range = Arrays.stream(angles).filter(Double::isFinite).max().orElse(0)
                - Arrays.stream(angles).filter(Double::isFinite).min().orElse(0);
        String wrong = range > FURTHEST
                ? "the loaded end turns by " + QuantityFormat.significant(Math.toDegrees(range), 3)
                        + " deg; tubs break long before: check the units of the gauges and their places"
                : stiffness > STIFFEST
                        ? new Quantity(stiffness, Dimension.TORSIONAL_STIFFNESS).format("N·m/deg", 3)
                                + " is stiffer than any tub: check the units of load, arm and gauges"
                        : "";
        return wrong.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(
                        Finding.Kind.SET_UP,
                        readings.source() + ":" + readings.steps().getFirst().line(),
                        wrong));
    }

    /**
     * What is not plausible about a measured stiffness beside a predicted one, if anything: a factor between them that no
     * tub explains, and the exchanged units that would.
     *
     * @param measured N·m/rad
     * @param predicted N·m/rad
     */
    public static Optional<String> against(double measured, double predicted) {
        double ratio = Math.max(measured / predicted, predicted / measured);
        if (!(ratio > APART)) {
            return Optional.empty();
        }
        String like = "";
        double nearest = Math.log(1.5);
        for (Object[] unit : UNITS) {
            double away = Math.abs(Math.log(ratio / (double) unit[0]));
            if (away < nearest) {
                nearest = away;
                like = ", and that is near " + unit[1];
            }
        }
        return Optional.of("what was measured is " + QuantityFormat.significant(ratio, 3) + " times as "
                + (measured > predicted ? "stiff" : "soft")
                + " as predicted; no ply or joint explains that" + like + ": check the units of load, arm and gauges");
    }
}
