// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.strength.Check;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.TornCases;
import tubwright.engine.structure.Tub;

/**
 * Joints, inserts and panels of sheet that are left when a patch is gone: their reserve factors before and after, in the same
 * places.
 */
public final class TornReserves {
    private TornReserves() {}

    /**
     * Lowest factor of one joint, insert or panel in one manner.
     *
     * @param before with all in place; infinite where nothing gave way
     * @param after with the patch gone
     */
    public record Row(double before, Reserve after) {}

    /**
     * Looks at them.
     *
     * @param torn elements that are gone, rising
     * @param whole the cases with nothing torn out
     * @param left the cases with the elements torn out
     * @return lowest after first
     */
    public static List<Row> of(Tub tub, Structure structure, int[] torn, TornCases whole, TornCases left) {
        Map<List<String>, Reserve> before = lowest(tub, structure, torn, left.lost(), whole);
        return lowest(tub, structure, torn, left.lost(), left).entrySet().stream()
                .map(e -> new Row(
                        before.containsKey(e.getKey()) ? before.get(e.getKey()).value() : Double.POSITIVE_INFINITY,
                        e.getValue()))
                .sorted(Comparator.comparingDouble(r -> r.after().value()))
                .toList();
    }

    /** By case, place and check, of cases that both could be solved. */
    private static Map<List<String>, Reserve> lowest(
            Tub tub, Structure structure, int[] torn, List<String> lost, TornCases cases) {
        if (cases.cases().isEmpty()) {
            return Map.of();
        }
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        Set<Check.NotChecked> notChecked = new HashSet<>();
        SheetPanels all = SheetPanels.of(tub, structure);
        SheetPanels sheets = new SheetPanels(all.panels().stream()
                .filter(p -> Arrays.stream(p.elements()).noneMatch(e -> Arrays.binarySearch(torn, e) >= 0))
                .toList());
        JointReserves joints = new JointReserves(structure, laminates, tub.strength(), notChecked);
        joints.leaveOut(torn);
        InsertReserves inserts = new InsertReserves(structure, laminates, tub.strength());
        inserts.leaveOut(lost);
        List<double[]> fields =
                cases.cases().stream().map(TornCases.OneCase::displacements).toList();
        LayerStresses[] none = new LayerStresses[laminates.length];
        Arrays.fill(none, LayerStresses.NONE);
        int[] elements = IntStream.range(0, structure.mesh().elementCount()).toArray();
        PlySweep sweep = new PlySweep(structure, fields, none, new Resolution(structure), elements);
        double[][] shear = sheets.shearStresses(structure, fields);
        Map<List<String>, Reserve> lowest = new LinkedHashMap<>();
        for (int c = 0; c < fields.size(); c++) {
            TornCases.OneCase each = cases.cases().get(c);
            String name = each.solved().name();
            List<Reserve> rows = new ArrayList<>();
            inserts.add(new Solution(each.solved(), fields.get(c), new double[0], 0, 0), rows, notChecked);
            sheets.add(structure, name, shear[c], rows, notChecked);
            joints.add(sweep, c, name, fields.get(c), sheets.folds(structure, shear[c]), rows, notChecked);
            for (Reserve row : rows) {
                lowest.merge(
                        List.of(row.load(), row.zone(), row.check()), row, (a, b) -> b.value() < a.value() ? b : a);
            }
        }
        return lowest;
    }
}
