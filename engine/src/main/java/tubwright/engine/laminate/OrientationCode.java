// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.quantity.NearestName;

/**
 * A layup as the trade writes it, after the laminate orientation code of MIL-HDBK-17: {@code [45c/0_2/core/0_2/45c]},
 * {@code [0/±45/90]s}, {@code [0/90]_2s}, {@code [0/90~]s}.
 *
 * <p>Items stand from the outer (tool) surface inward between slashes. An item is an angle in degrees, if need be with a
 * letter tag that picks the ply from the {@link Legend} ({@code 45c}); a word ({@code core}, {@code film}), if need be
 * with an angle ({@code core(90)}: the ribbon across); or a group in round brackets. {@code _2} (or a subscript) repeats
 * an item or group; {@code ±45} stands for 45/-45; {@code ~} (or an over-bar) marks the ply that a symmetric laminate
 * has once, at its middle. After the closing bracket {@code s} mirrors, a number repeats, {@code 2s} repeats then
 * mirrors. {@code ..} after a core at the end means the same skin mirrored.
 *
 * @param items every layer written out, from the outer surface inward
 */
public record OrientationCode(List<Item> items) {

    /** One layer of the code. */
    public sealed interface Item permits PlyItem, WordItem {
        /** Direction 1 of the material, degrees in (−90, 90]. */
        double degrees();
    }

    /**
     * A ply.
     *
     * @param degrees brought into (−90, 90]
     * @param tag letters that pick the ply from the legend; empty for the usual ply
     */
    public record PlyItem(double degrees, String tag) implements Item {
        public PlyItem {
            degrees = Angles.normalisedDegrees(degrees);
        }
    }

    /**
     * A layer known by a word.
     *
     * @param word for instance {@code core} or {@code film}
     * @param degrees brought into (−90, 90]
     */
    public record WordItem(String word, double degrees) implements Item {
        public WordItem {
            degrees = Angles.normalisedDegrees(degrees);
        }
    }

    public OrientationCode {
        items = List.copyOf(items);
        if (items.isEmpty()) {
            throw new IllegalArgumentException("an orientation code needs at least one layer");
        }
    }

    /** Reads a code; {@link LayupException} says what is wrong and where. */
    public static OrientationCode parse(String text) {
        return new OrientationCode(new OrientationCodeReader(text).read());
    }

    /** The shortest usual writing: runs as {@code _n}, symmetry as {@code s}, repetition as {@code _n}. */
    @Override
    public String toString() {
        return OrientationCodeWriter.write(items);
    }

    /**
     * The laminate it stands for.
     *
     * @throws LayupException if a tag or word is not in the legend
     */
    public Laminate toLaminate(Legend legend, Reference reference) {
        List<Layer> layers = new ArrayList<>();
        for (Item item : items) {
            String key = item instanceof PlyItem ply ? ply.tag() : ((WordItem) item).word();
            boolean word = item instanceof WordItem;
            Legend.Entry entry =
                    legend.find(key).orElseThrow(() -> new LayupException(toString(), -1, unknown(key, word, legend)));
            layers.add(new Layer(entry.material(), entry.thickness(), Math.toRadians(item.degrees())));
        }
        return new Laminate(layers, reference);
    }

    private static String unknown(String key, boolean word, Legend legend) {
        if (key.isEmpty()) {
            return "it has plies without a tag but no usual ply is named; name one or give every ply a tag";
        }
        List<String> known = legend.keys().stream().filter(k -> !k.isEmpty()).toList();
        String hint = NearestName.of(key, known)
                .map(near -> "did you mean '" + near + "'?")
                .orElse(known.isEmpty() ? "none are named" : "named are " + String.join(", ", known));
        return "nothing is named for " + (word ? "the word" : "the tag") + " '" + key + "'; " + hint;
    }
}
