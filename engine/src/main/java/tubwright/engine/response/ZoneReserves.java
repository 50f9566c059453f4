// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Structure;

/**
 * The lowest reserve factor of plies and sandwich over some of a tub's shells, for laminates that may differ from those
 * the tub was built with: what a zone keeps when a ply is left out of it. Places at inserts, where stress depends on the
 * mesh, are left to the reserve table.
 */
public final class ZoneReserves {
    private final Structure structure;
    private final StrengthBasis basis;
    private final Resolution resolution;

    /**
     * @param structure with the nominal laminates
     * @param basis criteria and knock-downs
     */
    public ZoneReserves(Structure structure, StrengthBasis basis) {
        this.structure = structure;
        this.basis = basis;
        resolution = new Resolution(structure);
    }

    /**
     * The lowest factor away from inserts.
     *
     * @param elements in rising order
     * @param laminates of all regions, mirrored where the region is
     * @param load name of the case
     * @param displacements of the case, 6 per node
     * @return empty where nothing can fail: no ply strengths are known, or all elements lie at inserts
     */
    public Optional<Reserve> lowest(int[] elements, Laminate[] laminates, String load, double[] displacements) {
        LayerStresses[] regions = new LayerStresses[laminates.length];
        Arrays.fill(regions, LayerStresses.NONE);
        int[] ofElement = structure.mesh().elementRegions();
        int[] touched =
                Arrays.stream(elements).map(e -> ofElement[e]).distinct().toArray();
        for (int r : touched) {
            regions[r] = new LayerStresses(laminates[r], basis);
        }
        PlySweep sweep = new PlySweep(structure, List.of(displacements), regions, resolution, elements);
        List<Reserve> rows = new ArrayList<>();
        new PlyReserves(structure, laminates, regions, resolution, basis).add(sweep, 0, load, displacements, rows);
        for (int r : touched) {
            int[] own = Arrays.stream(elements).filter(e -> ofElement[e] == r).toArray();
            SandwichReserves.of(structure, r, laminates[r], own)
                    .ifPresent(s -> rows.addAll(s.in(sweep, 0, load, resolution).rows()));
        }
        return rows.stream().filter(r -> !r.local()).min(Comparator.comparingDouble(Reserve::value));
    }
}
