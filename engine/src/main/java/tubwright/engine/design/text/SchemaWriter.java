// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Writes the JSON Schema (2020-12) of a record, so that any editor completes and checks a document while it is typed.
 *
 * <p>Every record appears twice: in full, and as what a variant may hold of it ({@link Overlay}): nothing is required
 * there, "none" takes an entry out and "replace X" stands beside every key X.
 */
public final class SchemaWriter {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private final Class<?> root;
    private final ObjectNode definitions = JSON.objectNode();

    private SchemaWriter(Class<?> root) {
        this.root = root;
    }

    /** The schema as text, two blanks of indentation, a line feed at the end. */
    public static String write(Class<?> record, String title) {
        SchemaWriter writer = new SchemaWriter(record);
        ObjectNode schema = JSON.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", title);
        schema.setAll(writer.reference(record, false));
        schema.set("$defs", writer.definitions);
        var indenter = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        return JsonMapper.builder().build().writer().with(printer).writeValueAsString(schema) + "\n";
    }

    private ObjectNode reference(Class<?> record, boolean partial) {
        String name = Key.noun(record) + (partial ? " in a variant" : "");
        if (!definitions.has(name)) {
            definitions.set(name, JSON.objectNode()); // holds the place against recursion
            definitions.set(name, record(record, partial));
        }
        return refer(name);
    }

    private ObjectNode record(Class<?> record, boolean partial) {
        ObjectNode schema = JSON.objectNode();
        Says says = record.getAnnotation(Says.class);
        if (says != null) {
            schema.put("description", says.value());
        }
        schema.put("type", "object");
        ObjectNode properties = schema.putObject("properties");
        ArrayNode required = JSON.arrayNode();
        for (Key key : Key.of(record)) {
            if (partial && key.type() instanceof java.lang.reflect.ParameterizedType && isVariants(key.type())) {
                continue; // a variant has no variants
            }
            properties.set(key.word(), property(key, partial));
            if (partial) {
                properties.set("replace " + key.word(), property(key, false));
            } else if (key.required()) {
                required.add(key.word());
            }
        }
        schema.put("additionalProperties", false);
        if (!required.isEmpty()) {
            schema.set("required", required);
        }
        if (!partial) {
            choices(record, schema);
        }
        return schema;
    }

    private static boolean isVariants(Type type) {
        return Key.isNamedList(type) && Key.argument(Key.argument(type)) == Tree.Mapping.class;
    }

    private static void choices(Class<?> record, ObjectNode schema) {
        Choose[] choices = record.getAnnotationsByType(Choose.class);
        if (choices.length == 0) {
            return;
        }
        ArrayNode all = schema.putArray("allOf");
        for (Choose choose : choices) {
            if (!choose.needed()) {
                excluding(all, choose.value());
                continue;
            }
            ArrayNode some = all.addObject().putArray(choose.several() ? "anyOf" : "oneOf");
            Arrays.stream(choose.value())
                    .forEach(key -> some.addObject().putArray("required").add(key));
        }
    }

    /** No two of the keys together. */
    private static void excluding(ArrayNode all, String[] keys) {
        for (int i = 0; i < keys.length; i++) {
            for (int k = i + 1; k < keys.length; k++) {
                all.addObject()
                        .putObject("not")
                        .putArray("required")
                        .add(keys[i])
                        .add(keys[k]);
            }
        }
    }

    private ObjectNode property(Key key, boolean partial) {
        InByKey byKey = key.component().getAnnotation(InByKey.class);
        ObjectNode schema = byKey == null ? value(key.type(), key.in(), partial) : byKey(byKey);
        if (partial) {
            schema = orNone(schema);
        }
        if (!key.says().isEmpty()) {
            schema.put("description", key.says());
        }
        if (key.otherwise().isPresent()) {
            schema.put("default", key.otherwise().get().value());
        }
        return schema;
    }

    private static ObjectNode orNone(ObjectNode schema) {
        ObjectNode either = JSON.objectNode();
        ArrayNode of = either.putArray("anyOf");
        of.add(schema);
        of.addObject().put("const", "none");
        return either;
    }

