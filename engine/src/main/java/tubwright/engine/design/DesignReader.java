// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tubwright.engine.cabin.Cabin;
import tubwright.engine.design.text.Binder;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Overlay;
import tubwright.engine.design.text.Tree;
import tubwright.engine.design.text.YamlReader;
import tubwright.engine.laminate.LayupAdvice;
import tubwright.engine.laminate.LayupAdvice.Severity;
import tubwright.engine.laminate.LayupPractice;
import tubwright.engine.make.lay.LayStart;
import tubwright.engine.mesh.SurfaceLayout;
import tubwright.engine.response.StabilityAsk;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Fittings;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Stiffener;
import tubwright.engine.structure.Tub;

/** From file to {@link Design}: reads the text once, lays each variant over it, resolves the names of each. */
final class DesignReader {
    private static final String VARIANTS = "variants";
    private static final List<String> NOT_IN_VARIANTS = List.of("tub", "by", VARIANTS);

    private DesignReader() {}

    static Design read(Path file) {
        return read(YamlReader.contents(file), file);
    }

    /** From a text that is not on the disk yet; the file is for messages. */
    static Design read(String contents, Path file) {
        return read(YamlReader.read(contents, file.toString()), file, contents);
    }

    /** From a tree; the contents are what it was read from. */
    static Design read(Tree.Mapping tree, Path file, String contents) {
        DesignText base = Binder.bind(tree, DesignText.class);
        Set<Warning> warnings = new LinkedHashSet<>();
        Places places = new Places(file.toString());
        List<Design.Variant> variants = new ArrayList<>();
        Faults faults = new Faults();
        faults.attempt(() -> resolve(base, Design.AS_DESIGNED, warnings, places))
                .ifPresent(variants::add);
        Tree.Mapping bare = tree.without(VARIANTS);
        for (Named<Tree.Mapping> variant : base.variants()) {
            try {
                variants.add(variant(bare, variant, warnings, places));
            } catch (DesignError error) {
                // What is wrong with the design itself is wrong with each variant too: told once.
                error.faults().stream().filter(f -> !faults.has(f)).forEach(f -> faults.add(in(variant, bare, f)));
            }
        }
        faults.throwIfAny();
        return new Design(
                base.tub().text(), base.by(), base.notes(), variants, List.copyOf(warnings), file, contents, places);
    }

    /** A fault found in a variant, with the variant's name and with what a new entry of it was probably meant to be. */
    private static DesignError.Fault in(Named<Tree.Mapping> variant, Tree.Mapping base, DesignError.Fault fault) {
        if (fault.place().equals(variant.name().place())) {
            return fault; // of the name itself
        }
        String meant = Overlay.meant(base, variant.value(), fault.place())
                .filter(m -> !fault.help().startsWith("did you mean"))
                .orElse("");
        return new DesignError.Fault(
                fault.place(), "variant \"" + variant.name() + "\": " + fault.read(), meant + fault.help());
    }

    private static Design.Variant variant(
            Tree.Mapping base, Named<Tree.Mapping> variant, Set<Warning> warnings, Places places) {
        if (variant.name().text().equals(Design.AS_DESIGNED)) {
            throw new DesignError(
                    variant.name().place(),
                    "\"" + Design.AS_DESIGNED + "\" names the design as written",
                    "give the variant another name");
        }
        for (Tree.Entry entry : variant.value().entries()) {
            if (NOT_IN_VARIANTS.contains(entry.key().text())) {
                throw new DesignError(
                        entry.key().place(),
                        "\"" + entry.key().text() + "\" cannot differ in a variant",
                        "a variant is the same tub built in another way; start another design file for another tub");
            }
        }
        DesignText text = Binder.bind(Overlay.lay(base, variant.value()), DesignText.class);
        return resolve(text, variant.name().text(), warnings, places);
    }

