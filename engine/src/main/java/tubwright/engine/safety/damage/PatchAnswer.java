// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.response.Reserve;

/**
 * What a tub still carries with a patch damaged.
 *
 * @param patch where
 * @param degree how badly
 * @param lost share of its ties or bars that each joint, hardpoint or stiffener loses, by name
 * @param stiffness of the cases that are read as stiffness
 * @param loads of the load cases
 */
public record PatchAnswer(
        Patch patch, Degree degree, Map<String, Double> lost, List<Stiffness> stiffness, List<UnderLoad> loads) {
    public PatchAnswer {
        lost = Map.copyOf(lost);
        stiffness = List.copyOf(stiffness);
        loads = List.copyOf(loads);
    }

    /**
     * Stiffness of one case, N·m/rad or N/m. What the damage adds to the give is taken from the work of the load.
     *
     * @param name the case
     * @param torsion true for torsion, false for bending
     * @param before of the whole tub, between its sections
     * @param after nought where the load finds no way any more; not a number where part of the load acted on what is gone
     */
    public record Stiffness(String name, boolean torsion, double before, double after) {
        /** Share of the stiffness that is lost. */
        public double share() {
            return 1 - after / before;
        }
    }

    /**
     * One load case.
     *
     * @param name the case
     * @param before lowest reserve factor of the whole tub at the places looked at: beside a hole; on the patch if that is
     *     only weakened, and beside it
     * @param after the same with the damage, the load having found its way round
     * @param disconnected hardpoints, bodies and points whose load acted on what is gone and has no path left
     * @param loose true where something is left with a motion that nothing resists: the case is not carried
     */
    public record UnderLoad(
            String name, Optional<Reserve> before, Optional<Reserve> after, List<String> disconnected, boolean loose) {
        public UnderLoad {
            disconnected = List.copyOf(disconnected);
        }

        /** Factor by which the reserve falls; one where nothing is known. */
        public double fall() {
            return before.isPresent() && after.isPresent()
                    ? after.get().value() / before.get().value()
                    : 1;
        }
    }

    /** The load case with the lowest reserve factor after the hit. */
    public Optional<UnderLoad> worst() {
        return loads.stream()
                .filter(l -> l.after().isPresent())
                .min(Comparator.comparingDouble(l -> l.after().get().value()));
    }

    /** The largest share of torsional stiffness lost; not a number where it is not known. */
    public double torsionLost() {
        return stiffness.stream()
                .filter(Stiffness::torsion)
                .mapToDouble(Stiffness::share)
                .max()
                .orElse(Double.NaN);
    }

    /** Names of loads that have no path left, each once. */
    public List<String> disconnected() {
        return loads.stream()
                .flatMap(l -> l.disconnected().stream())
                .distinct()
                .sorted()
                .toList();
    }

    /** Whether any case is left with a motion that nothing resists. */
    public boolean loose() {
        return loads.stream().anyMatch(UnderLoad::loose) || stiffness.stream().anyMatch(s -> s.after() == 0);
    }
}
