// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * Buckling of a sheet under compression between two rivets: σ = c π² E/(12 (1 − ν²)) (t/s)² (wide column between rivets; the
 * fixities c from memory of common practice).
 */
public final class InterRivetBuckling {
    /** How well the head holds the sheet: c of a wide column whose clamped value is 4. */
    public enum Head {
        /** Universal, flat or pan head. */
        UNIVERSAL(4),
        /** Spot weld. */
        SPOT_WELD(3.5),
        /** Round, low head. */
        ROUND(3),
        /** Countersunk or dimpled. */
        COUNTERSUNK(1);

        private final double fixity;

        Head(double fixity) {
            this.fixity = fixity;
        }

        /** c. */
        public double fixity() {
            return fixity;
        }
    }

    private InterRivetBuckling() {}

    /**
     * Elastic stress at buckling, Pa; meaningless above the sheet's compressive yield.
     *
     * @param pitch s of the rivets along the load, m
     */
    public static double stress(Adherend sheet, double pitch, Head head) {
        double ratio = sheet.thickness() / pitch;
        double nu = sheet.poisson();
        return head.fixity() * Math.PI * Math.PI * sheet.modulus() / (12 * (1 - nu * nu)) * ratio * ratio;
    }
}
