// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Reads YAML 1.2 into a {@link Tree}.
 *
 * <p>Stricter than YAML where a notebook has no use for the freedom: no anchors and aliases (a few lines of them can
 * stand for gigabytes), no second document in the file, keys are plain words and unique.
 */
public final class YamlReader {
    /** Designs are a few thousand characters; this leaves room without letting a wrong file fill the memory. */
    static final int LARGEST_FILE = 2_000_000;

    private static final int DEEPEST = 40;

    private final String file;
    private final LoadSettings settings;

    private YamlReader(String file) {
        this.file = file;
        this.settings = LoadSettings.builder()
                .setLabel(file)
                .setUseMarks(true)
                .setMaxAliasesForCollections(1)
                .setAllowRecursiveKeys(false)
                .setCodePointLimit(LARGEST_FILE)
                .build();
    }

    /**
     * Reads a file.
     *
     * @throws DesignError if it cannot be read, is not UTF-8 or is not a mapping
     */
    public static Tree.Mapping read(Path path) {
        return read(contents(path), path.toString());
    }

    /**
     * The text of a file.
     *
     * @throws DesignError if it cannot be read or is not UTF-8
     */
    public static String contents(Path path) {
        String file = path.toString();
        byte[] bytes;
        try {
            if (Files.isRegularFile(path) && Files.size(path) > LARGEST_FILE) {
                throw new DesignError(
                        Place.of(file),
                        "the file holds " + Files.size(path) + " bytes",
                        "a design document is a text of at most " + LARGEST_FILE
                                + " characters; is this the right file?");
            }
            bytes = Files.readAllBytes(path);
        } catch (NoSuchFileException missing) {
            throw new DesignError(
                    Place.of(file), "there is no such file", "name a design file, or a folder with a tub.yaml in it");
        } catch (AccessDeniedException denied) {
            throw new DesignError(Place.of(file), "the file may not be read", "give yourself the right to read it");
        } catch (IOException broken) {
            throw new DesignError(
                    Place.of(file),
                    "the file cannot be read: " + broken.getMessage(),
                    "is it a text file on a sound disk?");
        }
        return decode(file, bytes);
    }

    /** Reads a text; the file's name is for messages only. */
    public static Tree.Mapping read(String text, String file) {
        return new YamlReader(file).document(text);
    }

