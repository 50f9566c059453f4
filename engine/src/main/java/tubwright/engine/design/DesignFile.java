// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.TextEdit;
import tubwright.engine.design.text.Tree;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.trim.Layup;

/**
 * A design file as it lies on the disk, changed value by value and kept otherwise byte for byte. Immutable: every change
 * gives a new object; nothing is written before {@link #save} or {@link #saveAs}.
 *
 * <p>Changes go to the design as written, or to one of its variants: there a value that the variant does not write itself
 * is added to it, laid over the design's.
 */
public final class DesignFile {
    private static final byte[] MARK = {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};
    private static final String VARIANTS = "variants";
    private static final String REPLACE = "replace ";

    private final Path file;
    private final byte[] read;
    private final TextEdit text;

    private DesignFile(Path file, byte[] read, TextEdit text) {
        this.file = file;
        this.read = read;
        this.text = text;
    }

    /**
     * Opens a design.
     *
     * @param path the design file, or a folder with a {@value Design#FILE_NAME} in it
     * @throws DesignError if it cannot be read
     */
    public static DesignFile open(Path path) {
        Path file = Files.isDirectory(path) ? path.resolve(Design.FILE_NAME) : path;
        String contents = YamlReader.contents(file);
        return new DesignFile(file, bytes(file), TextEdit.of(contents, file.toString()));
    }

    /**
     * The file a design was read from, if it has not changed since.
     *
     * @throws DesignError if it has
     */
    public static DesignFile of(Design design) {
        DesignFile opened = open(design.file());
        if (!opened.text.text().equals(design.text())) {
            throw changedMeanwhile(design.file());
        }
        return opened;
    }

    /** The file. */
    public Path file() {
        return file;
    }

    /** The text as it stands. */
    public String text() {
        return text.text();
    }

    /**
     * The design as the text now has it.
     *
     * @throws DesignError with every fault in it
     */
    public Design design() {
        return DesignReader.read(text.text(), file);
    }

    /** With another stack of a laminate, an orientation code. */
    public DesignFile withStack(String variant, String laminate, String stack) {
        return set(variant, List.of("laminates", laminate, "stack"), stack);
    }

    /** With another core of a laminate, by the material's name. */
    public DesignFile withCore(String variant, String laminate, String material) {
        return set(variant, List.of("laminates", laminate, "core"), material);
    }

    /** With another core thickness of a laminate: {@code "15 mm"}. */
    public DesignFile withCoreThickness(String variant, String laminate, String thickness) {
        return set(variant, List.of("laminates", laminate, "core thickness"), thickness);
    }

    /** With another film of a laminate, by the adhesive's name. */
    public DesignFile withFilm(String variant, String laminate, String adhesive) {
        return set(variant, List.of("laminates", laminate, "film"), adhesive);
    }

    /** With other plies of a patch, an orientation code. */
    public DesignFile withPatch(String variant, String patch, String stack) {
        return set(variant, List.of("patches", patch, "stack"), stack);
    }

    /** With another target: {@code "torsional stiffness"}, {@code "at least 12 kN·m/deg"}. */
    public DesignFile withTarget(String variant, String target, String limit) {
        return set(variant, List.of("targets", target), limit);
    }

    /**
     * With a variant more that differs in nothing yet but how it is told.
     *
     * @param construction in a few words
     * @throws DesignError if there is one of that name
     */
    public DesignFile withVariant(String name, String construction) {
        if (name.equals(Design.AS_DESIGNED) || text.keys(List.of(VARIANTS)).contains(name)) {
            throw new DesignError(
                    Place.of(file.toString()), "there is already a variant \"" + name + "\"", "choose another name");
        }
        return with(text.set(List.of(VARIANTS, name, "construction"), construction));
    }

    /**
     * With a variant more, as a tree.
     *
     * @param differs what it lays over the design
     * @throws DesignError if there is one of that name
     */
    public DesignFile withVariant(String name, Tree.Mapping differs) {
        if (name.equals(Design.AS_DESIGNED) || text.keys(List.of(VARIANTS)).contains(name)) {
            throw new DesignError(
                    Place.of(file.toString()), "there is already a variant \"" + name + "\"", "choose another name");
        }
        return with(text.with(List.of(VARIANTS, name), differs));
    }

    /**
     * With the stacks of a layup, in place: laminates are changed where all their zones change alike, else copied under a
     * new name. The result is read again and compared.
     *
     * @param variant the variant the layup belongs to; a variant's own text takes the changes
     * @throws DesignError if the layup cannot be written as a design: changed joints, patches without plies, cores of
     *     several thicknesses in one stack
     */
    public DesignFile withLayup(String variant, Layup layup) {
        return new LayupText(this, variant).write(layup);
    }

    /** With one value set, in the design as written or in a variant. */
    DesignFile set(String variant, List<String> path, String value) {
        return with(text.set(at(variant, path), value));
    }

