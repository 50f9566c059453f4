// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;

/**
 * The first matrix crack and the first fibre failure of a laminate whose load grows, stiffness unchanged.
 *
 * <p>The two are kept apart on purpose: with cure stress the first crack comes at a small part of the load that breaks the
 * laminate. Fibre failure here is that of the uncracked laminate; {@link LastPlyFailure} lets the cracks soften it.
 *
 * @param matrix the first crack between fibres, if any multiple of the load makes one
 * @param fibre the first fibre failure (or yield of a metal sheet)
 * @param notChecked layers that lack data
 */
public record FirstPlyFailure(
        Optional<PlyFinding> matrix, Optional<PlyFinding> fibre, List<Check.NotChecked> notChecked) {

    /**
     * Under growing resultants.
     *
     * @param resultants (Nx, Ny, Nxy, Mx, My, Mxy) about the laminate's reference surface, N/m and N, mechanical; these
     *     grow
     * @param climate change since the stress-free state; its stresses stay
     */
    public static FirstPlyFailure of(Laminate laminate, double[] resultants, Climate climate, LayerCriteria criteria) {
        List<Optional<PreparedCriterion>> prepared = PlyStresses.prepare(laminate, criteria);
        PlyStresses stresses = new PlyStresses(laminate, resultants, climate);
        Optional<PlyFinding> matrix = Optional.empty();
        Optional<PlyFinding> fibre = Optional.empty();
        for (int i = 0; i < prepared.size(); i++) {
            if (prepared.get(i).orElse(null) instanceof PlyCriterion criterion) {
                matrix = earlier(matrix, stresses.earliest(i, criterion, false));
                fibre = earlier(fibre, stresses.earliest(i, criterion, true));
            }
        }
        return new FirstPlyFailure(matrix, fibre, PlyStresses.notChecked(prepared));
    }

    /** Smallest factor of both, infinite if nothing fails; layers not checked are not in it. */
    public double reserveFactor() {
        return Math.min(factor(matrix), factor(fibre));
    }

    private static double factor(Optional<PlyFinding> finding) {
        return finding.map(f -> f.failure().reserveFactor()).orElse(Double.POSITIVE_INFINITY);
    }

    private static Optional<PlyFinding> earlier(Optional<PlyFinding> a, Optional<PlyFinding> b) {
        return factor(b) < factor(a) ? b : a;
    }
}
