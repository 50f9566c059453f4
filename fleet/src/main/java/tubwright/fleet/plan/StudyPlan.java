// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.Binder;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.quantity.NearestName;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Job;
import tubwright.fleet.Point;
import tubwright.fleet.Reading;
import tubwright.fleet.sample.UnitCube;
import tubwright.fleet.statistics.SobolIndices;

/**
 * A study laid out: its points for each variant.
 *
 * @param name of the study
 * @param text as written
 * @param variations what is varied, in the order as written
 * @param shares of each point, one number between 0 and 1 for each variation
 * @param readings what is read
 * @param parts the same points for each variant
 */
public record StudyPlan(
        String name,
        StudyText text,
        List<Variation> variations,
        List<double[]> shares,
        List<Reading> readings,
        List<Part> parts) {
    /** Folder of the studies, beside the design. */
    public static final String FOLDER = "studies";

    /** More points than these are a slip of the pen. */
    public static final int MOST = 1_000_000;

    /**
     * The points of one variant.
     *
     * @param variant its name
     * @param job what is common
     * @param points in the order of the shares
     * @param layout lays out further points
     */
    public record Part(String variant, Job job, List<Point> points, Function<double[], Point> layout) {
        public Part {
            points = List.copyOf(points);
        }

        /** The point of any shares. */
        public Point point(double[] shares) {
            return layout.apply(shares);
        }
    }

    public StudyPlan {
        variations = List.copyOf(variations);
        shares = List.copyOf(shares);
        readings = List.copyOf(readings);
        parts = List.copyOf(parts);
    }

    /**
     * Reads a study.
     *
     * @param design read and sound
     * @param name of the study: {@code studies/NAME.yaml} beside the design
     * @param version of the program
     * @throws DesignError with every fault found
     */
    public static StudyPlan read(Design design, String name, String version) {
        Path folder = design.file().toAbsolutePath().getParent().resolve(FOLDER);
        Path file = folder.resolve(name + ".yaml");
        if (!Files.exists(file)) {
            List<String> known = names(folder);
            throw new DesignError(
                    Place.of(file.toString()),
                    "there is no study \"" + name + "\"",
                    NearestName.of(name, known)
                            .map(n -> "did you mean \"" + n + "\"?")
                            .orElse(known.isEmpty() ? "write one there" : "studies: " + String.join(", ", known)));
        }
        return of(design, name, YamlReader.contents(file), file.toString(), version);
    }

    /** The names of the studies in a folder, sorted. */
    public static List<String> names(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".yaml"))
                    .map(f -> f.substring(0, f.length() - 5))
                    .sorted()
                    .toList();
        } catch (java.io.IOException e) {
            return List.of();
        }
    }

    /** From a text; the file is for messages. */
    static StudyPlan of(Design design, String name, String contents, String file, String version) {
        StudyText text = Binder.bind(YamlReader.read(contents, file), StudyText.class);
        Faults faults = new Faults();
        List<Reading> readings = new ArrayList<>();
        text.read().forEach(r -> faults.attempt(() -> reading(r)).ifPresent(readings::add));
        text.front().forEach(f -> faults.attempt(() -> Aim.of(f, text.read())));
        if (text.vary().isEmpty() && text.layupScatter().isEmpty()) {
            faults.add(text.place(), "nothing is varied", "write under \"vary\" what is, or a \"layup scatter\"");
        }
        if (!text.vary().isEmpty() && text.read().isEmpty()) {
            faults.add(
                    text.place(), "nothing is read", "write under \"read\" what is, such as \"torsional stiffness\"");
        }
        List<String> variants = text.variants().isEmpty()
                ? List.of(Design.AS_DESIGNED)
                : text.variants().stream().map(Name::text).toList();
        List<Blueprint> blueprints = new ArrayList<>();
        for (String variant : variants) {
            if (design.variant(variant).isEmpty()) {
                faults.add(
                        text.variants().get(variants.indexOf(variant)).place(),
                        "there is no variant \"" + variant + "\"",
                        "variants: " + design.variantNames());
            } else {
                blueprints.add(new Blueprint(new Job(
                        design.text(),
                        design.file().getFileName().toString(),
                        variant,
                        text.read().stream().map(Name::text).toList(),
                        text.mesh().map(m -> m.si()).orElse(0.0),
                        version)));
            }
        }
        List<List<Variation>> variations = new ArrayList<>();
        for (Blueprint blueprint : blueprints) {
            List<Variation> each = new ArrayList<>();
            text.vary()
                    .forEach(v ->
                            faults.attempt(() -> Variation.of(v, blueprint)).ifPresent(each::add));
            variations.add(each);
        }
        faults.throwIfAny();
        List<double[]> shares = shares(text, variations.getFirst());
        List<Part> parts = new ArrayList<>();
        for (int b = 0; b < blueprints.size(); b++) {
            Blueprint blueprint = blueprints.get(b);
            List<Variation> each = variations.get(b);
            Function<double[], Point> layout = s -> point(blueprint, each, s);
            parts.add(new Part(
                    variants.get(b),
                    blueprint.job(),
                    shares.parallelStream().map(layout).toList(),
                    layout));
        }
        return new StudyPlan(name, text, variations.getFirst(), shares, readings, parts);
    }

    private static Reading reading(Name name) {
        try {
            return Reading.of(name.text());
        } catch (IllegalArgumentException none) {
            String[] lines = none.getMessage().split("\n\\s*", 2);
            throw new DesignError(name.place(), lines[0], lines.length > 1 ? lines[1] : "");
        }
    }

    private static Point point(Blueprint blueprint, List<Variation> variations, double[] shares) {
        Edited edited = new Edited(blueprint);
        for (int v = 0; v < shares.length; v++) {
            variations.get(v).apply(edited, shares[v]);
        }
        return blueprint.point(edited.patches());
    }

    private static List<double[]> shares(StudyText text, List<Variation> variations) {
        if (variations.isEmpty()) {
            return List.of();
        }
        int count = text.points().orElse(0);
        boolean full = text.layout() == StudyText.Layout.FULL;
        if (!full && (count < 1 || count > MOST)) {
            throw new DesignError(
                    text.place(),
                    "\"points\" is " + (count == 0 ? "not given" : count),
                    "say how many, from 1 to " + MOST);
        }
        if (full && variations.stream().anyMatch(Variation::scatters)) {
            throw new DesignError(
                    text.place(), "a scatter has no steps to combine", "write \"layout: sobol\" with \"points\"");
        }
        int d = variations.size();
        try {
            return switch (text.layout()) {
                case FULL ->
                    UnitCube.grid(
                            variations.stream().mapToInt(Variation::levels).toArray(), MOST);
                case LATIN -> UnitCube.latin(count, d, text.seed());
                case SOBOL ->
                    variations.stream().anyMatch(Variation::scatters)
                            ? UnitCube.sobol(count, d, text.seed())
                            : UnitCube.sobol(count, d);
                case INDICES -> SobolIndices.points(count, d, text.seed());
            };
        } catch (IllegalArgumentException many) {
            throw new DesignError(text.place(), many.getMessage(), "fewer steps, or \"layout: sobol\" with \"points\"");
        }
    }

    /** What is wanted at once. */
    public List<Aim> aims() {
        return text.front().stream().map(f -> Aim.of(f, text.read())).toList();
    }

    /** Whether values scatter about the design, so that probabilities can be told. */
    public boolean scatters() {
        return text.vary().stream()
                .map(v -> v.value())
                .anyMatch(v -> v.spread().isPresent() || v.within().isPresent());
    }

    /** Designs in all variants together. */
    public int size() {
        return parts.size() * shares.size();
    }
}
