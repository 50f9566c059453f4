// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Locale;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Place;
import tubwright.engine.load.Link;

/** Whether rod and damper have levers about the axis of their rocker: without them it does not carry what the rod brings. */
final class RockerLevers {
    /** Least lever of either, of the other's. */
    private static final double LEAST = 0.1;

    private RockerLevers() {}

    static void check(Place place, double[] pivot, double[] axis, Link rod, Link damper) {
        double ofRod = lever(pivot, axis, rod.inner(), rod.inward());
        double ofDamper = lever(pivot, axis, damper.outer(), damper.inward());
        if (Math.min(ofRod, ofDamper) >= LEAST * Math.max(ofRod, ofDamper)) {
            return;
        }
        boolean weakDamper = ofDamper < ofRod;
        throw new DesignError(
                place,
                String.format(
                        Locale.ROOT,
                        "the %s passes %.1f mm from the rocker's axis, the %s %.1f mm: %s",
                        weakDamper ? "damper" : "rod",
                        1e3 * Math.min(ofRod, ofDamper),
                        weakDamper ? "rod" : "damper",
                        1e3 * Math.max(ofRod, ofDamper),
                        weakDamper ? "the damper cannot hold the rod" : "the rod hardly turns the rocker"),
                "check pivot, axis, \"at rocker\" and \"damper at\"; either lever is a tenth of the other or more (common"
                        + " practice, no source)");
    }

    /** Distance from the axis at which a force along a line turns about it, m. */
    private static double lever(double[] pivot, double[] axis, double[] at, double[] along) {
        double[] arm = {at[0] - pivot[0], at[1] - pivot[1], at[2] - pivot[2]};
        double turn = axis[0] * (arm[1] * along[2] - arm[2] * along[1])
                + axis[1] * (arm[2] * along[0] - arm[0] * along[2])
                + axis[2] * (arm[0] * along[1] - arm[1] * along[0]);
        return Math.abs(turn) / Math.hypot(Math.hypot(axis[0], axis[1]), axis[2]);
    }
}
