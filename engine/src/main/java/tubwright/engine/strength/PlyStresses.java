// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.PlyState;

/** Mechanical and residual ply stresses of one laminate kept apart. */
final class PlyStresses {
    private final LaminateResponse mechanical;
    private final LaminateResponse residual;

    PlyStresses(Laminate laminate, double[] resultants, Climate climate) {
        mechanical = LaminateResponse.underResultants(laminate, resultants, Climate.NONE);
        residual = LaminateResponse.underResultants(laminate, new double[6], climate);
    }

    /** The earlier failure of the layer's two surfaces, of the fibres (true) or between them (false); empty if none. */
    Optional<PlyFinding> earliest(int index, PlyCriterion criterion, boolean fibre) {
        PlyState m = mechanical.layers().get(index);
        PlyState r = residual.layers().get(index);
        PlyFailure outer = criterion.assess(m.outer().plyStress(), r.outer().plyStress(), fibre);
        PlyFailure inner = criterion.assess(m.inner().plyStress(), r.inner().plyStress(), fibre);
        boolean atOuter = outer.reserveFactor() <= inner.reserveFactor();
        PlyFailure first = atOuter ? outer : inner;
        return first instanceof PlyFailure.Never
                ? Optional.empty()
                : Optional.of(new PlyFinding(index, m.layer(), atOuter, first));
    }

    /** One prepared criterion a layer; cores and films, which other checks look after, have none. */
    static List<Optional<PreparedCriterion>> prepare(Laminate laminate, LayerCriteria criteria) {
        List<Optional<PreparedCriterion>> prepared = new ArrayList<>();
        for (int i = 0; i < laminate.layers().size(); i++) {
            LayerRole role = laminate.layers().get(i).role();
            boolean ply = role == LayerRole.PLY || role == LayerRole.SHEET;
            prepared.add(ply ? Optional.of(criteria.at(laminate, i)) : Optional.empty());
        }
        return prepared;
    }

    /** What could not be checked, each reason once. */
    static List<Check.NotChecked> notChecked(List<Optional<PreparedCriterion>> prepared) {
        return prepared.stream()
                .flatMap(Optional::stream)
                .filter(Check.NotChecked.class::isInstance)
                .map(Check.NotChecked.class::cast)
                .distinct()
                .toList();
    }
}
