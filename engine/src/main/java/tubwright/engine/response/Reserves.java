// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;

/**
 * Reserve factors of a tub in its load cases: every ply at both its surfaces at every strain point, sandwich at every
 * element, joints, inserts. A factor scales the case's loads; the stress left by the cure stays.
 */
public final class Reserves {
    private Reserves() {}

    /** As below, for a tub without panels of thin metal sheet. */
    public static ReserveTable of(
            Structure structure, Laminate[] laminates, List<Solution> solutions, StrengthBasis basis) {
        return of(structure, laminates, solutions, basis, SheetPanels.NONE);
    }

    /**
     * Finds them.
     *
     * @param laminates of each region of the mesh
     * @param solutions of load cases
     * @param sheets panels of thin metal sheet
     */
    static ReserveTable of(
            Structure structure,
            Laminate[] laminates,
            List<Solution> solutions,
            StrengthBasis basis,
            SheetPanels sheets) {
        if (solutions.isEmpty()) {
            return ReserveTable.NONE;
        }
        Set<Check.NotChecked> notChecked = new LinkedHashSet<>(basis.gaps());
        LayerStresses[] regions = new LayerStresses[laminates.length];
        for (int r = 0; r < regions.length; r++) {
            regions[r] = new LayerStresses(laminates[r], basis);
            notChecked.addAll(regions[r].notChecked());
        }
        Resolution resolution = new Resolution(structure);
        List<double[]> fields = solutions.stream().map(Solution::displacements).toList();
        PlySweep sweep = new PlySweep(structure, fields, regions, resolution);
        PlyReserves plies = new PlyReserves(structure, laminates, regions, resolution, basis);
        InsertReserves inserts = new InsertReserves(structure, laminates, basis);
        JointReserves joints = new JointReserves(structure, laminates, basis, notChecked);
        BarReserves bars = new BarReserves(structure, sheets);
        double[][] shear = sheets.shearStresses(structure, fields);
        List<Reserve> rows = new ArrayList<>();
        Map<String, String> loads = new LinkedHashMap<>();
        for (int c = 0; c < solutions.size(); c++) {
            Case solved = solutions.get(c).solved();
            loads.put(solved.name(), solved instanceof Case.Loads l ? l.source() : "");
            plies.add(sweep, c, solved.name(), fields.get(c), rows);
            inserts.add(solutions.get(c), rows, notChecked);
            sheets.add(structure, solved.name(), shear[c], rows, notChecked);
            bars.add(solved.name(), fields.get(c), shear[c], rows, notChecked);
            joints.add(sweep, c, solved.name(), fields.get(c), sheets.folds(structure, shear[c]), rows, notChecked);
        }
        ReserveMap.Builder map = new ReserveMap.Builder(structure.mesh().elementCount(), List.copyOf(loads.keySet()));
        plies.map(sweep, fields, map);
        Mesh mesh = structure.mesh();
        List<SandwichReserves> sandwiches = new ArrayList<>();
        for (int r = 0; r < laminates.length; r++) {
            int region = r;
            int[] elements = IntStream.range(0, mesh.elementCount())
                    .filter(e -> mesh.elementRegions()[e] == region)
                    .toArray();
            SandwichReserves.of(structure, r, laminates[r], elements).ifPresent(sandwiches::add);
        }
        int count = solutions.size();
        List<SandwichReserves.Found> found = IntStream.range(0, sandwiches.size() * count)
                .parallel()
                .mapToObj(i -> sandwiches
                        .get(i / count)
                        .in(sweep, i % count, solutions.get(i % count).solved().name(), resolution))
                .toList();
        for (int i = 0; i < found.size(); i++) {
            int c = i % count;
            rows.addAll(found.get(i).rows());
            notChecked.addAll(found.get(i).notChecked());
            found.get(i).lowest().forEach(l -> map.lower(l.element(), c, l.factor(), l.mode()));
        }
        return new ReserveTable(
                lowestPerZone(rows), List.copyOf(notChecked), loads, basis.words(), Optional.of(map.build()));
    }

    /** One row a case, zone, check and kind, where several regions share a zone. */
    private static List<Reserve> lowestPerZone(List<Reserve> rows) {
        record Key(String load, String zone, String check, boolean firstCrack, boolean local) {}
        Map<Key, Reserve> lowest = new LinkedHashMap<>();
        for (Reserve row : rows) {
            lowest.merge(
                    new Key(row.load(), row.zone(), row.check(), row.firstCrack(), row.local()),
                    row,
                    (a, b) -> b.value() < a.value() ? b : a);
        }
        return List.copyOf(lowest.values());
    }
}
