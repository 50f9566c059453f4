// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.List;

/**
 * What a stack must keep to when plies are taken out of it or laid in, and what neighbours must keep to. Where the design
 * as it is steps further between two neighbours than the rules allow, its own step is allowed there.
 *
 * @param fewestPlies of each skin of a sandwich, and of each half of a solid laminate
 * @param mostAdded plies of each kind that may come on top of those of the design, in each skin
 * @param coreThicknesses stocked, m; a core keeps its own thickness besides
 * @param symmetry about the middle
 * @param balance of plies off 0 and 90
 * @param leastShare of the fibres in each of 0, 45, -45 and 90, 0 to 0.25; 0 where it is not asked
 * @param mostGrouped plies of one direction that may lie on one another
 * @param keepFaces whether the outer and the inner face keep their ply, which is chosen for its surface
 * @param mostDropped plies by which a skin may differ between neighbours
 * @param mostCoreStep thickness by which cores may differ between neighbours, m
 * @param fewestThrough plies of each skin that neighbours have in common, so that they can run through
 * @param mostStacks different stacks in all zones together
 * @param varyPatches whether plies of patches may be left out too
 * @param varyJoints whether joints may be made narrower, down to half
 */
public record LayupRules(
        int fewestPlies,
        int mostAdded,
        List<Double> coreThicknesses,
        Demand symmetry,
        Demand balance,
        double leastShare,
        int mostGrouped,
        boolean keepFaces,
        int mostDropped,
        double mostCoreStep,
        int fewestThrough,
        int mostStacks,
        boolean varyPatches,
        boolean varyJoints) {
    /** Where a rule holds. */
    public enum Demand {
        /** Nowhere. */
        FREE,
        /** Where the stack of the design keeps it. */
        AS_DESIGNED,
        /** Everywhere. */
        REQUIRED
    }

    /**
     * Two plies a skin, cores as designed, symmetry and balance kept, faces kept: common practice, no source. At most four
     * plies of one direction on one another: MIL-HDBK-17-3F chapter 12.
     */
    public static final LayupRules USUAL = new LayupRules(
            2,
            0,
            List.of(),
            Demand.AS_DESIGNED,
            Demand.AS_DESIGNED,
            0,
            4,
            true,
            Integer.MAX_VALUE,
            Double.POSITIVE_INFINITY,
            0,
            Integer.MAX_VALUE,
            false,
            false);

    public LayupRules {
        coreThicknesses = List.copyOf(coreThicknesses);
        if (fewestPlies < 1) {
            throw new IllegalArgumentException("a skin keeps at least one ply");
        }
        if (mostAdded < 0 || mostGrouped < 1 || mostDropped < 0 || fewestThrough < 0 || mostStacks < 1) {
            throw new IllegalArgumentException("numbers of plies and stacks cannot be negative, nor these nought");
        }
        if (!(leastShare >= 0 && leastShare <= 0.25) || !(mostCoreStep >= 0)) {
            throw new IllegalArgumentException("four directions share what there is, and a step is at least nought");
        }
    }

    /** The usual rules with other numbers. */
    public static LayupRules of(int fewestPlies, int mostAdded, List<Double> coreThicknesses) {
        return USUAL.withFewest(fewestPlies).withAdded(mostAdded).withCores(coreThicknesses);
    }

    public LayupRules withFewest(int plies) {
        return with(plies, mostAdded, coreThicknesses, mostDropped, mostCoreStep, fewestThrough, mostStacks);
    }

    public LayupRules withAdded(int plies) {
        return with(fewestPlies, plies, coreThicknesses, mostDropped, mostCoreStep, fewestThrough, mostStacks);
    }

    public LayupRules withCores(List<Double> thicknesses) {
        return with(fewestPlies, mostAdded, thicknesses, mostDropped, mostCoreStep, fewestThrough, mostStacks);
    }

    /** Other rules between neighbours. */
    public LayupRules withNeighbours(int dropped, double coreStep, int through, int stacks) {
        return with(fewestPlies, mostAdded, coreThicknesses, dropped, coreStep, through, stacks);
    }

    private LayupRules with(
            int fewest, int added, List<Double> cores, int dropped, double coreStep, int through, int stacks) {
        return new LayupRules(
                fewest,
                added,
                cores,
                symmetry,
                balance,
                leastShare,
                mostGrouped,
                keepFaces,
                dropped,
                coreStep,
                through,
                stacks,
                varyPatches,
                varyJoints);
    }
}
