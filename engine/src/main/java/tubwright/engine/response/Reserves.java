// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;

/**
 * Reserve factors of a tub in its load cases: every ply at both its surfaces at every strain point, sandwich at every
 * element, joints, inserts. A factor scales the case's loads; the stress left by the cure stays.
 */
public final class Reserves {
    private Reserves() {}

    /**
     * Finds them.
     *
     * @param laminates of each region of the mesh
     * @param solutions of load cases
     */
    public static ReserveTable of(
            Structure structure, Laminate[] laminates, List<Solution> solutions, StrengthBasis basis) {
        if (solutions.isEmpty()) {
            return ReserveTable.NONE;
        }
        Set<Check.NotChecked> notChecked = new LinkedHashSet<>(basis.gaps());
        LayerStresses[] regions = new LayerStresses[laminates.length];
        for (int r = 0; r < regions.length; r++) {
            regions[r] = new LayerStresses(laminates[r], basis);
            notChecked.addAll(regions[r].notChecked());
        }
        boolean[] local = local(structure);
        List<double[]> fields = solutions.stream().map(Solution::displacements).toList();
        PlySweep sweep = new PlySweep(structure, fields, regions, local);
        PlyReserves plies = new PlyReserves(structure, laminates, regions, basis);
        InsertReserves inserts = new InsertReserves(structure, laminates, basis);
        JointReserves joints = new JointReserves(structure, laminates, basis, notChecked);
        List<Reserve> rows = new ArrayList<>();
        Map<String, String> loads = new LinkedHashMap<>();
        for (int c = 0; c < solutions.size(); c++) {
            Case solved = solutions.get(c).solved();
            loads.put(solved.name(), solved instanceof Case.Loads l ? l.source() : "");
            plies.add(sweep, c, solved.name(), fields.get(c), rows);
            inserts.add(solutions.get(c), rows, notChecked);
            joints.add(sweep, c, solved.name(), fields.get(c), rows, notChecked);
        }
        Mesh mesh = structure.mesh();
        for (int r = 0; r < laminates.length; r++) {
            int region = r;
            int[] elements = IntStream.range(0, mesh.elementCount())
                    .filter(e -> mesh.elementRegions()[e] == region)
                    .toArray();
            SandwichReserves.of(structure, r, laminates[r]).ifPresent(s -> {
                for (int c = 0; c < solutions.size(); c++) {
                    s.add(sweep, c, solutions.get(c).solved().name(), elements, local, rows, notChecked);
                }
            });
        }
        return new ReserveTable(lowestPerZone(rows), List.copyOf(notChecked), loads, basis.words());
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

    /** Elements inside an insert's footprint or within one element of it. */
    static boolean[] local(Structure structure) {
        Mesh mesh = structure.mesh();
        boolean[] local = new boolean[mesh.elementCount()];
        for (int e = 0; e < local.length; e++) {
            double[] x = PlyReserves.centre(mesh, e);
            double size = Math.sqrt(mesh.area(e));
            for (Hardpoint h : structure.hardpoints()) {
                double[] p = h.position();
                double d = Math.hypot(Math.hypot(x[0] - p[0], x[1] - p[1]), x[2] - p[2]);
                local[e] |= d < h.footprintRadius() + size;
            }
        }
        return local;
    }
}
