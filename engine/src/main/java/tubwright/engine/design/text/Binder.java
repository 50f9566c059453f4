// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tubwright.engine.quantity.NearestName;

/**
 * Binds a tree to a record: keys to components, by the components' types and annotations.
 *
 * <p>A component may be a {@link Amount}, {@link Amounts}, {@link Points}, {@link Span}, {@link Limit} (each with
 * {@link In}), a {@link Name}, {@code String}, {@code int}, {@code double}, {@code boolean}, an enum, a record, a list of
 * these, a list of {@link Named} (written as a mapping), or an Optional of any. A component of type {@link Place} takes
 * the place of the record.
 */
public final class Binder {
    private static final ClassValue<Constructor<?>> CONSTRUCTORS = new ClassValue<>() {
        @Override
        protected Constructor<?> computeValue(Class<?> type) {
            try {
                Constructor<?> constructor = type.getDeclaredConstructor(Arrays.stream(type.getRecordComponents())
                        .map(RecordComponent::getType)
                        .toArray(Class<?>[]::new));
                constructor.setAccessible(true);
                return constructor;
            } catch (NoSuchMethodException e) {
                throw new IllegalStateException("cannot build " + type, e);
            }
        }
    };

    private Binder() {}

    /**
     * The record a tree stands for.
     *
     * @throws DesignError with every fault found
     */
    public static <T> T bind(Tree tree, Class<T> type) {
        return type.cast(record(tree, Key.noun(type), type));
    }

