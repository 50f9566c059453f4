// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Ply;

/** The difference between two stacks as one tells it on the shop floor. */
final class LaminatorWords {
    private LaminatorWords() {}

    /** {@code "leave out 1 × 0° tape and 2 × 45° cloth of each skin; core 15 mm instead of 20"}. */
    static String of(Laminate before, Laminate after) {
        List<Map<String, Integer>> was = skins(before);
        List<Map<String, Integer>> is = skins(after);
        List<String> parts = new ArrayList<>();
        if (was.size() == 2 && is.size() == 2) {
            String outer = missing(was.getFirst(), is.getFirst());
            String inner = missing(was.getLast(), is.getLast());
            if (outer.equals(inner)) {
                add(parts, "leave out ", outer, " of each skin");
            } else {
                add(parts, "leave out ", outer, " of the outer skin");
                add(parts, "leave out ", inner, " of the inner skin");
            }
            outer = missing(is.getFirst(), was.getFirst());
            inner = missing(is.getLast(), was.getLast());
            if (outer.equals(inner)) {
                add(parts, "add ", outer, " to each skin");
            } else {
                add(parts, "add ", outer, " to the outer skin");
                add(parts, "add ", inner, " to the inner skin");
            }
        } else {
            add(parts, "leave out ", missing(was.getFirst(), is.getFirst()), "");
            add(parts, "add ", missing(is.getFirst(), was.getFirst()), "");
        }
        double from = core(before);
        double to = core(after);
        if (Math.abs(from - to) > 1e-9) {
            parts.add("core " + millimetres(to) + " mm instead of " + millimetres(from));
        }
        return String.join("; ", parts);
    }

    private static void add(List<String> parts, String verb, String what, String where) {
        if (!what.isEmpty()) {
            parts.add(verb + what + where);
        }
    }

    private static String missing(Map<String, Integer> was, Map<String, Integer> is) {
        List<String> result = new ArrayList<>();
        was.forEach((kind, count) -> {
            int less = count - is.getOrDefault(kind, 0);
            if (less > 0) {
                result.add(less + " × " + kind);
            }
        });
        return String.join(" and ", result);
    }

    private static List<Map<String, Integer>> skins(Laminate laminate) {
        List<Map<String, Integer>> skins = new ArrayList<>(List.of(new TreeMap<>()));
        for (Layer layer : laminate.layers()) {
            if (layer.role() == LayerRole.CORE) {
                skins.add(new TreeMap<>());
            } else if (layer.role() == LayerRole.PLY) {
                boolean cloth = layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
                skins.getLast().merge(Math.round(layer.degrees()) + "° " + (cloth ? "cloth" : "tape"), 1, Integer::sum);
            }
        }
        return skins;
    }

    private static double core(Laminate laminate) {
        return laminate.layersWith(LayerRole.CORE).stream()
                .mapToDouble(Layer::thickness)
                .sum();
    }

    private static String millimetres(double metres) {
        double rounded = Math.round(1e4 * metres) / 10.0;
        return rounded == Math.rint(rounded) ? Long.toString(Math.round(rounded)) : Double.toString(rounded);
    }
}
