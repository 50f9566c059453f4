// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Linear buckling of a tub's cases and its natural frequencies.
 *
 * @param buckling in the order of the cases; empty where not asked
 * @param free frequencies of the body free in space
 * @param held frequencies of the body held as the design says
 */
public record Stability(List<CaseBuckling> buckling, Optional<Vibrations> free, Optional<Vibrations> held) {
    /** Not asked. */
    public static final Stability NONE = new Stability(List.of(), Optional.empty(), Optional.empty());

    public Stability {
        buckling = List.copyOf(buckling);
    }

    /** Whether there is nothing. */
    public boolean none() {
        return buckling.isEmpty() && free.isEmpty() && held.isEmpty();
    }

    /**
     * The case that buckles first: of the load cases, or of all where there is no load case, because the loads of stiffness
     * cases are chosen for reading and not for their size. Empty where none buckles.
     */
    public Optional<CaseBuckling> first() {
        boolean loads = buckling.stream().anyMatch(CaseBuckling::loadCase);
        return buckling.stream()
                .filter(b -> (!loads || b.loadCase()) && b.lowest().isPresent())
                .min(Comparator.comparingDouble(b -> b.lowest().orElseThrow().factor()));
    }

    /** The same with mesh errors taken from another answer on a coarser mesh; see {@link CaseBuckling#against}. */
    Stability against(Stability coarser, double ratio) {
        List<CaseBuckling> judged = new java.util.ArrayList<>();
        for (int c = 0; c < buckling.size(); c++) {
            judged.add(
                    c < coarser.buckling.size()
                            ? buckling.get(c).against(coarser.buckling.get(c), ratio)
                            : buckling.get(c));
        }
        return new Stability(judged, against(free, coarser.free, ratio), against(held, coarser.held, ratio));
    }

    private static Optional<Vibrations> against(Optional<Vibrations> fine, Optional<Vibrations> coarse, double ratio) {
        return fine.isPresent() && coarse.isPresent() ? Optional.of(fine.get().against(coarse.get(), ratio)) : fine;
    }
}
