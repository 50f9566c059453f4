// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.Optional;

/**
 * Lays one tree over another: how a variant differs from the design it belongs to.
 *
 * <p>Three rules. A mapping over a mapping goes entry by entry. Anything else replaces what was there. A key
 * {@code replace X} puts its value in the place of the whole of X, and the value {@code none} takes an entry out.
 */
public final class Overlay {
    private static final String REPLACE = "replace ";
    private static final String NONE = "none";

    private Overlay() {}

    /** {@code base} with {@code over} laid on it. */
    public static Tree.Mapping lay(Tree.Mapping base, Tree.Mapping over) {
        Tree.Mapping result = base;
        for (Tree.Entry entry : over.entries()) {
            String word = entry.key().text();
            if (word.startsWith(REPLACE)) {
                Tree.Scalar key = new Tree.Scalar(
                        entry.key().place(),
                        word.substring(REPLACE.length()),
                        entry.key().plain());
                result = result.with(new Tree.Entry(key, entry.value()));
            } else if (entry.value() instanceof Tree.Scalar scalar
                    && scalar.text().equals(NONE)) {
                if (base.get(word).isEmpty()) {
                    throw new DesignError(
                            entry.key().place(),
                            "\"" + word + ": none\" takes out what is not there",
                            ValueReader.meant(
                                    word,
                                    base.entries().stream()
                                            .map(e -> e.key().text())
                                            .toList()));
                }
                result = result.without(word);
            } else {
                Optional<Tree> below = result.get(word);
                Tree value = below.isPresent()
                                && below.get() instanceof Tree.Mapping lower
                                && entry.value() instanceof Tree.Mapping upper
                        ? lay(lower, upper)
                        : entry.value();
                result = result.with(new Tree.Entry(entry.key(), value));
            }
        }
        return result;
    }

    /**
     * What the entry at fault was probably meant to change: where a fault lies in an entry that {@code over} brings anew
     * and {@code base} has one whose name is nearly the same, {@code did you mean "x"? }.
     *
     * @param base what lies below
     * @param over what is laid on it
     * @param fault place of the fault
     */
    public static Optional<String> meant(Tree.Mapping base, Tree.Mapping over, Place fault) {
        for (Tree.Entry entry : over.entries()) {
            String word = entry.key().text();
            if (!holds(entry, fault) || word.startsWith(REPLACE)) {
                continue;
            }
            Optional<Tree> below = base.get(word);
            if (below.isEmpty()) {
                String meant = ValueReader.meant(
                        word, base.entries().stream().map(e -> e.key().text()).toList());
                return Optional.of(meant).filter(m -> !m.isEmpty());
            }
            return below.get() instanceof Tree.Mapping lower && entry.value() instanceof Tree.Mapping upper
                    ? meant(lower, upper, fault)
                    : Optional.empty();
        }
        return Optional.empty();
    }

    private static boolean holds(Tree.Entry entry, Place place) {
        return entry.key().place().equals(place) || holds(entry.value(), place);
    }

    private static boolean holds(Tree tree, Place place) {
        return tree.place().equals(place)
                || switch (tree) {
                    case Tree.Mapping mapping -> mapping.entries().stream().anyMatch(e -> holds(e, place));
                    case Tree.Listing listing -> listing.items().stream().anyMatch(t -> holds(t, place));
                    case Tree.Scalar scalar ->
                        scalar.plain()
                                && place.line() == scalar.place().line()
                                && place.column() > scalar.place().column()
                                && place.column()
                                        <= scalar.place().column()
                                                + scalar.text().length();
                };
    }
}
