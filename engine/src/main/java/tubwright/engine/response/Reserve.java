// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

/**
 * How far one place is from giving way in one manner.
 *
 * @param load the case
 * @param check what was looked at: "Tsai-Wu", "wrinkling of the outer face, design value"
 * @param mode how it gives way: "fibre tension"; empty where the check says it
 * @param firstCrack true for a crack between fibres that does not yet part them
 * @param zone the zone, wall or hardpoint
 * @param ply which layer, counted from the outer face; empty where it is no ply
 * @param place m, 3 numbers
 * @param value factor on the case's loads at which it gives way
 * @param knockDown what was taken off the strengths
 * @param local true where stress depends on the mesh: inside an insert's footprint or next to it, on a patch that is small
 *     for the elements
 * @param settledBy element size that would settle it, m; 0 where no finer mesh is asked for (where {@code local}, a test
 *     would)
 * @param basis formula and source, in one line
 */
public record Reserve(
        String load,
        String check,
        String mode,
        boolean firstCrack,
        String zone,
        String ply,
        double[] place,
        double value,
        String knockDown,
        boolean local,
        double settledBy,
        String basis) {}
