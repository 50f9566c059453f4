// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.LayupException;
import tubwright.engine.laminate.Legend;
import tubwright.engine.laminate.OrientationCode;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;

/** The laminates of a design by name. */
final class LaminateReader {
    /** The word in a legend for plies without a tag. */
    private static final String UNTAGGED = "ply";

    private static final String CORE = "core";
    private static final String FILM = "film";

    private final MaterialReader materials;
    private final Map<String, Entry> laminates = new LinkedHashMap<>();

    /**
     * A laminate with what was written.
     *
     * @param laminate about its outer surface
     * @param text as written
     * @param place where its name stands
     */
    record Entry(Laminate laminate, LaminateText text, Place place) {}

    LaminateReader(List<Named<LaminateText>> texts, MaterialReader materials) {
        this.materials = materials;
        Faults faults = new Faults();
        for (Named<LaminateText> text : texts) {
            faults.check(() -> laminates.put(
                    text.name().text(),
                    new Entry(laminate(text.value()), text.value(), text.name().place())));
        }
        faults.throwIfAny();
    }

    /** All laminates, in the order of the design. */
    Map<String, Entry> all() {
        return laminates;
    }

    /** The laminate of a name. */
    Entry get(Name name) {
        Names.require(name, laminates.keySet(), "laminate");
        return laminates.get(name.text());
    }

    /** The laminate of a name as it lies on skin or on a wall. */
    Laminate placed(Name name, boolean onWall) {
        Entry entry = get(name);
        Reference usual = onWall ? Reference.MIDDLE : Reference.OUTER;
        return entry.laminate.about(entry.text.reference().orElse(usual));
    }

    private Laminate laminate(LaminateText text) {
        if (text.sheet().isPresent()) {
            Name name = text.sheet().get();
            Metal metal = materials.get(name, Metal.class, "metal");
            double thickness = text.thickness()
                    .orElseThrow(() -> new DesignError(
                            name.place(), "the gauge of the sheet is missing", "write \"thickness: 1.2 mm\" beside it"))
                    .si();
            return Laminate.of(new Layer(metal, thickness, 0));
        }
        Legend legend = legend(text.plies());
        if (text.core().isPresent()) {
            Name name = text.core().get();
            Core core = materials.get(name, Core.class, "core");
            double thickness = text.coreThickness()
                    .orElseThrow(() -> new DesignError(
                            name.place(),
                            "the thickness of the core is missing",
                            "write \"core thickness: 20 mm\" beside it"))
                    .si();
            legend = legend.with(CORE, core, thickness);
        }
        Optional<Adhesive> film = text.film().map(name -> materials.get(name, Adhesive.class, "adhesive"));
        if (film.isPresent()) {
            legend = legend.with(FILM, film.get());
        }
        Laminate laminate = new Laminate(layers(text.stack().orElseThrow(), legend), Reference.OUTER);
        boolean hasCore = !laminate.layersWith(LayerRole.CORE).isEmpty();
        if (text.core().isPresent() && !hasCore) {
            throw new DesignError(
                    text.core().get().place(),
                    "a core is named but the stack " + text.stack().get() + " has none",
                    "write the word core where it lies, as in [45/core/45]");
        }
        boolean writesFilm = !laminate.layersWith(LayerRole.FILM).isEmpty();
        return film.isPresent() && !writesFilm ? withFilm(laminate, film.get()) : laminate;
    }

    /** One film on each side of every core. */
    private static Laminate withFilm(Laminate laminate, Adhesive film) {
        Layer layer = Layer.ofDegrees(film, 0);
        List<Layer> layers = new ArrayList<>();
        for (Layer each : laminate.layers()) {
            if (each.role() == LayerRole.CORE) {
                layers.addAll(List.of(layer, each, layer));
            } else {
                layers.add(each);
            }
        }
        return new Laminate(layers, laminate.reference());
    }

    private Legend legend(List<Named<Name>> plies) {
        Legend legend = Legend.EMPTY;
        for (Named<Name> entry : plies) {
            String tag =
                    entry.name().text().equals(UNTAGGED) ? "" : entry.name().text();
            Material material = materials.get(entry.value(), Ply.class, "ply");
            legend = legend.with(tag, material);
        }
        return legend;
    }

    private static List<Layer> layers(Name stack, Legend legend) {
        try {
            return OrientationCode.parse(stack.text())
                    .toLaminate(legend, Reference.OUTER)
                    .layers();
        } catch (LayupException e) {
            // A stack is written in quotes, so that its characters start one column further on.
            Place place = e.position() < 0 ? stack.place() : stack.place().plus(1 + e.position());
            throw new DesignError(
                    place,
                    e.getMessage(),
                    "a layup reads \"[45c/0_2/core/0_2/45c]\"; its tags are named under \"plies\"");
        } catch (IllegalArgumentException e) {
            throw new DesignError(stack.place(), e.getMessage(), "");
        }
    }

    /** The plies of a patch, from the outside inward. */
    List<Layer> plies(PatchText text) {
        return layers(text.stack(), legend(text.plies()));
    }
}
