// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.data;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.quantity.Dimension;
import tubwright.engine.quantity.NearestName;
import tubwright.engine.quantity.Quantity;
import tubwright.engine.quantity.QuantityException;

/**
 * A data file in the layout of the shipped materials ({@code sources}, then families of named entries with {@code
 * source} and {@code values}), read with lines. Every fault names file and line.
 */
public final class SourcedText {
    private final String file;
    private final Map<String, Provenance> sources = new LinkedHashMap<>();
    private final Entry root;

    /**
     * Takes a file apart.
     *
     * @param file its name, for messages
     * @param yaml its text
     * @throws DataException if it is not YAML or its sources are not right
     */
    public SourcedText(String file, String yaml) {
        this.file = file;
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setUseMarks(true)
                .setMaxAliasesForCollections(1)
                .build();
        try {
            Node node = new Compose(settings)
                    .composeString(yaml)
                    .orElseThrow(() -> new DataException(file + ": the file is empty"));
            root = new Entry("the file", node);
        } catch (MarkedYamlEngineException e) {
            int line = e.getProblemMark().map(m -> m.getLine() + 1).orElse(1);
            throw new DataException(file + ":" + line + ": not YAML: " + e.getProblem());
        } catch (YamlEngineException e) {
            throw new DataException(file + ": not YAML: " + e.getMessage());
        }
        if (root.has("sources")) {
            root.entries("sources").forEach(this::source);
        }
    }

    private void source(String key, Entry entry) {
        String mark = entry.text("trust");
        Trust trust = Arrays.stream(Trust.values())
                .filter(t -> t.mark().equals(mark))
                .findFirst()
                .orElseThrow(() -> entry.fault("'" + mark + "' is no trust mark; there are "
                        + String.join(
                                ", ",
                                Arrays.stream(Trust.values()).map(Trust::mark).toList())));
        sources.put(key, new Provenance(entry.text("source"), trust));
    }

    /** The whole file. */
    public Entry root() {
        return root;
    }

    /** One mapping, with the keys that have been asked for. */
    public final class Entry {
        private final String name;
        private final int line;
        private final Map<String, Node> children = new LinkedHashMap<>();
        private final Set<String> asked = new LinkedHashSet<>();

        private Entry(String name, Node node) {
            this.name = name;
            this.line = lineOf(node);
            if (!(node instanceof MappingNode mapping)) {
                throw fault("'" + name + "' must hold keys and values");
            }
            mapping.getValue().forEach(tuple -> {
                String key = scalar(tuple.getKeyNode(), "a key of '" + name + "'");
                if (children.put(key, tuple.getValueNode()) != null) {
                    throw new DataException(file + ":" + lineOf(tuple.getKeyNode()) + ": '" + key + "' is there twice");
                }
            });
        }

        /** Its name in the file. */
        public String name() {
            return name;
        }

        /** Whether there is such a key. */
        public boolean has(String key) {
            asked.add(key);
            return children.containsKey(key);
        }

        /** The word under a key that must be there. */
        public String text(String key) {
            return scalar(child(key), "'" + key + "'");
        }

        /** The word under a key, if there is one. */
        public Optional<String> optionalText(String key) {
            return has(key) ? Optional.of(text(key)) : Optional.empty();
        }

        /** Entries by name under a key; none if the key is not there. */
        public Map<String, Entry> entries(String key) {
            Map<String, Entry> result = new LinkedHashMap<>();
            if (has(key)) {
                Entry family = new Entry(key, child(key));
                family.children.forEach((name, node) -> result.put(name, new Entry(name, node)));
            }
            return result;
        }

        /** The rows of a list. */
        public List<Entry> rows(String key) {
            if (!(child(key) instanceof SequenceNode list)) {
                throw new DataException(file + ":" + lineOf(child(key)) + ": '" + key + "' must be a list");
            }
            return list.getValue().stream()
                    .map(node -> new Entry("a row of '" + key + "'", node))
                    .toList();
        }

        /** The mapping under a key that must be there. */
        public Entry inside(String key) {
            return new Entry(key, child(key));
        }

        /** What its {@code source} stands for. */
        public Provenance provenance() {
            return provenance(this);
        }

        private Provenance provenance(Entry at) {
            String key = at.text("source");
            return Optional.ofNullable(sources.get(key))
                    .orElseThrow(() -> at.fault("no source is called '" + key + "'"
                            + NearestName.of(key, sources.keySet())
                                    .map(n -> "; did you mean '" + n + "'?")
                                    .orElse("; write it under \"sources\"")));
        }

        /** A quantity under a key, in SI. */
        public double si(String key, Dimension dimension) {
            return parse(child(key), text(key), dimension);
        }

        /** A value of this entry's {@code values}, by itself or with a source of its own. */
        public PropertyValue value(Entry values, String key, Dimension dimension) {
            Node node = values.child(key);
            if (node instanceof MappingNode) {
                Entry marked = new Entry(key, node);
                double si = parse(node, marked.text("value"), dimension);
                Provenance own = provenance(marked);
                marked.nothingElse();
                return new PropertyValue(si, own);
            }
            return new PropertyValue(parse(node, scalar(node, key), dimension), provenance());
        }

        /** As {@link #value}, if it is there. */
        public Optional<PropertyValue> optionalValue(Entry values, String key, Dimension dimension) {
            return values.has(key) ? Optional.of(value(values, key, dimension)) : Optional.empty();
        }

        /** Refuses keys nobody asked for. */
        public void nothingElse() {
            for (Map.Entry<String, Node> child : children.entrySet()) {
                if (!asked.contains(child.getKey())) {
                    throw new DataException(file + ":" + lineOf(child.getValue()) + ": '" + name + "' knows no '"
                            + child.getKey() + "'; it knows " + String.join(", ", asked));
                }
            }
        }

        /** A fault here, with file and line. */
        public DataException fault(String message) {
            return new DataException(file + ":" + line + ": " + message);
        }

        private Node child(String key) {
            asked.add(key);
            return Optional.ofNullable(children.get(key))
                    .orElseThrow(() -> fault("'" + key + "' is missing in '" + name + "'"));
        }
    }

    private double parse(Node node, String text, Dimension dimension) {
        try {
            return Quantity.parse(text, dimension).si();
        } catch (QuantityException e) {
            throw new DataException(file + ":" + lineOf(node) + ": " + e.getMessage());
        }
    }

    private String scalar(Node node, String what) {
        if (node instanceof ScalarNode scalar) {
            return scalar.getValue();
        }
        throw new DataException(file + ":" + lineOf(node) + ": " + what + " must be a word or a number with its unit");
    }

    private static int lineOf(Node node) {
        return node.getStartMark().map(m -> m.getLine() + 1).orElse(1);
    }
}
