// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import tubwright.engine.cabin.Cabin;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.SchemaWriter;
import tubwright.engine.design.text.Tree;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.make.lay.LayStart;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.response.StabilityAsk;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.LayupRules;

/**
 * A design document, read and resolved.
 *
 * @param name of the tub
 * @param by who designs it
 * @param notes anything a reader should know
 * @param variants the design as written first, then its variants in the order of the document
 * @param warnings what should be looked at, over all variants
 * @param file the design file
 * @param text its contents, what the answers come from
 * @param places where its names stand
 */
public record Design(
        String name,
        Optional<String> by,
        Optional<String> notes,
        List<Variant> variants,
        List<Warning> warnings,
        Path file,
        String text,
        Places places) {
    /** Name of the variant that is the design as written. */
    public static final String AS_DESIGNED = "as designed";

    /** The file read when a folder is given. */
    public static final String FILE_NAME = "tub.yaml";

    /**
     * One way to build the tub.
     *
     * @param name {@value Design#AS_DESIGNED} or the variant's
     * @param targets what it must reach
     * @param tub with every name resolved
     * @param stability what of buckling and vibration it asks for
     * @param layupRules what stacks must keep to when weight is taken out
     * @param crush structures that crush in an impact
     * @param rules that it is held against
     * @param cabin what has to go into it
     * @param laying where cloth is to be laid from
     */
    public record Variant(
            String name,
            Targets targets,
            Tub tub,
            StabilityAsk stability,
            LayupRules layupRules,
            List<CrushStructure> crush,
            List<RuledTub> rules,
            Cabin cabin,
            List<LayStart> laying) {
        public Variant {
            laying = List.copyOf(laying);
            rules = List.copyOf(rules);
            crush = List.copyOf(crush);
        }

        /** What has to go into the tub, held against its skin, at each station as thick as its thickest strip is there. */
        public Cabin.Fit fit() {
            return cabin.in(tub.shape(), this::skin);
        }

        /**
         * The thickest laminate of any strip at a station, m; patches left out.
         *
         * @param x station, m
         */
        public double skin(double x) {
            return tub.layout().zones().stream()
                    .filter(zone -> zone.areas().stream()
                            .anyMatch(a -> a instanceof SurfaceLayout.OnStrips strips
                                    && x >= strips.fromX()
                                    && x <= strips.toX()))
                    .mapToDouble(zone -> Optional.ofNullable(tub.laminates().get(zone.name()))
                            .map(Laminate::thickness)
                            .orElse(0.0))
                    .max()
                    .orElse(0);
        }
    }

    public Design {
        variants = List.copyOf(variants);
        warnings = List.copyOf(warnings);
    }

    /**
     * Reads a design.
     *
     * @param path the design file, or a folder with a {@value #FILE_NAME} in it
     * @throws DesignError with every fault found, each with file, line and column
     */
    public static Design read(Path path) {
        Path file = Files.isDirectory(path) ? path.resolve(FILE_NAME) : path;
        if (Files.isDirectory(path) && !Files.exists(file)) {
            throw new DesignError(
                    Place.of(path.toString()),
                    "the folder has no " + FILE_NAME,
                    "\"tubwright new DIR\" starts a design that runs");
        }
        return DesignReader.read(file);
    }

    /**
     * A design that is not on the disk.
     *
     * @param tree of the document
     * @param text the same as text
     * @param file its name, for messages
     * @throws DesignError with every fault found
     */
    public static Design of(Tree.Mapping tree, String text, Path file) {
        return DesignReader.read(tree, file, text);
    }

    /** The JSON Schema of the design document. */
    public static String schema() {
        return SchemaWriter.write(DesignText.class, "Tubwright design document");
    }

    /**
     * What to tell the designer of a fault found after reading: impossible supports, a mesh that cannot be made. Points at
     * the case, hardpoint, wall or whatever else the fault names.
     */
    public DesignError explain(RuntimeException fault) {
        return switch (fault) {
            case DesignError told -> told;
            case StructureException e -> new DesignError(places.mentioned(e.getMessage()), e.getMessage(), e.remedy());
            case ShapeException e ->
                new DesignError(
                        places.of(e.name()).orElseGet(() -> places.mentioned(e.getMessage())), e.getMessage(), "");
            default ->
                new DesignError(Place.of(file.toString()), Objects.toString(fault.getMessage(), fault.toString()), "");
        };
    }

    /** As {@link #explain(RuntimeException)} for a fault met in one variant; names it where the message does not. */
    public DesignError explain(Variant variant, RuntimeException fault) {
        DesignError told = explain(fault);
        if (variant.name().equals(AS_DESIGNED) || told.getMessage().contains(variant.name())) {
            return told;
        }
        return new DesignError(told.faults().stream()
                .map(f -> new DesignError.Fault(f.place(), "variant \"" + variant.name() + "\": " + f.read(), f.help()))
                .toList());
    }

    /** The design as written. */
    public Variant asDesigned() {
        return variants.getFirst();
    }

    /** The variant of a name. */
    public Optional<Variant> variant(String name) {
        return variants.stream().filter(v -> v.name().equals(name)).findFirst();
    }

    /** The names of the variants, for a message. */
    public String variantNames() {
        return variants.stream().map(Variant::name).collect(Collectors.joining(", "));
    }
}