    /** With a copy of a laminate that a variant sees, under another name. */
    DesignFile copyLaminate(String variant, String laminate, String name) {
        List<String> path = at(variant, List.of("laminates", laminate));
        if (variant.equals(Design.AS_DESIGNED) || !text.keys(path).isEmpty()) {
            return with(text.copied(path, name));
        }
        // The design's own, so that the variant may change its copy.
        TextEdit edited = text;
        for (String key : text.keys(List.of("laminates", laminate))) {
            List<String> from = List.of("laminates", laminate, key);
            List<String> to = at(variant, List.of("laminates", name, key));
            Optional<String> value = text.value(from);
            if (value.isPresent()) {
                edited = edited.set(to, value.get());
            }
            for (String below : text.keys(from)) {
                edited = edited.set(
                        longer(to, below), text.value(longer(from, below)).orElseThrow());
            }
        }
        return with(edited);
    }

    /** The keys a variant sees in one of the design's mappings. */
    List<String> keys(String variant, String... path) {
        List<String> own = text.keys(at(variant, List.of(path)));
        List<String> all = new ArrayList<>(replaced(variant, path[0]) ? List.of() : text.keys(List.of(path)));
        own.stream().filter(k -> !all.contains(k)).forEach(all::add);
        return all;
    }

    /** The value at a path of keys as a variant sees it, its own or else the design's: {@code "targets", "mass"}. */
    public Optional<String> value(String variant, String... path) {
        Optional<String> own = text.value(at(variant, List.of(path)));
        return own.isPresent() || replaced(variant, path[0]) ? own : text.value(List.of(path));
    }

    /** All values a variant sees below a key. */
    List<String> values(String variant, String key) {
        List<String> all = new ArrayList<>(text.values(at(variant, List.of(key))));
        all.addAll(text.values(List.of(key)));
        return all;
    }

    private boolean replaced(String variant, String key) {
        return !variant.equals(Design.AS_DESIGNED)
                && text.keys(List.of(VARIANTS, variant)).contains(REPLACE + key);
    }

    private List<String> at(String variant, List<String> path) {
        if (variant.equals(Design.AS_DESIGNED)) {
            return path;
        }
        List<String> inside = new ArrayList<>(List.of(VARIANTS, variant));
        for (String key : path) {
            inside.add(text.keys(inside).contains(REPLACE + key) ? REPLACE + key : key);
        }
        return inside;
    }

    private static List<String> longer(List<String> path, String key) {
        List<String> longer = new ArrayList<>(path);
        longer.add(key);
        return longer;
    }

    private DesignFile with(TextEdit edited) {
        return new DesignFile(file, read, edited);
    }

    /**
     * Writes the file it was opened from.
     *
     * @return the file as it now is, to go on from
     * @throws DesignError if somebody else changed it since it was opened, the text is no sound design, or it cannot be
     *     written; the file is then as it was
     */
    public DesignFile save() {
        design();
        byte[] now = encoded();
        try {
            if (!Arrays.equals(Files.readAllBytes(file), read)) {
                throw changedMeanwhile(file);
            }
            Path whole = Files.createTempFile(file.toAbsolutePath().getParent(), "." + file.getFileName(), ".part");
            try {
                Files.write(whole, now);
                Files.move(whole, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
            } finally {
                Files.deleteIfExists(whole);
            }
        } catch (IOException broken) {
            throw unwritable(file, broken);
        }
        return new DesignFile(file, now, text);
    }

    /**
     * Writes a new file beside.
     *
     * @throws DesignError if there is a file of that name, the text is no sound design, or it cannot be written
     */
    public DesignFile saveAs(Path other) {
        design();
        byte[] now = encoded();
        try {
            Files.write(other, now, StandardOpenOption.CREATE_NEW);
        } catch (FileAlreadyExistsException there) {
            throw new DesignError(
                    Place.of(other.toString()),
                    "there is already such a file",
                    "choose another name; none is replaced");
        } catch (IOException broken) {
            throw unwritable(other, broken);
        }
        return new DesignFile(other, now, TextEdit.of(text.text(), other.toString()));
    }

    private byte[] encoded() {
        byte[] plain = text.text().getBytes(StandardCharsets.UTF_8);
        boolean marked = read.length >= MARK.length && Arrays.equals(Arrays.copyOf(read, MARK.length), MARK);
        if (!marked) {
            return plain;
        }
        byte[] whole = Arrays.copyOf(MARK, MARK.length + plain.length);
        System.arraycopy(plain, 0, whole, MARK.length, plain.length);
        return whole;
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException broken) {
            throw new DesignError(Place.of(file.toString()), "the file cannot be read", String.valueOf(broken));
        }
    }

    private static DesignError changedMeanwhile(Path file) {
        return new DesignError(
                Place.of(file.toString()),
                "the file was changed by somebody else meanwhile; nothing was written",
                "read it again, then make the change once more");
    }

    private static DesignError unwritable(Path file, IOException broken) {
        return new DesignError(
                Place.of(file.toString()),
                "the file cannot be written: " + broken.getMessage(),
                "is there room, and may you write there?");
    }
}
