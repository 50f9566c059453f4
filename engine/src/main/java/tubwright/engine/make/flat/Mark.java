// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

/**
 * Something marked on a pattern besides its outline and the edges of zones.
 *
 * @param kind what it means
 * @param points 2 coordinates each, m: an open line, or a closed one whose last point repeats the first
 */
public record Mark(Kind kind, double[] points) {
    /** Kinds of marks. */
    public enum Kind {
        /** A slit from the outline inward, cut: what meets it lies against a line on the mould. */
        NOTCH,
        /** Where the ramp of a core's edge begins, drawn. */
        CHAMFER,
        /** Outline of an insert's potting or block in a core, drawn. */
        POTTING
    }
}
