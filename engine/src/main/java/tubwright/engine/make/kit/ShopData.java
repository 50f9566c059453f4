// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.make.data.SourcedText;
import tubwright.engine.make.data.SourcedText.Entry;
import tubwright.engine.make.nest.Roll;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.quantity.Dimension;

/**
 * Rolls and working times of a shop.
 *
 * @param rolls by kind of stock
 * @param times how long work takes
 */
public record ShopData(Map<Stock, Roll> rolls, Times times) {
    private static final String PATH = "/tubwright/kit/rolls.yaml";
    private static final List<String> ELSEWHERE = List.of("calendar", "waits", "tooling", "finishing", "prices");

    /**
     * Working times; each with its source.
     *
     * @param clothRate area of cloth laid per time once at speed, m²/s
     * @param clothDelay time constant until at speed, s
     * @param tapeRate likewise of tape
     * @param tapeDelay likewise of tape
     * @param slower factor on curved and small plies
     * @param cutRate length of outline cut per time, m/s
     * @param cutEach handling of each ply at the cutter, s
     * @param debulkEvery plies between debulks
     * @param debulk time of one, s
     * @param bagging before each cure, s
     * @param autoclave of each cure, s
     * @param demoulding after each cure, s
     * @param learning share of the time that each doubling of the number made leaves
     */
    public record Times(
            PropertyValue clothRate,
            PropertyValue clothDelay,
            PropertyValue tapeRate,
            PropertyValue tapeDelay,
            PropertyValue slower,
            PropertyValue cutRate,
            PropertyValue cutEach,
            PropertyValue debulkEvery,
            PropertyValue debulk,
            PropertyValue bagging,
            PropertyValue autoclave,
            PropertyValue demoulding,
            PropertyValue learning) {}

    /** Keeps a map of its own. */
    public ShopData {
        rolls = Collections.unmodifiableMap(new EnumMap<>(rolls));
    }

    /** What comes with the program. */
    public static ShopData shipped() {
        try (InputStream in = ShopData.class.getResourceAsStream(PATH)) {
            if (in == null) {
                throw new IllegalStateException("the shipped data " + PATH + " are missing");
            }
            return read("rolls.yaml", new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException("the shipped data " + PATH + " cannot be read", e);
        }
    }

    /**
     * Reads a file in the layout of the shipped one; parts it does not have are as shipped.
     *
     * @throws tubwright.engine.make.data.DataException naming file and line if it is not right
     */
    public static ShopData read(String file, String yaml) {
        Entry root = new SourcedText(file, yaml).root();
        Map<Stock, Roll> rolls = root.has("rolls") ? rolls(root.inside("rolls")) : shipped().rolls;
        Times times = root.has("hours") ? times(root.inside("hours")) : shipped().times;
        // The same file may say how the shop works, waits and charges, which is read elsewhere.
        ELSEWHERE.forEach(root::has);
        root.nothingElse();
        return new ShopData(rolls, times);
    }

    private static Map<Stock, Roll> rolls(Entry rolls) {
        Map<Stock, Roll> byKind = new EnumMap<>(Stock.class);
        for (Stock kind : Stock.values()) {
            Entry roll = rolls.inside(kind.word());
            Entry values = roll.inside("values");
            byKind.put(
                    kind,
                    new Roll(
                            roll.value(values, "width", Dimension.LENGTH).si(),
                            roll.value(values, "gap", Dimension.LENGTH).si()));
            values.nothingElse();
            roll.nothingElse();
        }
        rolls.nothingElse();
        return byKind;
    }

    private static Times times(Entry hours) {
        Entry laying = hours.inside("laying");
        Entry cutting = hours.inside("cutting");
        Entry debulk = hours.inside("debulk");
        Entry cure = hours.inside("cure");
        Entry learning = hours.inside("learning");
        hours.nothingElse();
        return new Times(
                of(laying, "cloth area per time", Dimension.AREA_RATE),
                of(laying, "cloth time constant", Dimension.TIME),
                of(laying, "tape area per time", Dimension.AREA_RATE),
                of(laying, "tape time constant", Dimension.TIME),
                of(laying, "slower on curves", Dimension.DIMENSIONLESS),
                of(cutting, "length per time", Dimension.VELOCITY),
                of(cutting, "each ply", Dimension.TIME),
                of(debulk, "plies between", Dimension.DIMENSIONLESS),
                of(debulk, "each", Dimension.TIME),
                of(cure, "bagging", Dimension.TIME),
                of(cure, "autoclave", Dimension.TIME),
                of(cure, "demoulding", Dimension.TIME),
                of(learning, "share at a doubling", Dimension.DIMENSIONLESS));
    }

    private static PropertyValue of(Entry entry, String key, Dimension dimension) {
        return entry.value(entry.inside("values"), key, dimension);
    }
}
