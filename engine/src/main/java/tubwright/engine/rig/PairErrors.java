// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.Optional;

/**
 * What the gauges' places and least steps put on the angle of one pair against another.
 *
 * <p>A pair's own turning is wrong by √2 u/spacing of itself where its gauges' places are uncertain by u. The held pair
 * is subtracted with its error: a rig that gives makes both turnings greater than their difference, and both errors.
 *
 * @param read the pair
 * @param held the pair subtracted, if there is one
 * @param torque N·m, one a load step
 * @param cycle one a load step
 */
record PairErrors(StationMotion read, Optional<StationMotion> held, double[] torque, int[] cycle) {
    /** Standard uncertainty of angle over torque by the places of all four gauges, rad/(N·m). */
    double place(double uncertainty) {
        return read == held.orElse(null) ? 0 : Math.hypot(place(read, uncertainty), placeOfHeld(uncertainty));
    }

    /** The part of {@link #place} that is the held pair's and thus common to all angles read against it, rad/(N·m). */
    double placeOfHeld(double uncertainty) {
        return held.map(h -> place(h, uncertainty)).orElse(0.0);
    }

    /** Standard uncertainty of one angle by the least step that gauges show, rad (rectangular: step/√12 a reading). */
    double step(double resolution) {
        double each = Math.sqrt(2) * resolution / Math.sqrt(12);
        return Math.hypot(
                each / read.spacing(), held.map(h -> each / h.spacing()).orElse(0.0));
    }

    /** Standard error of the held pair's own slope, rad/(N·m). */
    double scatterOfHeld() {
        return held.map(h -> CycleFit.of(torque, h.angles(), cycle).standardError())
                .orElse(0.0);
    }

    private double place(StationMotion pair, double uncertainty) {
        double turning = CycleFit.of(torque, pair.angles(), cycle).slope();
        return Math.abs(turning) * Math.sqrt(2) * uncertainty / pair.spacing();
    }
}
