// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes the key tables of the manual from the records: one table a record, in Markdown. */
public final class KeyTable {
    private static final String VOWELS = "aeiou";

    private final StringBuilder out = new StringBuilder();
    private final Set<Class<?>> waiting = new LinkedHashSet<>();
    private final Set<Class<?>> written = new LinkedHashSet<>();

    private KeyTable() {}

    /** The tables of a record and of every record in it. */
    public static String write(Class<?> record) {
        KeyTable table = new KeyTable();
        table.waiting.add(record);
        while (!table.waiting.isEmpty()) {
            Class<?> next = table.waiting.iterator().next();
            table.waiting.remove(next);
            if (table.written.add(next)) {
                table.record(next);
            }
        }
        return table.out.toString();
    }

    private void record(Class<?> record) {
        out.append("### ").append(Key.noun(record)).append("\n\n");
        Says says = record.getAnnotation(Says.class);
        if (says != null) {
            out.append(says.value()).append("\n\n");
        }
        for (Choose choose : record.getAnnotationsByType(Choose.class)) {
            String how = choose.several() ? "At least one of: " : "Exactly one of: ";
            out.append(choose.needed() ? how : "At most one of: ");
            out.append(List.of(choose.value()).stream().map(k -> "`" + k + "`").collect(Collectors.joining(", ")));
            out.append(".\n\n");
        }
        out.append("| key | write | if left out | meaning |\n|---|---|---|---|\n");
        List<Class<?>> inner = new ArrayList<>();
        for (Key key : Key.of(record)) {
            String left = key.required()
                    ? "**needed**"
                    : key.otherwise()
                            .map(o -> "`" + o.value() + "`" + (o.origin().isEmpty() ? "" : " (" + o.origin() + ")"))
                            .orElse("–");
            InByKey byKey = key.component().getAnnotation(InByKey.class);
            String write = byKey == null ? words(key.type(), key.in(), inner) : "key: value, by the table below";
            out.append("| `").append(key.word()).append("` | ").append(write).append(" | ");
            out.append(left).append(" | ").append(key.says()).append(" |\n");
        }
        out.append('\n');
        for (Key key : Key.of(record)) {
            InByKey byKey = key.component().getAnnotation(InByKey.class);
            if (byKey != null) {
                out.append("| ").append(key.word()).append(" | write | meaning |\n|---|---|---|\n");
                InByKey.Keys.of(byKey)
                        .forEach((word, meaning) -> out.append("| `" + word + "` | "
                                + meaning.dimension().words() + ", "
                                + meaning.dimension().usualUnits().getFirst() + " | " + meaning.says() + " |\n"));
                out.append('\n');
            }
        }
        waiting.addAll(inner);
    }

    private static String words(Type type, Optional<In> in, List<Class<?>> inner) {
        Class<?> raw = Key.raw(type);
        if (raw == Tree.Mapping.class) {
            return "what differs";
        }
        if (Key.isNamedList(type)) {
            return "names, each with: " + words(Key.argument(Key.argument(type)), in, inner);
        }
        if (raw == List.class) {
            return "list of: " + words(Key.argument(type), in, inner);
        }
        if (raw.isRecord() && !Binder.isValue(raw)) {
            inner.add(raw);
            String noun = Key.noun(raw);
            return "[" + noun + "](#" + noun.replace(' ', '-') + ")";
        }
        if (raw.isEnum()) {
            return ValueReader.choices(raw).stream().map(w -> "`" + w + "`").collect(Collectors.joining(" or "));
        }
        if (raw == Name.class) {
            return "a name";
        }
        if (in.isEmpty()) {
            return raw == String.class ? "text" : "a whole number";
        }
        String unit = in.get().value().usualUnits().getFirst();
        String words = in.get().value().words();
        if (raw == Amounts.class) {
            return words + "s, `0, 40 " + unit + "`";
        }
        if (raw == Points.class) {
            return "points, `(0, 140) (130, 140) " + unit + "`";
        }
        if (raw == Span.class) {
            return "span, `900 .. 1600 " + unit + "`";
        }
        if (raw == Limit.class) {
            String article = VOWELS.indexOf(words.charAt(0)) < 0 ? "a " : "an ";
            return "`at least` or `at most` " + article + words + ", " + unit;
        }
        return words + ", " + unit;
    }
}