    private static String decode(String file, byte[] bytes) {
        if (bytes.length > 1 && ((bytes[0] & 0xff) == 0xff || (bytes[0] & 0xff) == 0xfe)) {
            throw new DesignError(Place.of(file), "the file is written in UTF-16", "save it as UTF-8");
        }
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
            return text.startsWith("\ufeff") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            int line = 1;
            int column = 1;
            // The longest prefix that decodes ends at the byte at fault; lines are counted up to it.
            int bad = firstBadByte(bytes);
            for (int i = 0; i < bad; i++) {
                line += bytes[i] == '\n' ? 1 : 0;
                column = bytes[i] == '\n' ? 1 : column + ((bytes[i] & 0xc0) == 0x80 ? 0 : 1);
            }
            throw new DesignError(
                    new Place(file, line, column),
                    String.format("byte %02X is not UTF-8 text", bytes[bad] & 0xff),
                    "save the file as UTF-8 (signs such as ·, ° and ² are often written in an older encoding)");
        }
    }

    private static int firstBadByte(byte[] bytes) {
        var decoder = StandardCharsets.UTF_8.newDecoder();
        var in = ByteBuffer.wrap(bytes);
        decoder.decode(in, java.nio.CharBuffer.allocate(bytes.length + 1), true);
        return Math.min(in.position(), bytes.length - 1);
    }

    private Tree.Mapping document(String text) {
        if (text.isBlank()) {
            throw new DesignError(
                    Place.of(file), "the file is empty", "\"tubwright new DIR\" starts a design that runs");
        }
        try {
            refuseAliases(text);
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isEmpty()) {
                throw new DesignError(
                        Place.of(file),
                        "the file holds only comments",
                        "\"tubwright new DIR\" starts a design that runs");
            }
            if (tree(root.get(), 0) instanceof Tree.Mapping mapping) {
                return mapping;
            }
            throw new DesignError(
                    place(root.get().getStartMark()),
                    "the document is not a mapping",
                    "a design starts with keys at the left edge, such as \"tub: Larkspur\"");
        } catch (MarkedYamlEngineException e) {
            throw syntax(e, text);
        } catch (ReaderException e) {
            String before = text.substring(0, text.offsetByCodePoints(0, e.getPosition()));
            throw new DesignError(
                    new Place(
                            file,
                            1 + (int) before.chars().filter(c -> c == '\n').count(),
                            before.length() - before.lastIndexOf('\n')),
                    String.format("the control character %04X stands here", e.getCodePoint()),
                    "take it out");
        } catch (YamlEngineException e) {
            throw new DesignError(
                    Place.of(file), "this is not YAML: " + firstLine(e.getMessage()), "is this a design document?");
        }
    }

    private void refuseAliases(String text) {
        int documents = 0;
        int depth = 0;
        Optional<DesignError> anchor = Optional.empty();
        for (Event event : new Parse(settings).parseString(text)) {
            if (event instanceof AliasEvent alias) {
                throw new DesignError(
                        place(alias.getStartMark()),
                        "\"*" + alias.getAlias() + "\" is a YAML alias",
                        "a design document has no anchors and aliases; name the thing once (a laminate, a section) and"
                                + " use its name");
            }
            if (anchor.isEmpty() && event instanceof NodeEvent node && !(event instanceof AliasEvent)) {
                anchor = node.getAnchor()
                        .map(
                                a -> new DesignError(
                                        place(node.getStartMark()),
                                        "\"&" + a.getValue() + "\" is a YAML anchor",
                                        "a design document has no anchors and aliases; take it out, or put the text in quotes"));
            }
            depth += event instanceof CollectionStartEvent ? 1 : event instanceof CollectionEndEvent ? -1 : 0;
            if (depth > DEEPEST) {
                throw tooDeep(place(event.getStartMark()));
            }
            Optional<String> tag = switch (event) {
                case ScalarEvent scalar -> scalar.getTag();
                case CollectionStartEvent collection -> collection.getTag();
                default -> Optional.empty();
            };
            if (tag.isPresent()) {
                throw new DesignError(
                        place(event.getStartMark()),
                        "a YAML tag, \"!\" and a word, stands here",
                        "take it out, or put the text in quotes");
            }
            if (event instanceof DocumentStartEvent && ++documents > 1) {
                throw new DesignError(
                        place(event.getStartMark()),
                        "a second document starts here",
                        "one file holds one design; take the \"---\" out");
            }
        }
        if (anchor.isPresent()) {
            throw anchor.get();
        }
    }

    private DesignError syntax(MarkedYamlEngineException e, String text) {
        Place place = place(e.getProblemMark().or(e::getContextMark));
        String problem = e.getProblem() == null ? "this is not YAML" : firstLine(e.getProblem());
        String line =
                text.lines().skip(Math.max(0, place.line() - 1)).findFirst().orElse("");
        if (problem.contains("'\\t'")
                || problem.contains("TAB")
                || line.stripTrailing().matches(" *\\t.*")) {
            return new DesignError(place, "the line is indented with a tab", "indent with blanks");
        }
        String help = e.getContext() == null ? "" : firstLine(e.getContext());
        if (problem.contains("mapping values are not allowed")) {
            return new DesignError(
                    place, "a second \": \" on one line", "start a new line for the key, or put the text in quotes");
        }
        return new DesignError(place, "this is not YAML: " + problem, help);
    }

    private static String firstLine(String text) {
        return text.lines().findFirst().orElse("").strip();
    }

    private Place place(Optional<Mark> mark) {
        return mark.map(m -> new Place(file, m.getLine() + 1, m.getColumn() + 1))
                .orElse(Place.of(file));
    }

    private static DesignError tooDeep(Place place) {
        return new DesignError(place, "more than " + DEEPEST + " levels deep", "is this a design document?");
    }

    private Tree tree(Node node, int depth) {
        Place place = place(node.getStartMark());
        if (depth > DEEPEST) {
            throw tooDeep(place);
        }
        return switch (node) {
            case ScalarNode scalar -> scalar(scalar, place);
            case SequenceNode sequence -> {
                List<Tree> items = new ArrayList<>();
                for (Node item : sequence.getValue()) {
                    items.add(tree(item, depth + 1));
                }
                yield new Tree.Listing(place, items);
            }
            case MappingNode mapping -> mapping(mapping, place, depth);
            default -> throw new DesignError(place, "this is not YAML a design can hold", "");
        };
    }

    private static Tree.Scalar scalar(ScalarNode node, Place place) {
        boolean oneLine =
                node.getEndMark().isPresent() && node.getEndMark().get().getLine() == place.line() - 1;
        return new Tree.Scalar(place, node.getValue(), node.isPlain() && oneLine);
    }

    private Tree.Mapping mapping(MappingNode node, Place place, int depth) {
        Map<String, Place> seen = new HashMap<>();
        List<Tree.Entry> entries = new ArrayList<>();
        for (NodeTuple tuple : node.getValue()) {
            if (!(tree(tuple.getKeyNode(), depth + 1) instanceof Tree.Scalar key) || key.empty()) {
                throw new DesignError(place(tuple.getKeyNode().getStartMark()), "the key is not a word", "name it");
            }
            Place before = seen.putIfAbsent(key.text(), key.place());
            if (before != null) {
                throw new DesignError(
                        key.place(),
                        "\"" + key.text() + "\" is written a second time",
                        "it stands already in line " + before.line() + "; keep one of the two");
            }
            entries.add(new Tree.Entry(key, tree(tuple.getValueNode(), depth + 1)));
        }
        return new Tree.Mapping(place, entries);
    }
}
