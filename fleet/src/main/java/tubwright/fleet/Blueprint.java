// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Overlay;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Tree;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.quantity.NearestName;

/**
 * A job's document, read once, from which its designs are made. What is computed is the variant laid over the document, as
 * if it had been written so; patches go on top of that. Immutable.
 */
public final class Blueprint {
    private static final String VARIANTS = "variants";

    private static final String RULES = "rules";

    /** Before a key of a variant whose value takes the place of the whole. */
    private static final String REPLACE = "replace ";

    /** What tells designs apart for a reader only. */
    private static final List<String> WORDS = List.of("by", "notes");

    private final Job job;
    private final Tree.Mapping tree;

    /** What the variant lays over the document. */
    private final Tree.Mapping own;

    /**
     * @throws DesignError if the document is no YAML or has no such variant
     */
    public Blueprint(Job job) {
        this.job = job;
        Tree.Mapping whole = YamlReader.read(job.document(), job.file());
        Tree.Mapping bare = whole.without(VARIANTS);
        boolean plain = job.variant().equals(Design.AS_DESIGNED);
        own = plain ? new Tree.Mapping(whole.place(), List.of()) : variant(whole);
        // Rules may speak of zones that only the design as written has; no reading asks for them.
        tree = plain ? bare : Overlay.lay(bare, own).without(RULES);
    }

    private Tree.Mapping variant(Tree.Mapping whole) {
        Tree.Mapping all = whole.get(VARIANTS)
                .filter(Tree.Mapping.class::isInstance)
                .map(Tree.Mapping.class::cast)
                .orElseGet(() -> new Tree.Mapping(whole.place(), List.of()));
        return all.get(job.variant())
                .filter(Tree.Mapping.class::isInstance)
                .map(Tree.Mapping.class::cast)
                .orElseThrow(() -> new DesignError(
                        all.place(), "there is no variant \"" + job.variant() + "\"", meant(job.variant(), keys(all))));
    }

    /** The job. */
    public Job job() {
        return job;
    }

    /** The document with the variant laid over it. */
    public Tree.Mapping tree() {
        return tree;
    }

    /**
     * The value at a path.
     *
     * @throws DesignError if the path leads nowhere, with the word that was probably meant, or not to a single value
     */
    public Tree.Scalar value(List<String> path) {
        Tree at = tree;
        for (int i = 0; i < path.size(); i++) {
            at = below(at, path, i);
        }
        if (at instanceof Tree.Scalar scalar) {
            return scalar;
        }
        List<String> further = at instanceof Tree.Mapping mapping ? keys(mapping) : List.of();
        throw new DesignError(
                at.place(),
                "\"" + String.join(", ", path) + "\" is " + at.kind() + ", not one value",
                further.isEmpty() ? "name a value" : "go on with one of: " + String.join(", ", further));
    }

    /** The node at a path, if there is one. */
    public Optional<Tree> node(List<String> path) {
        Optional<Tree> at = Optional.of(tree);
        for (String key : path) {
            at = at.flatMap(t -> child(t, key));
        }
        return at;
    }

    private static Tree below(Tree at, List<String> path, int i) {
        String key = path.get(i);
        return child(at, key).orElseThrow(() -> {
            String where = i == 0 ? "the design" : "\"" + String.join(", ", path.subList(0, i)) + "\"";
            return switch (at) {
                case Tree.Mapping mapping ->
                    new DesignError(at.place(), where + " has no \"" + key + "\"", meant(key, keys(mapping)));
                case Tree.Listing listing ->
                    new DesignError(
                            at.place(),
                            where + " is a list of " + listing.items().size() + " without a \"" + key + "\"",
                            "count from 0");
                case Tree.Scalar _ ->
                    new DesignError(at.place(), where + " is a single value without a \"" + key + "\"", "stop there");
            };
        });
    }

    private static Optional<Tree> child(Tree at, String key) {
        return switch (at) {
            case Tree.Mapping mapping -> mapping.get(key);
            case Tree.Listing listing ->
                key.matches("\\d{1,6}")
                                && Integer.parseInt(key) < listing.items().size()
                        ? Optional.of(listing.items().get(Integer.parseInt(key)))
                        : Optional.empty();
            case Tree.Scalar _ -> Optional.empty();
        };
    }

    private static List<String> keys(Tree.Mapping mapping) {
        return mapping.entries().stream().map(e -> e.key().text()).toList();
    }

    /** {@code did you mean "x"?}, or else what there is. */
    private static String meant(String word, List<String> words) {
        return NearestName.of(word, words)
                .map(n -> "did you mean \"" + n + "\"?")
                .orElse("there " + (words.isEmpty() ? "is none" : "are: " + String.join(", ", words)));
    }