    private ObjectNode value(Type type, Optional<In> in, boolean partial) {
        Class<?> raw = Key.raw(type);
        if (raw == Tree.Mapping.class) {
            return reference(root, true);
        }
        if (Key.isNamedList(type)) {
            ObjectNode schema = JSON.objectNode().put("type", "object");
            ObjectNode each = value(Key.argument(Key.argument(type)), in, partial);
            schema.set("additionalProperties", partial ? orNone(each) : each);
            return schema;
        }
        if (raw == List.class) {
            ObjectNode item = value(Key.argument(type), in, partial);
            ObjectNode schema = JSON.objectNode();
            ArrayNode either = schema.putArray("anyOf");
            either.add(item);
            either.addObject().put("type", "array").set("items", item.deepCopy());
            return schema;
        }
        if (raw.isRecord() && !Binder.isValue(raw)) {
            return reference(raw, partial);
        }
        return scalar(raw, in);
    }

    private ObjectNode scalar(Class<?> raw, Optional<In> in) {
        ObjectNode schema = JSON.objectNode();
        if (raw.isEnum()) {
            ArrayNode words = schema.putArray("enum");
            ValueReader.choices(raw).forEach(words::add);
            return schema;
        }
        if (raw == int.class || raw == Integer.class) {
            return schema.put("type", "integer").put("minimum", 1);
        }
        if (raw == double.class || raw == Double.class) {
            return schema.put("type", "number");
        }
        if (raw == boolean.class || raw == Boolean.class) {
            schema.putArray("enum").add("yes").add("no").add(true).add(false);
            return schema;
        }
        if (in.isEmpty()) {
            schema.putArray("type").add("string").add("number");
            return schema;
        }
        return quantity(raw, in.get());
    }

    /** A quantity, by reference: each way of writing one of a dimension is defined once. */
    private ObjectNode quantity(Class<?> raw, In in) {
        String words = in.value().words() + (in.positive() ? " above zero" : "");
        if (raw == Amount.class) {
            ObjectNode quantity = define(words, UnitPattern.amount(in.value(), in.positive()));
            return UnitPattern.bare(in.value()) ? orNumber(quantity) : quantity;
        }
        if (raw == Amounts.class) {
            return define("several of " + words, UnitPattern.amounts(in));
        }
        if (raw == Points.class) {
            return define("points of " + words, UnitPattern.points(in));
        }
        if (raw == Span.class) {
            return define("span of " + words, UnitPattern.span(in));
        }
        return define("bound of " + words, UnitPattern.limit(in));
    }

    private ObjectNode define(String words, String pattern) {
        String name = words.replaceAll("[^a-zA-Z ]", "");
        if (!definitions.has(name)) {
            definitions.putObject(name).put("type", "string").put("pattern", pattern);
        }
        return refer(name);
    }

    private static ObjectNode refer(String name) {
        return JSON.objectNode().put("$ref", "#/$defs/" + name.replace(" ", "%20"));
    }

    private ObjectNode byKey(InByKey annotation) {
        ObjectNode schema = JSON.objectNode().put("type", "object");
        ObjectNode properties = schema.putObject("properties");
        InByKey.Keys.of(annotation).forEach((word, meaning) -> {
            String words = meaning.dimension().words() + (meaning.positive() ? " above zero" : "");
            ObjectNode quantity = define(words, UnitPattern.amount(meaning.dimension(), meaning.positive()));
            ObjectNode property = UnitPattern.bare(meaning.dimension()) ? orNumber(quantity) : quantity;
            properties.set(word, property.put("description", meaning.says()));
        });
        schema.put("additionalProperties", false);
        return schema;
    }

    /** Editors read a plain number as a number, not as text. */
    private static ObjectNode orNumber(ObjectNode quantity) {
        ObjectNode either = JSON.objectNode();
        ArrayNode of = either.putArray("anyOf");
        of.add(quantity);
        of.addObject().put("type", "number");
        return either;
    }
}
