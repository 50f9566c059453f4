// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Notches;
import tubwright.engine.make.flat.Outlines;

/** Read back by the rules of the format: group codes in pairs, sections, blocks, closed polylines on the cutters' layers. */
class FlatDxfTest {
    private static final FlatPattern SQUARE = new FlatPattern(
            "lower shell 01 a",
            List.of(new double[] {0, 0, 0.4, 0, 0.4, 0.3, 0, 0.3}, new double[] {0.1, 0.1, 0.2, 0.1, 0.2, 0.2}),
            List.of(new double[] {0, 0.15, 0.4, 0.15}),
            new double[] {0.05, 0.05},
            0.3,
            new Distortion(0, 0, 0, 0, 0, 0, 0),
            0);

    private record Pair(int code, String value) {}

    private static List<Pair> pairs(String text) {
        String[] lines = text.split("\n");
        assertEquals(0, lines.length % 2, "codes and values come in pairs");
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; i < lines.length; i += 2) {
            pairs.add(new Pair(Integer.parseInt(lines[i].strip()), lines[i + 1]));
        }
        return pairs;
    }

    @Test
    void outlinesComeBackInMillimetresOnTheirLayers() {
        List<Pair> pairs = pairs(FlatDxf.write(List.of(SQUARE)));
        assertEquals(new Pair(0, "EOF"), pairs.getLast());
        assertEquals("4", after(pairs, new Pair(9, "$INSUNITS")).value());
        assertEquals(400 * 300, area(pairs, "1"), 1e-6);
        assertEquals(100 * 100 / 2.0, area(pairs, "11"), 1e-6);
        assertEquals(2, closed(pairs));
    }

    @Test
    void notchesAreSlitsOnTheirLayer() {
        String dxf = FlatDxf.write(List.of(Notches.on(SQUARE)));
        // Both ends of the drawn line, and the warp at either edge.
        assertEquals(4, dxf.split("LINE\n  8\n4\n").length - 1);
        assertTrue(FlatSvg.write(List.of(Notches.on(SQUARE))).contains("class=\"l4\""));
    }

    @Test
    void everyLayerUsedIsInTheTableAndEveryBlockIsPlaced() {
        List<Pair> pairs = pairs(FlatDxf.write(List.of(SQUARE, SQUARE)));
        Set<String> table = new HashSet<>();
        for (int i = 0; i + 1 < pairs.size(); i++) {
            if (pairs.get(i).equals(new Pair(0, "LAYER"))) {
                table.add(pairs.get(i + 1).value());
            }
        }
        pairs.stream().filter(p -> p.code() == 8).forEach(p -> assertTrue(table.contains(p.value()), p::toString));
        long blocks = pairs.stream().filter(new Pair(0, "BLOCK")::equals).count();
        assertEquals(2, blocks);
        assertEquals(
                blocks, pairs.stream().filter(new Pair(0, "INSERT")::equals).count());
        assertEquals(
                depth(pairs, "SECTION"),
                pairs.stream().filter(new Pair(0, "ENDSEC")::equals).count());
    }

    private static long depth(List<Pair> pairs, String word) {
        return pairs.stream().filter(new Pair(0, word)::equals).count();
    }

    private static Pair after(List<Pair> pairs, Pair pair) {
        return pairs.get(pairs.indexOf(pair) + 1);
    }

    private static long closed(List<Pair> pairs) {
        long count = 0;
        for (int i = 0; i < pairs.size(); i++) {
            if (pairs.get(i).equals(new Pair(0, "POLYLINE"))) {
                int j = i + 1;
                while (pairs.get(j).code() != 70) {
                    j++;
                }
                count += pairs.get(j).value().equals("1") ? 1 : 0;
            }
        }
        return count;
    }

    /** Area in mm² of the first polyline on a layer. */
    private static double area(List<Pair> pairs, String layer) {
        List<Double> points = new ArrayList<>();
        boolean inside = false;
        for (int i = 0; i < pairs.size(); i++) {
            Pair p = pairs.get(i);
            if (p.equals(new Pair(0, "POLYLINE")) && pairs.get(i + 1).value().equals(layer)) {
                inside = true;
            } else if (p.equals(new Pair(0, "SEQEND"))) {
                if (inside) {
                    break;
                }
            } else if (inside && p.equals(new Pair(0, "VERTEX"))) {
                points.add(Double.parseDouble(pairs.get(i + 2).value()));
                points.add(Double.parseDouble(pairs.get(i + 3).value()));
            }
        }
        return Math.abs(
                Outlines.area(points.stream().mapToDouble(Double::doubleValue).toArray()));
    }
}
