// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A YAML document as read: scalars, lists and mappings, each with its place. */
public sealed interface Tree {
    /** Where it starts. */
    Place place();

    /** In words for a message: {@code a list}. */
    String kind();

    /**
     * A single value, as text. Whether it is a number or a name is for the reader of the record to decide.
     *
     * @param place where it starts
     * @param text the value without quotes, folded lines joined
     * @param plain true if written without quotes on one line, so that an offset into it is an offset in the file
     */
    record Scalar(Place place, String text, boolean plain) implements Tree {
        @Override
        public String kind() {
            return "\"" + text + "\"";
        }

        /** True for a value left empty. */
        public boolean empty() {
            return text.isBlank();
        }

        /** The place of the character at this index, as near as the way of writing allows. */
        public Place at(int index) {
            return plain ? place.plus(index) : place;
        }
    }

    /**
     * A list.
     *
     * @param place where it starts
     * @param items its items
     */
    record Listing(Place place, List<Tree> items) implements Tree {
        public Listing {
            items = List.copyOf(items);
        }

        @Override
        public String kind() {
            return "a list";
        }
    }

    /**
     * A mapping, in the order as written.
     *
     * @param place where it starts
     * @param entries its entries; keys are unique
     */
    record Mapping(Place place, List<Entry> entries) implements Tree {
        public Mapping {
            entries = List.copyOf(entries);
        }

        @Override
        public String kind() {
            return "a mapping";
        }

        /** The value of a key. */
        public Optional<Tree> get(String key) {
            return entries.stream()
                    .filter(e -> e.key.text.equals(key))
                    .map(Entry::value)
                    .findFirst();
        }

        /** This mapping with one entry replaced or, if new, put at the end. */
        public Mapping with(Entry entry) {
            List<Entry> changed = new ArrayList<>(entries);
            for (int i = 0; i < changed.size(); i++) {
                if (changed.get(i).key.text.equals(entry.key.text)) {
                    changed.set(i, entry);
                    return new Mapping(place, changed);
                }
            }
            changed.add(entry);
            return new Mapping(place, changed);
        }

        /** This mapping without a key. */
        public Mapping without(String key) {
            return new Mapping(
                    place, entries.stream().filter(e -> !e.key.text.equals(key)).toList());
        }
    }

    /** A key and its value. */
    record Entry(Scalar key, Tree value) {}
}
