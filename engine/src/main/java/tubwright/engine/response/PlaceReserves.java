// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.strength.sandwich.Sandwich;
import tubwright.engine.structure.Structure;

/**
 * The lowest reserve factor of fibres (yield of metals) and sandwich over a few elements in many cases, for asking at many
 * places of one tub. First cracks between fibres and checks against theory are left out. Safe to use from several threads.
 */
public final class PlaceReserves {
    private static final Comparator<Reserve> LOWEST =
            Comparator.comparing(Reserve::local).thenComparingDouble(Reserve::value);

    private final Structure structure;
    private final Laminate[] laminates;
    private final StrengthBasis basis;
    private final LayerStresses[] regions;
    private final List<Optional<Sandwich>> sandwiches;
    private final Resolution resolution;

    /**
     * @param laminates of all regions, mirrored where the region is
     * @param basis criteria and knock-downs
     */
    public PlaceReserves(Structure structure, Laminate[] laminates, StrengthBasis basis) {
        this(structure, laminates, basis, true);
    }

    /**
     * As the other.
     *
     * @param sandwich whether to check sandwiches as such, or their plies alone
     */
    public PlaceReserves(Structure structure, Laminate[] laminates, StrengthBasis basis, boolean sandwich) {
        this.structure = structure;
        this.laminates = laminates;
        this.basis = basis;
        regions = Arrays.stream(laminates).map(l -> new LayerStresses(l, basis)).toArray(LayerStresses[]::new);
        sandwiches = Arrays.stream(laminates)
                .map(l -> sandwich ? Sandwich.of(l) : Optional.<Sandwich>empty())
                .toList();
        resolution = new Resolution(structure);
    }

    /**
     * The lowest factor of each case: away from inserts where there is such a place, else at one.
     *
     * @param elements in rising order
     * @param loads names of the cases
     * @param fields displacements of each, 6 per node; only those of the elements' nodes count
     * @return one a case; empty where nothing can fail: no strengths are known
     */
    public List<Optional<Reserve>> lowest(int[] elements, List<String> loads, List<double[]> fields) {
        LayerStresses[] here = new LayerStresses[regions.length];
        Arrays.fill(here, LayerStresses.NONE);
        Map<Integer, List<Integer>> byRegion = new LinkedHashMap<>();
        for (int e : elements) {
            int region = structure.mesh().elementRegions()[e];
            here[region] = regions[region];
            byRegion.computeIfAbsent(region, _ -> new ArrayList<>()).add(e);
        }
        PlySweep sweep = new PlySweep(structure, fields, here, resolution, elements);
        PlyReserves plies = new PlyReserves(structure, laminates, here, resolution, basis);
        List<SandwichReserves> walls = new ArrayList<>();
        byRegion.forEach((region, own) -> sandwiches
                .get(region)
                .ifPresent(s -> walls.add(SandwichReserves.of(
                        structure, region, s, own.stream().mapToInt(e -> e).toArray()))));
        List<Optional<Reserve>> lowest = new ArrayList<>();
        for (int c = 0; c < fields.size(); c++) {
            List<Reserve> rows = new ArrayList<>();
            plies.add(sweep, c, loads.get(c), fields.get(c), rows);
            for (SandwichReserves each : walls) {
                rows.addAll(each.in(sweep, c, loads.get(c), resolution).rows());
            }
            lowest.add(rows.stream()
                    .filter(r -> !r.firstCrack() && !r.check().endsWith(SandwichReserves.THEORY))
                    .min(LOWEST));
        }
        return lowest;
    }

    /** The lower of two: away from inserts where one is. */
    public static Optional<Reserve> lower(Optional<Reserve> one, Optional<Reserve> two) {
        return Stream.concat(one.stream(), two.stream()).min(LOWEST);
    }
}
