// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Tree;
import tubwright.fleet.Blueprint;

/**
 * Sets single values of the design.
 *
 * @param paths of them
 * @param place where the study says so
 */
record ValueSetter(List<List<String>> paths, Place place) implements Setter {
    private static final String ALL = "all";

    /**
     * For a path in which "all" stands for every entry that has what follows.
     *
     * @throws DesignError if it leads to no value; it says what was probably meant
     */
    static ValueSetter of(Blueprint blueprint, List<String> path, Place place) {
        List<List<String>> paths = new ArrayList<>(List.of(List.of()));
        boolean several = false;
        for (int i = 0; i < path.size(); i++) {
            List<List<String>> longer = new ArrayList<>();
            for (List<String> each : paths) {
                if (path.get(i).equals(ALL) && blueprint.node(with(each, ALL)).isEmpty()) {
                    several = true;
                    blueprint.node(each).ifPresent(node -> keys(node).forEach(k -> longer.add(with(each, k))));
                } else {
                    longer.add(with(each, path.get(i)));
                }
            }
            paths = longer;
        }
        if (several) {
            paths.removeIf(p -> blueprint.node(p).isEmpty());
        }
        if (paths.isEmpty()) {
            throw new DesignError(
                    place,
                    "no entry has \"" + String.join(", ", path) + "\"",
                    "see the design for what its entries have");
        }
        for (List<String> each : paths) {
            try {
                blueprint.value(each);
            } catch (DesignError none) {
                // The study is what is wrong, not the design.
                DesignError.Fault fault = none.faults().getFirst();
                throw new DesignError(place, fault.read(), fault.help());
            }
        }
        return new ValueSetter(List.copyOf(paths), place);
    }

    private static List<String> keys(Tree node) {
        return switch (node) {
            case Tree.Mapping mapping ->
                mapping.entries().stream().map(e -> e.key().text()).toList();
            case Tree.Listing listing ->
                java.util.stream.IntStream.range(0, listing.items().size())
                        .mapToObj(Integer::toString)
                        .toList();
            case Tree.Scalar _ -> List.of();
        };
    }

    private static List<String> with(List<String> path, String key) {
        List<String> longer = new ArrayList<>(path);
        longer.add(key);
        return longer;
    }

    @Override
    public void set(Edited design, String text) {
        paths.forEach(p -> design.set(p, text));
    }

    @Override
    public Figure present(Edited design) {
        String text = design.value(paths.getFirst());
        return Figure.of(text)
                .orElseThrow(() -> new DesignError(
                        place,
                        "\"" + String.join(", ", paths.getFirst()) + "\" is \"" + text + "\", not a figure",
                        "write \"words:\" for what is no figure"));
    }
}
