// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A YAML document in which single values are changed and entries added, all else kept character for character: comments,
 * order, quotes, blank lines, line ends. Immutable; every edit gives a new text that was read again and found to differ in
 * nothing but what was asked.
 *
 * <p>Places are paths of keys from the top: {@code laminates, floor skin, stack}.
 */
public final class TextEdit {
    private final String file;
    private final String text;
    private final MappingNode root;
    private final String lineEnd;

    private TextEdit(String file, String text) {
        this.file = file;
        this.text = text;
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setUseMarks(true)
                .setCodePointLimit(YamlReader.LARGEST_FILE)
                .build();
        root = (MappingNode) new Compose(settings).composeString(text).orElseThrow();
        lineEnd = text.contains("\r\n") ? "\r\n" : "\n";
    }

    /**
     * A document.
     *
     * @param text of it, without a byte order mark
     * @param file for messages
     * @throws DesignError if it is not YAML that a design may hold
     */
    public static TextEdit of(String text, String file) {
        YamlReader.read(text, file);
        return new TextEdit(file, text);
    }

    /** The text as it stands. */
    public String text() {
        return text;
    }

    /** The value at a path, without quotes, if there is one. */
    public Optional<String> value(List<String> path) {
        return node(path).filter(ScalarNode.class::isInstance).map(n -> ((ScalarNode) n).getValue());
    }

    /** The keys of the mapping at a path, in their order; none if there is no mapping. */
    public List<String> keys(List<String> path) {
        return node(path)
                .filter(MappingNode.class::isInstance)
                .map(n -> ((MappingNode) n)
                        .getValue().stream().map(t -> key(t.getKeyNode())).toList())
                .orElse(List.of());
    }

    /** All single values at and below a path, in lists too. */
    public List<String> values(List<String> path) {
        Map<List<String>, String> found = new LinkedHashMap<>();
        node(path).ifPresent(n -> flatten(n, List.of(), found));
        return List.copyOf(found.values());
    }

    /**
     * The text with one value set: changed in its own way of quoting where it stands, or added as the last entry of the
     * innermost mapping that is there.
     *
     * @throws DesignError where the path runs through something that is no mapping
     */
    public TextEdit set(List<String> path, String value) {
        Optional<Node> node = node(path);
        TextEdit edited;
        if (node.isEmpty()) {
            edited = added(path, new Tree.Scalar(Place.of(file), value, true));
        } else if (node.get() instanceof ScalarNode scalar && scalar.getScalarStyle() == ScalarStyle.PLAIN) {
            edited = replaced(scalar, plainOrQuoted(value));
        } else if (node.get() instanceof ScalarNode scalar && scalar.getScalarStyle() == ScalarStyle.SINGLE_QUOTED) {
            edited = replaced(scalar, "'" + value.replace("'", "''") + "'");
        } else if (node.get() instanceof ScalarNode scalar && scalar.getScalarStyle() == ScalarStyle.DOUBLE_QUOTED) {
            edited = replaced(scalar, quoted(value));
        } else {
            throw refused(node.get(), "\"" + path.getLast() + "\" is not written as one value", "change it by hand");
        }
        Map<List<String>, String> expected = flat();
        expected.put(path, value);
        return edited.expecting(expected, path);
    }

    /**
     * The text with a copy of an entry under another key, right behind it.
     *
     * @throws DesignError if there is no such entry, or one with the new key
     */
    public TextEdit copied(List<String> path, String key) {
        List<String> parent = path.subList(0, path.size() - 1);
        Node value = node(path)
                .orElseThrow(() -> new DesignError(
                        Place.of(file), "there is no \"" + path.getLast() + "\"", "name what the file has"));
        MappingNode around = (MappingNode) node(parent).orElseThrow();
        List<String> twin = new ArrayList<>(parent);
        twin.add(key);
        if (node(twin).isPresent()) {
            throw refused(value, "there is already a \"" + key + "\"", "choose another name");
        }
        String source = value instanceof MappingNode mapping && block(mapping)
                ? lineEnd + lines(mapping, indent(around) + 2)
                : " " + text.substring(begin(value), end(value));
        TextEdit edited = inserted(around, value, plainOrQuoted(key) + ":" + source);
        Map<List<String>, String> expected = new LinkedHashMap<>();
        flat().forEach((place, each) -> {
            expected.put(place, each);
            if (place.size() >= path.size() && place.subList(0, path.size()).equals(path)) {
                List<String> moved = new ArrayList<>(twin);
                moved.addAll(place.subList(path.size(), place.size()));
                expected.put(moved, each);
            }
        });
        return edited.expecting(expected, twin);
    }

    /**
     * The text with an entry more, whatever it holds: mappings in lines, lists in brackets with an item a line.
     *
     * @throws DesignError if there is such an entry, or the path runs through something that is no mapping
     */
    public TextEdit with(List<String> path, Tree value) {
        if (node(path).isPresent()) {
            throw refused(node(path).get(), "there is already a \"" + path.getLast() + "\"", "choose another name");
        }
        Map<List<String>, String> expected = flat();
        TreeText.flatten(value, path, expected);
        return added(path, value).expecting(expected, path);
    }

