// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyValue;

/** Layers of a laminate as layers for heat; neighbours of one material are one layer. */
final class CureStack {
    /** Of air at some 100 °C, W/(m K) (from memory). */
    private static final double AIR = 0.03;

    private static final double ROOM = 293.15;

    private final CureLibrary library;
    private final Set<String> missing = new LinkedHashSet<>();
    private final Set<String> standIns = new LinkedHashSet<>();
    private final Set<Resin> resins = new LinkedHashSet<>();

    CureStack(CureLibrary library) {
        this.library = library;
    }

    /** What is missing, in words, after {@link #layers}. */
    List<String> missing() {
        return List.copyOf(missing);
    }

    /** Resins for which others stand in. */
    List<String> standIns() {
        return List.copyOf(standIns);
    }

    /** Resins that cure. */
    Set<Resin> resins() {
        return resins;
    }

    /**
     * The layers for heat, as far as data go.
     *
     * @param degree of cure of plies at the beginning; empty for fresh ones
     */
    List<HeatLayer> layers(List<Layer> laminate, Optional<Double> degree) {
        List<HeatLayer> result = new ArrayList<>();
        int i = 0;
        while (i < laminate.size()) {
            Material material = laminate.get(i).material();
            double thickness = 0;
            while (i < laminate.size() && laminate.get(i).material().equals(material)) {
                thickness += laminate.get(i).thickness();
                i++;
            }
            add(result, material, thickness, degree);
        }
        return result;
    }

    private void add(List<HeatLayer> result, Material material, double thickness, Optional<Double> degree) {
        switch (material) {
            case Ply ply -> ply(ply, thickness, degree).ifPresent(result::add);
            case Core core -> core(core, thickness).ifPresent(result::add);
            case Adhesive film ->
                heat("films", "epoxy", film.name())
                        .ifPresent(p -> result.add(HeatLayer.inert(film.name(), thickness, p)));
            case Metal metal -> missing.add("the heat properties of the metal '" + metal.name() + "'");
        }
    }

    private Optional<HeatProperties> heat(String family, String kind, String name) {
        HeatProperties found = family.equals("films")
                ? library.films().get(kind)
                : library.cores().get(kind);
        if (found == null) {
            missing.add("'" + kind + "' under \"" + family + "\" of the cure data, for '" + name + "'");
        }
        return Optional.ofNullable(found);
    }

    private Optional<HeatLayer> core(Core core, double thickness) {
        String kind = core.form() == Core.Form.FOAM ? "foam" : core.name().startsWith("al-") ? "aluminium" : "aramid";
        return heat("cores", kind, core.name())
                .map(wall -> HeatLayer.inert(core.name(), thickness, HeatProperties.cells(wall, core.density(), AIR)));
    }

    private Optional<HeatLayer> ply(Ply ply, double thickness, Optional<Double> degree) {
        PlyCure cure = library.plies().get(ply.name());
        if (cure == null) {
            missing.add("the resin of the ply '" + ply.name() + "' (under \"plies\" of the cure data)");
            return Optional.empty();
        }
        Optional<Double> share = ply.properties().si(Property.FIBRE_VOLUME_FRACTION).stream()
                .boxed()
                .findFirst()
                .or(() -> cure.fibreShare().map(PropertyValue::si));
        if (share.isEmpty()) {
            missing.add("the fibre volume fraction of the ply '" + ply.name() + "'");
            return Optional.empty();
        }
        cure.standsInFor().ifPresent(own -> standIns.add(own + " (" + cure.resin() + " stands in)"));
        Resin resin = library.resins().get(cure.resin());
        resins.add(resin);
        HeatProperties mixed = HeatProperties.mixed(
                library.fibres().get(cure.fibre()),
                new HeatProperties(
                        resin.density().si(),
                        resin.specificHeat().si(),
                        resin.conductivity().si()),
                share.get());
        double heat = (1 - share.get()) * resin.density().si() * resin.heat().si();
        return Optional.of(new HeatLayer(
                ply.name(),
                thickness,
                mixed,
                Optional.of(new HeatLayer.Reaction(
                        resin.law(), heat, degree.orElse(resin.start().si())))));
    }

    /** Room temperature, K. */
    static double room() {
        return ROOM;
    }
}
