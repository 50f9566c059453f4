// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A key of the document as a record component declares it: the one source of reader, schema and manual.
 *
 * @param word as written in YAML: {@code torsional stiffness} for the component {@code torsionalStiffness}
 * @param component the record component
 */
public record Key(String word, RecordComponent component) {
    /** Looked up once: Java parses annotations anew for every new list of components. */
    private static final ClassValue<List<Key>> ALL = new ClassValue<>() {
        @Override
        protected List<Key> computeValue(Class<?> record) {
            return Arrays.stream(record.getRecordComponents())
                    .map(c -> new Key(words(c.getName()), c))
                    .toList();
        }
    };

    private static final ClassValue<List<Key>> WRITTEN = new ClassValue<>() {
        @Override
        protected List<Key> computeValue(Class<?> record) {
            return all(record).stream().filter(k -> !k.isPlace()).toList();
        }
    };

    /** The keys of a record, in order; components that hold the place of the record are not keys. */
    public static List<Key> of(Class<?> record) {
        return WRITTEN.get(record);
    }

    /** All components of a record, in order. */
    static List<Key> all(Class<?> record) {
        return ALL.get(record);
    }

    /** Whether this is no key but takes the place of the record. */
    boolean isPlace() {
        return component.getType() == Place.class;
    }

    /** What a record stands for, from its class: {@code bonded joint} for {@code BondedJointText}. */
    public static String noun(Class<?> record) {
        return words(record.getSimpleName().replaceFirst("Text$", ""));
    }

    /** {@code torsional stiffness} from {@code torsionalStiffness}. */
    static String words(String camel) {
        return camel.replaceAll("(?<=[a-z0-9])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
    }

    /** What may be written, without the Optional around it. */
    public Type type() {
        return component.getType() == Optional.class
                ? argument(component.getGenericType())
                : component.getGenericType();
    }

    /** True if the key may not be left out. */
    public boolean required() {
        boolean list = component.getType() == List.class;
        return component.getType() != Optional.class
                && otherwise().isEmpty()
                && (!list || component.isAnnotationPresent(Needed.class));
    }

    /** The value taken when left out. */
    public Optional<Otherwise> otherwise() {
        return Optional.ofNullable(component.getAnnotation(Otherwise.class));
    }

    /** The dimension of a quantity. */
    public Optional<In> in() {
        return Optional.ofNullable(component.getAnnotation(In.class));
    }

    /** What the key means. */
    public String says() {
        Says says = component.getAnnotation(Says.class);
        return says == null ? "" : says.value();
    }

    /** First type argument of a generic type. */
    static Type argument(Type generic) {
        return ((ParameterizedType) generic).getActualTypeArguments()[0];
    }

    /** The class behind a type. */
    static Class<?> raw(Type type) {
        return (Class<?>) (type instanceof ParameterizedType p ? p.getRawType() : type);
    }

    /** True for a list that is written as a mapping with keys of the designer's choice. */
    static boolean isNamedList(Type type) {
        return raw(type) == List.class && raw(argument(type)) == Named.class;
    }
}
