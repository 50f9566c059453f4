// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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
 * @param reserves lowest reserve factor of its zone in each load case, with and without it; none for joints, or where no
 *     load cases were watched
 * @param buckling lowest buckling factor of the tub in each load case, with and without it, to first order
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
        int steps,
        List<Guard> reserves,
        List<Guard> buckling) {
    public LedgerEntry {
        reserves = List.copyOf(reserves);
        buckling = List.copyOf(buckling);
    }

    /** What is given up. */
    public enum Kind {
        /** A ply or a sheet, wholly. */
        PLY,
        /** {@link Ledger#CORE_STEP} of a core's thickness, or half of a thin one. */
        CORE,
        /** Half of a joint's stiffness. */
        JOINT
    }

    /** The lowest reserve factor without it over all load cases. */
    public Optional<Guard> lowestReserve() {
        return reserves.stream().min(Comparator.comparingDouble(Guard::after));
    }

    /** The lowest buckling factor without it over all load cases. */
    public Optional<Guard> lowestBuckling() {
        return buckling.stream().min(Comparator.comparingDouble(Guard::after));
    }

    /** Stiffness lost for each kilogram given back; infinite where no mass is. */
    public double lostPerKilogram() {
        return lost / mass;
    }
}
