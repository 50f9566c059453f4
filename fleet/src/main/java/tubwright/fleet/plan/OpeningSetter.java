// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.List;
import java.util.Locale;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Tree;
import tubwright.engine.quantity.NearestName;
import tubwright.fleet.Blueprint;

/**
 * Lets an opening grow about its middle: length and width by the same amount.
 *
 * @param path of the opening
 */
record OpeningSetter(List<String> path) implements Setter {
    static OpeningSetter of(Blueprint blueprint, Name name) {
        List<String> path = List.of("shape", "openings", name.text());
        if (blueprint.node(path).isEmpty()) {
            List<String> known = blueprint
                    .node(path.subList(0, 2))
                    .filter(Tree.Mapping.class::isInstance)
                    .map(t -> ((Tree.Mapping) t)
                            .entries().stream().map(e -> e.key().text()).toList())
                    .orElse(List.of());
            throw new DesignError(
                    name.place(),
                    "there is no opening \"" + name.text() + "\"",
                    NearestName.of(name.text(), known)
                            .map(n -> "did you mean \"" + n + "\"?")
                            .orElse("openings: " + String.join(", ", known)));
        }
        return new OpeningSetter(path);
    }

    private List<String> key(String key) {
        return List.of(path.get(0), path.get(1), path.get(2), key);
    }

    private boolean has(Edited design, String key) {
        return design.blueprint().node(key(key)).isPresent();
    }

    @Override
    public void set(Edited design, String text) {
        double by = Figure.of(text).orElseThrow().si();
        if (has(design, "outline")) {
            List<double[]> points = Figure.points(design.value(key("outline")));
            for (int axis = 0; axis < 2; axis++) {
                int a = axis;
                double low = points.stream().mapToDouble(p -> p[a]).min().orElseThrow();
                double high = points.stream().mapToDouble(p -> p[a]).max().orElseThrow();
                double middle = (low + high) / 2;
                points.forEach(p -> p[a] = middle + (p[a] - middle) * (1 + by / (high - low)));
            }
            design.set(key("outline"), Figure.points(points));
            return;
        }
        for (String length : List.of("width", "diameter")) {
            if (has(design, length)) {
                double was = Figure.of(design.value(key(length))).orElseThrow().si();
                design.set(key(length), Figure.millimetres(was + by) + " mm");
            }
        }
        for (String span : List.of("x", "z")) {
            if (has(design, span)) {
                List<Figure> ends =
                        Figure.several(design.value(key(span)), "\\.\\.").orElseThrow();
                design.set(
                        key(span),
                        String.format(
                                Locale.ROOT,
                                "%s .. %s mm",
                                Figure.millimetres(ends.getFirst().si() - by / 2),
                                Figure.millimetres(ends.getLast().si() + by / 2)));
            }
        }
    }

    @Override
    public Figure present(Edited design) {
        return new Figure(0, "mm");
    }
}
