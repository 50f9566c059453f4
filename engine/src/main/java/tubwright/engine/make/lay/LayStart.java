// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.Locale;

/**
 * Where the designer wants cloth to be laid from, in place of the start that would be sought.
 *
 * @param of a piece, for all its cloth that lies there, or one ply by its name
 * @param at the point of the ply nearest to it is taken, m
 * @param turned warp at the start from the ply's nominal direction, anticlockwise seen from outside, rad
 */
public record LayStart(String of, double[] at, double turned) {
    /** A start farther than this from the middle of any element of a ply is not on it, m. */
    static final double NEAR = 0.05;

    /** The point in words. */
    String words() {
        return String.format(Locale.ROOT, "x, y, z = %.0f, %.0f, %.0f mm", 1e3 * at[0], 1e3 * at[1], 1e3 * at[2]);
    }
}