    /**
     * The document of a point.
     *
     * @throws DesignError if a patch names nothing
     */
    public Tree.Mapping tree(List<Patch> patches) {
        Tree patched = tree;
        for (Patch patch : patches) {
            patched = patched(patched, patch, 0);
        }
        return (Tree.Mapping) patched;
    }

    private static Tree patched(Tree at, Patch patch, int depth) {
        if (depth == patch.path().size()) {
            return new Tree.Scalar(at.place(), patch.value(), false);
        }
        Tree below = patched(below(at, patch.path(), depth), patch, depth + 1);
        String key = patch.path().get(depth);
        if (at instanceof Tree.Listing listing) {
            List<Tree> items = new ArrayList<>(listing.items());
            items.set(Integer.parseInt(key), below);
            return new Tree.Listing(listing.place(), items);
        }
        Tree.Mapping mapping = (Tree.Mapping) at;
        Tree.Scalar written = mapping.entries().stream()
                .map(Tree.Entry::key)
                .filter(k -> k.text().equals(key))
                .findFirst()
                .orElseThrow();
        return mapping.with(new Tree.Entry(written, below));
    }

    /**
     * What a variant lays over the document to be the design of a point: what the job's variant lays over it, and the
     * patches; lists, which a variant can only replace, whole.
     *
     * @throws DesignError if a patch names nothing
     */
    public Tree.Mapping differs(List<Patch> patches) {
        Tree.Mapping patched = tree(patches);
        Tree.Mapping differs = own;
        for (Patch patch : patches) {
            String first = REPLACE + patch.path().getFirst();
            if (own.get(first).isPresent()) {
                differs = differs.with(new Tree.Entry(
                        word(first), child(patched, patch.path().getFirst()).orElseThrow()));
            } else {
                differs = (Tree.Mapping) laid(differs, patched, patch.path());
            }
        }
        return differs;
    }

    /** {@code over} with what stands at a path of {@code from}, from where that is no longer a mapping. */
    private Tree laid(Tree over, Tree from, List<String> path) {
        if (!(from instanceof Tree.Mapping mapping) || path.isEmpty()) {
            return from;
        }
        Tree.Mapping below = over instanceof Tree.Mapping already ? already : new Tree.Mapping(tree.place(), List.of());
        String key = path.getFirst();
        Tree inside = mapping.get(key).orElseThrow();
        Tree had = below.get(key).orElseGet(() -> new Tree.Mapping(tree.place(), List.of()));
        return below.with(new Tree.Entry(word(key), laid(had, inside, path.subList(1, path.size()))));
    }

    private Tree.Scalar word(String text) {
        return new Tree.Scalar(tree.place(), text, true);
    }

    /**
     * The design of a point, read and resolved.
     *
     * @throws DesignError with every fault in it
     */
    public Design design(List<Patch> patches) {
        return Design.of(tree(patches), job.document(), Path.of(job.file()));
    }

    /**
     * A point. Its key does not depend on comments, quotes or notes.
     *
     * @throws DesignError if a patch names nothing
     */
    public Point point(List<Patch> patches) {
        StringBuilder all = new StringBuilder();
        all.append(job.version())
                .append('\n')
                .append(Double.toString(job.meshSize()))
                .append('\n');
        Tree.Mapping patched = tree(patches);
        for (String word : WORDS) {
            patched = patched.without(word);
        }
        canonical(patched, all);
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return new Point(
                    HexFormat.of().formatHex(digest.digest(all.toString().getBytes(StandardCharsets.UTF_8))), patches);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Each value with its length before it, so that no two trees are written alike. */
    private static void canonical(Tree tree, StringBuilder out) {
        switch (tree) {
            case Tree.Scalar scalar ->
                out.append(scalar.text().length()).append('=').append(scalar.text());
            case Tree.Listing listing -> {
                out.append('[').append(listing.items().size()).append(':');
                listing.items().forEach(item -> canonical(item, out));
            }
            case Tree.Mapping mapping -> {
                out.append('{').append(mapping.entries().size()).append(':');
                mapping.entries().forEach(entry -> {
                    canonical(entry.key(), out);
                    canonical(entry.value(), out);
                });
            }
        }
    }

    /** Place in the document where a message about a path may point; the top where there is nothing. */
    public Place place(List<String> path) {
        return node(path).map(Tree::place).orElse(tree.place());
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s (%s)", job.file(), job.variant());
    }
}
