// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.material;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;

/** Makes a material from the words of a text file; every refusal names the word that would be right. */
public final class MaterialBuilder {
    /** Kinds of material, as written in material files. */
    public static final List<String> KINDS = List.of("ply", "core", "adhesive", "metal");

    private final String name;
    private final String kind;
    private String form = "";
    private String description = "";
    private final Map<Property, PropertyValue> values = new EnumMap<>(Property.class);

    /**
     * Starts a material.
     *
     * @throws MaterialException if there is no such kind
     */
    public MaterialBuilder(String name, String kind) {
        this.name = name;
        this.kind = kind;
        if (!KINDS.contains(kind)) {
            throw unknown("kind of material", kind, KINDS);
        }
    }

    /** Forms a kind of material may have; empty for metals. */
    public static List<String> forms(String kind) {
        return switch (kind) {
            case "ply" -> words(Ply.Form.values(), Ply.Form::word);
            case "core" -> words(Core.Form.values(), Core.Form::word);
            case "adhesive" -> words(Adhesive.Form.values(), Adhesive.Form::word);
            default -> List.of();
        };
    }

    /** Sets the form, one of {@link #forms(String)}. */
    public MaterialBuilder form(String word) {
        if (!forms(kind).contains(word)) {
            throw unknown("form of " + kind, word, forms(kind));
        }
        form = word;
        return this;
    }

    /** Sets the line for the reader. */
    public MaterialBuilder description(String text) {
        description = text;
        return this;
    }

    /**
     * Sets one value from text.
     *
     * @param key one of {@link Property#keys()}
     * @param text number with unit
     * @throws MaterialException if the key is unknown
     * @throws tubwright.engine.quantity.QuantityException if the text is not such a quantity
     */
    public MaterialBuilder value(String key, String text, Provenance provenance) {
        Property property = Property.withKey(key).orElseThrow(() -> unknown("property", key, Property.keys()));
        double si = Quantity.parse(text, property.dimension()).si();
        property.fault(si).ifPresent(fault -> {
            throw new MaterialException("material '" + name + "': " + fault + ", not " + text);
        });
        values.put(property, new PropertyValue(si, provenance));
        return this;
    }

    /** The material, estimates filled in; refused with {@link MaterialException} if something needed is missing. */
    public Material build() {
        PropertyTable table = new PropertyTable(values);
        if (form.isEmpty() && !forms(kind).isEmpty()) {
            throw new MaterialException("material '" + name + "': form is missing; a " + kind + " is one of "
                    + String.join(", ", forms(kind)));
        }
        return switch (kind) {
            case "ply" -> Ply.of(name, description, pick(Ply.Form.values(), Ply.Form::word), table);
            case "core" -> Core.of(name, description, pick(Core.Form.values(), Core.Form::word), table);
            case "adhesive" -> Adhesive.of(name, description, pick(Adhesive.Form.values(), Adhesive.Form::word), table);
            default -> Metal.of(name, description, table);
        };
    }

    private <T> T pick(T[] all, Function<T, String> word) {
        return Arrays.stream(all)
                .filter(f -> word.apply(f).equals(form))
                .findFirst()
                .orElseThrow();
    }

    private static <T> List<String> words(T[] all, Function<T, String> word) {
        return Arrays.stream(all).map(word).toList();
    }

    private MaterialException unknown(String what, String word, List<String> valid) {
        String hint = NearestName.of(word, valid)
                .map(nearest -> "did you mean '" + nearest + "'?")
                .orElse("valid are " + String.join(", ", valid));
        return new MaterialException("material '" + name + "': no " + what + " is called '" + word + "'; " + hint);
    }
}
