// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Trees written as YAML: mappings in lines, lists in brackets. */
final class TreeText {
    private TreeText() {}

    /**
     * What follows a key and its colon.
     *
     * @param indent column of the key
     */
    static String lines(Tree value, int indent, String lineEnd) {
        String inside = lineEnd + " ".repeat(indent + 2);
        return switch (value) {
            case Tree.Scalar scalar -> " " + TextEdit.plainOrQuoted(scalar.text());
            case Tree.Listing listing
            when listing.items().stream().anyMatch(i -> !(i instanceof Tree.Scalar)) ->
                inside
                        + listing.items().stream()
                                .map(TreeText::inBrackets)
                                .collect(Collectors.joining("," + inside + " ", "[", "]"));
            case Tree.Listing listing -> " " + inBrackets(listing);
            case Tree.Mapping mapping when mapping.entries().isEmpty() -> " {}";
            case Tree.Mapping mapping ->
                mapping.entries().stream()
                        .map(e -> inside
                                + TextEdit.plainOrQuoted(e.key().text())
                                + ":"
                                + lines(e.value(), indent + 2, lineEnd))
                        .collect(Collectors.joining());
        };
    }

    /** On one line. */
    static String inBrackets(Tree value) {
        return switch (value) {
            case Tree.Scalar scalar -> TextEdit.plainOrQuoted(scalar.text());
            case Tree.Listing listing ->
                listing.items().stream().map(TreeText::inBrackets).collect(Collectors.joining(", ", "[", "]"));
            case Tree.Mapping mapping ->
                mapping.entries().stream()
                        .map(e -> TextEdit.plainOrQuoted(e.key().text()) + ": " + inBrackets(e.value()))
                        .collect(Collectors.joining(", ", "{", "}"));
        };
    }

    /** All single values by their paths, places in lists counted from 0. */
    static void flatten(Tree value, List<String> path, Map<List<String>, String> to) {
        switch (value) {
            case Tree.Scalar scalar -> to.put(path, scalar.text());
            case Tree.Listing listing -> {
                for (int i = 0; i < listing.items().size(); i++) {
                    flatten(listing.items().get(i), longer(path, Integer.toString(i)), to);
                }
            }
            case Tree.Mapping mapping ->
                mapping.entries()
                        .forEach(e -> flatten(e.value(), longer(path, e.key().text()), to));
        }
    }

    private static List<String> longer(List<String> path, String key) {
        List<String> longer = new ArrayList<>(path);
        longer.add(key);
        return longer;
    }
}