    /** Resolves every name of one variant; the order is that of the way of the data, each step needing those before. */
    private static Design.Variant resolve(DesignText text, String variant, Set<Warning> warnings, Places places) {
        places.add(text);
        List<Warning> found = new ArrayList<>();
        TubShape shape = ShapeReader.read(text.shape());
        MaterialReader materials = MaterialReader.of(text.materials());
        LaminateReader laminates = new LaminateReader(text.laminates(), materials);
        HardpointReader hardpoints = new HardpointReader(text.hardpoints(), shape, materials, found);
        LayoutReader layouts = new LayoutReader(text, shape, laminates, hardpoints);
        SurfaceLayout layout = layouts.read();
        Faults faults = new Faults();
        Optional<List<Joint>> joints = faults.attempt(
                () -> new JointReader(shape, layout, materials, laminates, found).read(text.joints(), text.place()));
        Optional<List<Stiffener>> stiffeners =
                faults.attempt(() -> new StiffenerReader(shape, materials).read(text.stiffeners()));
        PointBook points = new PointBook(hardpoints);
        Optional<Fittings> fittings = faults.attempt(() -> new FittingsReader(shape, materials, points)
                .read(text, hardpoints.all(), new VehicleReader(materials, points)));
        Optional<List<Case>> cases = fittings.flatMap(f ->
                faults.attempt(() -> new CaseReader(shape, hardpoints, points, f.vehicle(), found).read(text.cases())));
        Optional<CrushReader> crush = faults.attempt(() -> CrushReader.of(text, shape, hardpoints, found));
        Optional<List<RuledTub>> rules = faults.attempt(() -> new RulesReader(
                        shape,
                        hardpoints,
                        points,
                        List.copyOf(layouts.zoneLaminates().keySet()),
                        variant.equals(Design.AS_DESIGNED))
                .read(text.rules()));
        Optional<Cabin> cabin = faults.attempt(() -> CabinReader.read(text.cabin(), shape));
        Optional<List<LayStart>> laying =
                faults.attempt(() -> text.laying().stream().map(LayText::of).toList());
        faults.throwIfAny();
        Set<String> inJoints = new LinkedHashSet<>();
        text.joints().forEach(j -> inJoints.addAll(j.value().laminates()));
        layupPractice(laminates, layouts.usedLaminates(), inJoints, found);
        // What holds of the design itself is not said again of its variants.
        found.stream()
                .filter(w -> !warnings.contains(w))
                .map(w -> w.in(variant))
                .forEach(warnings::add);
        Tub tub = new Tub(
                text.tub().text(),
                variant,
                text.construction(),
                shape,
                layout,
                text.mesh().map(m -> m.size().si()).orElse(MeshText.USUAL_SIZE),
                layouts.zoneLaminates(),
                layouts.patchPlies(),
                joints.orElseThrow(),
                stiffeners.orElseThrow(),
                hardpoints.all(),
                Stream.concat(cases.orElseThrow().stream(), crush.orElseThrow().cases().stream())
                        .toList(),
                StrengthReader.read(text.strength()),
                fittings.orElseThrow());
        Targets targets = Targets.of(text.targets());
        StabilityAsk ask = text.stability().map(s -> s.ask(hardpoints)).orElse(StabilityAsk.NONE);
        return new Design.Variant(
                variant,
                targets,
                tub,
                targets.completed(ask),
                LayupRulesText.rules(text.layupRules()),
                crush.orElseThrow().structures(),
                rules.orElseThrow(),
                cabin.orElseThrow(),
                laying.orElseThrow());
    }

    /** Laminates of zones are held against practice; tapes of joints follow rules of their own. */
    private static void layupPractice(
            LaminateReader laminates, Set<String> inZones, Set<String> inJoints, List<Warning> found) {
        laminates.all().forEach((name, entry) -> {
            if (inZones.contains(name)) {
                for (LayupAdvice advice : LayupPractice.check(entry.laminate())) {
                    found.add(new Warning(
                            entry.place(),
                            advice.severity(),
                            "laminate \"" + name + "\": " + advice.text(),
                            advice.rule() + ": " + advice.source()));
                }
            } else if (!inJoints.contains(name)) {
                found.add(new Warning(
                        entry.place(),
                        Severity.NOTE,
                        "laminate \"" + name + "\" is used nowhere",
                        "take it out or use it"));
            }
        });
    }
}