    private TextEdit added(List<String> path, Tree value) {
        int depth = path.size() - 1;
        while (node(path.subList(0, depth)).isEmpty()) {
            depth--;
        }
        Node found = node(path.subList(0, depth)).orElseThrow();
        if (!(found instanceof MappingNode around) || around.getValue().isEmpty()) {
            throw refused(found, "nothing can be added under \"" + path.get(depth - 1) + "\"", "write it by hand");
        }
        List<String> rest = path.subList(depth, path.size());
        StringBuilder entry = new StringBuilder();
        if (block(around)) {
            for (int i = 0; i < rest.size(); i++) {
                entry.append(i == 0 ? "" : lineEnd + " ".repeat(indent(around) + 2 * i))
                        .append(plainOrQuoted(rest.get(i)))
                        .append(':');
            }
            entry.append(TreeText.lines(value, indent(around) + 2 * (rest.size() - 1), lineEnd));
        } else {
            for (int i = 0; i < rest.size(); i++) {
                entry.append(i == 0 ? "" : "{")
                        .append(plainOrQuoted(rest.get(i)))
                        .append(": ");
            }
            entry.append(TreeText.inBrackets(value)).append("}".repeat(rest.size() - 1));
        }
        return inserted(around, around.getValue().getLast().getValueNode(), entry.toString());
    }

    /** The text with an entry of a mapping put behind the one with that value. */
    private TextEdit inserted(MappingNode around, Node after, String entry) {
        int at = end(after);
        if (!block(around)) {
            return new TextEdit(file, text.substring(0, at) + ", " + entry + text.substring(at));
        }
        while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
            at++; // past a comment
        }
        String line = lineEnd + " ".repeat(indent(around)) + entry.stripTrailing();
        return new TextEdit(file, text.substring(0, at) + line + text.substring(at));
    }

    /** The entries of a block mapping without the comments between them. */
    private String lines(MappingNode mapping, int indent) {
        StringBuilder lines = new StringBuilder();
        for (NodeTuple tuple : mapping.getValue()) {
            lines.append(" ".repeat(indent)).append(text, begin(tuple.getKeyNode()), end(tuple.getKeyNode()));
            lines.append(':');
            lines.append(
                    tuple.getValueNode() instanceof MappingNode below && block(below)
                            ? lineEnd + lines(below, indent + 2)
                            : " " + text.substring(begin(tuple.getValueNode()), end(tuple.getValueNode())) + lineEnd);
        }
        return lines.toString();
    }

    private TextEdit replaced(Node node, String source) {
        return new TextEdit(file, text.substring(0, begin(node)) + source + text.substring(end(node)));
    }

    /** Itself, if it reads as it should. */
    private TextEdit expecting(Map<List<String>, String> expected, List<String> path) {
        if (!flat().equals(expected)) {
            throw new DesignError(
                    Place.of(file),
                    "\"" + String.join(": ", path) + "\" cannot be changed without touching more than itself",
                    "change it by hand");
        }
        return this;
    }

    private Map<List<String>, String> flat() {
        Map<List<String>, String> found = new LinkedHashMap<>();
        flatten(root, List.of(), found);
        return found;
    }

    private static void flatten(Node node, List<String> path, Map<List<String>, String> to) {
        switch (node) {
            case MappingNode mapping ->
                mapping.getValue().forEach(t -> flatten(t.getValueNode(), longer(path, key(t.getKeyNode())), to));
            case SequenceNode sequence -> {
                for (int i = 0; i < sequence.getValue().size(); i++) {
                    flatten(sequence.getValue().get(i), longer(path, Integer.toString(i)), to);
                }
            }
            default -> to.put(path, ((ScalarNode) node).getValue());
        }
    }

    private static List<String> longer(List<String> path, String key) {
        List<String> longer = new ArrayList<>(path);
        longer.add(key);
        return longer;
    }

    private Optional<Node> node(List<String> path) {
        Node node = root;
        for (String key : path) {
            Optional<Node> next = node instanceof MappingNode mapping
                    ? mapping.getValue().stream()
                            .filter(t -> key(t.getKeyNode()).equals(key))
                            .map(NodeTuple::getValueNode)
                            .findFirst()
                    : Optional.empty();
            if (next.isEmpty()) {
                return Optional.empty();
            }
            node = next.get();
        }
        return Optional.of(node);
    }

    private static String key(Node node) {
        return node instanceof ScalarNode scalar ? scalar.getValue() : "";
    }

    private static boolean block(CollectionNode<?> node) {
        return node.getFlowStyle() == FlowStyle.BLOCK;
    }

    /** Column of the keys of a block mapping, from 0. */
    private static int indent(MappingNode mapping) {
        return mapping.getValue()
                .getFirst()
                .getKeyNode()
                .getStartMark()
                .map(Mark::getColumn)
                .orElse(0);
    }

    private int begin(Node node) {
        return offset(node.getStartMark().orElseThrow());
    }

    /** Where the last character of a node ends; block collections end with their last entry, not with what follows it. */
    private int end(Node node) {
        return switch (node) {
            case MappingNode mapping
            when block(mapping) && !mapping.getValue().isEmpty() ->
                end(mapping.getValue().getLast().getValueNode());
            case SequenceNode sequence
            when block(sequence) && !sequence.getValue().isEmpty() ->
                end(sequence.getValue().getLast());
            default -> offset(node.getEndMark().orElseThrow());
        };
    }

    private int offset(Mark mark) {
        return text.offsetByCodePoints(0, mark.getIndex());
    }

    private DesignError refused(Node node, String read, String help) {
        Place place = node.getStartMark()
                .map(m -> new Place(file, m.getLine() + 1, m.getColumn() + 1))
                .orElse(Place.of(file));
        return new DesignError(place, read, help);
    }

    /** Without quotes where YAML reads it as it stands, whatever stands around it. */
    static String plainOrQuoted(String value) {
        return value.matches("[\\p{L}\\p{N}]([\\p{L}\\p{N} ·²³°/.()+-]*[\\p{L}\\p{N}²³°)])?") ? value : quoted(value);
    }

    private static String quoted(String value) {
        return "\"" + value.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }
}
