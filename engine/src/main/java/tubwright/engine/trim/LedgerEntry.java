// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * One thing that may be given up, and what that costs.
 *
 * @param owner zone, patch or joint
 * @param kind what is given up
 * @param place number of the layer from the outer surface, from 1; 0 for a joint
 * @param material its name; empty for a joint
 * @param degrees of the layer's direction 1; 0 for a joint
 * @param thickness taken away, m; 0 for a joint
 * @param mass given back, kg; for a joint nothing
 * @param firstOrder bounds on the stiffness left, from the nominal solution alone
 * @param solved bounds on the stiffness left, after solving anew; N·m/rad or N/m as the case has it
 * @param lost stiffness lost against the nominal, middle of the solved bounds
 * @param steps back-substitutions the answer took
 */
public record LedgerEntry(
        Owner owner,
        Kind kind,
        int place,
        String material,
        double degrees,
        double thickness,
        double mass,
        Interval firstOrder,
        Interval solved,
        double lost,
        int steps) {
    /** What is given up. */
    public enum Kind {
        /** A ply or a sheet, wholly. */
        PLY,
        /** {@link Ledger#CORE_STEP} of a core's thickness, or half of a thin one. */
        CORE,
        /** Half of a joint's stiffness. */
        JOINT
    }

    /** Stiffness lost for each kilogram given back; infinite where no mass is. */
    public double lostPerKilogram() {
        return lost / mass;
    }
}
