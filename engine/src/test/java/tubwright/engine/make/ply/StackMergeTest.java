// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.ply;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;

/** Which plies run through from zone to zone. */
class StackMergeTest {
    private static final MaterialLibrary LIBRARY = MaterialLibrary.shipped();
    private static final Material CLOTH = LIBRARY.get("pw-t650-976");
    private static final Material CORE = LIBRARY.get("al-honeycomb-3.1-small-cell");

    @Test
    void outerPliesAreMatchedFromTheMouldAndInnerOnesFromTheInside() {
        StackMerge merge = new StackMerge();
        merge.add("sandwich", List.of(ply(45), ply(0), core(0.02), ply(0), ply(45)));
        merge.add("solid", List.of(ply(45), ply(0), ply(90), ply(90), ply(0), ply(45)));
        assertEquals(
                List.of(
                        Map.of("sandwich", 0, "solid", 0),
                        Map.of("sandwich", 1, "solid", 1),
                        Map.of("solid", 2),
                        Map.of("sandwich", 2),
                        Map.of("solid", 3),
                        Map.of("sandwich", 3, "solid", 4),
                        Map.of("sandwich", 4, "solid", 5)),
                places(merge));
    }

    @Test
    void coresOfDifferentThicknessAreCutApartButPliesRunOverBoth() {
        StackMerge merge = new StackMerge();
        merge.add("thick", List.of(ply(45), core(0.02), ply(45)));
        merge.add("thin", List.of(ply(45), core(0.01), ply(45)));
        assertEquals(
                List.of(
                        Map.of("thick", 0, "thin", 0),
                        Map.of("thick", 1),
                        Map.of("thin", 1),
                        Map.of("thick", 2, "thin", 2)),
                places(merge));
    }

    @Test
    void everyZoneKeepsItsOwnOrder() {
        StackMerge merge = new StackMerge();
        merge.add("a", List.of(ply(45), ply(0), ply(45), ply(90), core(0.02), ply(45)));
        merge.add("b", List.of(ply(0), ply(45), ply(90), ply(45), core(0.02), ply(0), ply(45)));
        for (String zone : List.of("a", "b")) {
            List<Integer> order = places(merge).stream()
                    .filter(p -> p.containsKey(zone))
                    .map(p -> p.get(zone))
                    .toList();
            assertEquals(order.stream().sorted().toList(), order);
            assertEquals(zone.equals("a") ? 6 : 7, order.size());
        }
    }

    private static List<Map<String, Integer>> places(StackMerge merge) {
        return merge.order().stream().map(StackMerge.Entry::inZone).collect(Collectors.toList());
    }

    private static Layer ply(double degrees) {
        return Layer.ofDegrees(CLOTH, degrees);
    }

    private static Layer core(double thickness) {
        return new Layer(CORE, thickness, 0);
    }
}
