// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import java.util.Optional;
import tubwright.numerics.eigen.InertiaCount;

/**
 * Linear buckling of one case.
 *
 * @param load the case
 * @param loadCase whether it is a load case, not one to read a stiffness from
 * @param modes factors rising; empty where the case's loads cannot buckle the tub
 * @param count proof that none was missed
 * @param meshError half-width of the error of the lowest factor that the mesh brings; NaN where one mesh alone was asked
 * @param note why there is no answer; empty where there is one
 */
public record CaseBuckling(
        String load, boolean loadCase, List<Buckle> modes, InertiaCount count, double meshError, String note) {
    public CaseBuckling {
        modes = List.copyOf(modes);
    }

    /** The mode that comes first. */
    public Optional<Buckle> lowest() {
        return modes.stream().findFirst();
    }

    /**
     * The same with the mesh error judged from a coarser mesh: the error of eigenvalues falls with the square of the mesh
     * size, so what is left is |change| / (ratio² − 1).
     */
    CaseBuckling against(CaseBuckling coarser, double ratio) {
        if (modes.isEmpty() || coarser.modes.isEmpty()) {
            return this;
        }
        double change =
                Math.abs(modes.getFirst().factor() - coarser.modes.getFirst().factor());
        return new CaseBuckling(load, loadCase, modes, count, change / (ratio * ratio - 1), note);
    }
}
