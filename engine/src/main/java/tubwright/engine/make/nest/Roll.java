// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

/**
 * What is cut from.
 *
 * @param width usable between the selvedges, m
 * @param gap least distance between pieces: the knife's kerf and what it needs to turn, m; not to the edges
 */
public record Roll(double width, double gap) {
    /** Refuses what is no roll. */
    public Roll {
        if (!(width > 0) || !(gap >= 0)) {
            throw new NestException(
                    "a roll is wider than nothing and its gap not negative, not " + width + " m and " + gap + " m");
        }
    }
}