    private static Object record(Tree tree, String name, Class<?> type) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            throw new DesignError(
                    tree.place(),
                    name + ": " + tree.kind() + " stands where keys and values are due",
                    "its keys: " + words(Key.of(type)));
        }
        Faults faults = new Faults();
        List<Key> keys = Key.of(type);
        refuseUnknown(mapping, keys, type, faults);
        List<Key> all = Key.all(type);
        Object[] values = new Object[all.size()];
        for (int i = 0; i < values.length; i++) {
            Key key = all.get(i);
            if (key.isPlace()) {
                values[i] = mapping.place();
                continue;
            }
            if (key.required() && misspelt(mapping, key, keys)) {
                continue; // told as an unknown key, with this one suggested
            }
            values[i] =
                    faults.attempt(() -> component(mapping, key, name, type)).orElse(Optional.empty());
        }
        for (Choose choose : type.getAnnotationsByType(Choose.class)) {
            faults.check(() -> checkChoice(mapping, choose, name));
        }
        faults.throwIfAny();
        return construct(type, values);
    }

    private static void refuseUnknown(Tree.Mapping mapping, List<Key> keys, Class<?> type, Faults faults) {
        List<String> words = keys.stream().map(Key::word).toList();
        for (Tree.Entry entry : mapping.entries()) {
            String word = entry.key().text();
            if (!words.contains(word)) {
                faults.add(
                        entry.key().place(),
                        "\"" + word + "\" is not a key of a " + Key.noun(type),
                        ValueReader.meant(word, words) + "its keys: " + words(keys));
            }
        }
    }

    /** True if a key that is missing stands in the mapping under a name that is nearly its own. */
    private static boolean misspelt(Tree.Mapping mapping, Key key, List<Key> keys) {
        if (mapping.get(key.word()).isPresent()) {
            return false;
        }
        List<String> words = keys.stream().map(Key::word).toList();
        return mapping.entries().stream()
                .map(e -> e.key().text())
                .filter(w -> !words.contains(w))
                .anyMatch(w -> NearestName.of(w, words).equals(Optional.of(key.word())));
    }

    private static String words(List<Key> keys) {
        return keys.stream().map(Key::word).collect(Collectors.joining(", "));
    }

    private static void checkChoice(Tree.Mapping mapping, Choose choose, String name) {
        List<String> present = Arrays.stream(choose.value())
                .filter(k -> mapping.get(k).isPresent())
                .toList();
        String all = String.join(", ", choose.value());
        if (present.isEmpty() && choose.needed()) {
            throw new DesignError(
                    mapping.place(),
                    choose.value().length == 2
                            ? name + ": neither \"" + choose.value()[0] + "\" nor \"" + choose.value()[1]
                                    + "\" is given"
                            : name + ": none of these keys is given: " + all,
                    choose.several() ? "give at least one of them" : "give one of them");
        }
        if (present.size() > 1 && !choose.several()) {
            throw new DesignError(
                    mapping.place(),
                    name + ": \"" + present.get(0) + "\" and \"" + present.get(1) + "\" exclude each other",
                    "give only one of: " + all);
        }
    }

    private static Object component(Tree.Mapping mapping, Key key, String name, Class<?> owner) {
        boolean optional = key.component().getType() == Optional.class;
        Optional<Tree> given = mapping.get(key.word());
        if (given.isEmpty() || isEmpty(given.get())) {
            if (key.required() && given.isPresent()) {
                throw new DesignError(
                        given.get().place(), key.word() + ": nothing is written", "it means: " + key.says());
            }
            if (key.required()) {
                throw new DesignError(
                        mapping.place(),
                        name + ": the key \"" + key.word() + "\" is missing from this " + Key.noun(owner),
                        key.word() + ": " + key.says());
            }
            if (key.otherwise().isPresent()) {
                Tree.Scalar stated =
                        new Tree.Scalar(mapping.place(), key.otherwise().get().value(), false);
                Object value = value(stated, key.word(), key.type(), key.in());
                return optional ? Optional.of(value) : value;
            }
            return optional ? Optional.empty() : List.of();
        }
        InByKey byKey = key.component().getAnnotation(InByKey.class);
        Object value = byKey == null
                ? value(given.get(), key.word(), key.type(), key.in())
                : byKey(given.get(), key.word(), InByKey.Keys.of(byKey));
        return optional ? Optional.of(value) : value;
    }

    private static List<Object> byKey(Tree tree, String key, Map<String, InByKey.Meaning> keys) {
        Tree.Mapping mapping = mapping(tree, key);
        Faults faults = new Faults();
        List<Object> values = new ArrayList<>();
        for (Tree.Entry entry : mapping.entries()) {
            String word = entry.key().text();
            if (!keys.containsKey(word)) {
                faults.add(
                        entry.key().place(),
                        "\"" + word + "\" is not one of the " + key,
                        ValueReader.meant(word, List.copyOf(keys.keySet())) + "known: "
                                + String.join(", ", keys.keySet()));
            } else if (entry.value() instanceof Tree.Scalar scalar) {
                InByKey.Meaning meaning = keys.get(word);
                faults.attempt(() -> ValueReader.amount(scalar, word, meaning.dimension(), meaning.positive()))
                        .ifPresent(v -> values.add(
                                new Named<>(new Name(word, entry.key().place()), v)));
            } else {
                faults.add(
                        entry.value().place(),
                        word + ": " + entry.value().kind() + " stands where a single value is due",
                        "write a " + keys.get(word).dimension().words());
            }
        }
        faults.throwIfAny();
        return List.copyOf(values);
    }

    private static Tree.Mapping mapping(Tree tree, String key) {
        if (tree instanceof Tree.Mapping mapping) {
            return mapping;
        }
        throw new DesignError(
                tree.place(),
                key + ": " + tree.kind() + " stands where names and what they mean are due",
                "write one name with a colon per line, each with its value");
    }

    private static boolean isEmpty(Tree tree) {
        return tree instanceof Tree.Scalar scalar && scalar.empty();
    }

    private static Object value(Tree tree, String key, Type type, Optional<In> in) {
        Class<?> raw = Key.raw(type);
        if (raw == Tree.Mapping.class) {
            return mapping(tree, key);
        }
        if (Key.isNamedList(type)) {
            return named(tree, key, Key.argument(Key.argument(type)), in);
        }
        if (raw == List.class) {
            return list(tree, key, Key.argument(type), in);
        }
        if (raw.isRecord() && !isValue(raw)) {
            return record(tree, key, raw);
        }
        if (!(tree instanceof Tree.Scalar scalar)) {
            throw new DesignError(
                    tree.place(), key + ": " + tree.kind() + " stands where a single value is due", wanted(raw, in));
        }
        return scalar(scalar, key, raw, in);
    }

    /** Records of this package that are written as one value. */
    static boolean isValue(Class<?> type) {
        return type == Amount.class
                || type == Amounts.class
                || type == Points.class
                || type == Span.class
                || type == Limit.class
                || type == Name.class;
    }

    private static String wanted(Class<?> raw, Optional<In> in) {
        return in.map(i -> "write " + i.value().withArticle() + ", for example in "
                        + i.value().usualUnits().getFirst())
                .orElse(raw == Name.class ? "write a name" : "write one value");
    }

    private static Object scalar(Tree.Scalar scalar, String key, Class<?> raw, Optional<In> in) {
        if (raw == Name.class) {
            return new Name(ValueReader.word(scalar, key), scalar.place());
        }
        if (raw == String.class) {
            return ValueReader.word(scalar, key);
        }
        if (raw == int.class || raw == Integer.class) {
            return ValueReader.count(scalar, key);
        }
        if (raw == double.class || raw == Double.class) {
            return ValueReader.number(scalar, key);
        }
        if (raw == boolean.class || raw == Boolean.class) {
            return ValueReader.yes(scalar, key);
        }
        if (raw.isEnum()) {
            return ValueReader.choice(scalar, key, raw);
        }
        In of = in.orElseThrow(() -> new IllegalStateException(key + " has no dimension"));
        if (raw == Amount.class) {
            return ValueReader.amount(scalar, key, of);
        }
        if (raw == Amounts.class) {
            return ValueReader.amounts(scalar, key, of);
        }
        if (raw == Points.class) {
            return ValueReader.points(scalar, key, of);
        }
        if (raw == Span.class) {
            return ValueReader.span(scalar, key, of);
        }
        if (raw == Limit.class) {
            return ValueReader.limit(scalar, key, of);
        }
        throw new IllegalStateException("no reader for " + raw);
    }

    private static List<Object> named(Tree tree, String key, Type type, Optional<In> in) {
        Tree.Mapping mapping = mapping(tree, key);
        Faults faults = new Faults();
        List<Object> values = new ArrayList<>();
        for (Tree.Entry entry : mapping.entries()) {
            Name name = new Name(entry.key().text(), entry.key().place());
            faults.attempt(() -> value(entry.value(), name.text(), type, in))
                    .ifPresent(v -> values.add(new Named<>(name, v)));
        }
        faults.throwIfAny();
        return List.copyOf(values);
    }

    private static List<Object> list(Tree tree, String key, Type type, Optional<In> in) {
        List<Tree> items = tree instanceof Tree.Listing listing ? listing.items() : List.of(tree);
        Faults faults = new Faults();
        List<Object> values = new ArrayList<>();
        for (Tree item : items) {
            faults.attempt(() -> value(item, key, type, in)).ifPresent(values::add);
        }
        faults.throwIfAny();
        return List.copyOf(values);
    }

    private static Object construct(Class<?> type, Object[] values) {
        try {
            return CONSTRUCTORS.get(type).newInstance(values);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("cannot build " + type, e);
        }
    }
}
