// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.cure.LaminateCure.Bend;
import tubwright.engine.make.cure.LaminateCure.Stage;
import tubwright.engine.material.Ply;

/** Takes a laminate through the cures of a shop and looks at what comes of it. */
public final class CureStudy {
    /** As usual, fewer moments kept: a drawing needs no more. */
    private static final CureOven.Fineness FINENESS = new CureOven.Fineness(4, 0.5e-3, 180);

    private final CureLibrary library;
    private final CureShop shop;

    /** With these data and habits. */
    public CureStudy(CureLibrary library, CureShop shop) {
        this.library = library;
        this.shop = shop;
    }

    /** What there is to be said of a laminate; what data are missing is named, never guessed. */
    public LaminateCure of(String name, Laminate laminate) {
        List<Layer> layers = laminate.layers();
        CureStack stack = new CureStack(library);
        stack.layers(layers, Optional.empty());
        Optional<Bend> bend = bend(laminate);
        if (!stack.missing().isEmpty() || stack.resins().isEmpty()) {
            List<String> missing = stack.missing().isEmpty() ? List.of("a layer that cures") : stack.missing();
            return new LaminateCure(name, laminate.thickness(), List.of(), missing, bend);
        }
        int core = core(layers);
        List<Stage> stages = new ArrayList<>();
        if (core < 0) {
            stages.add(stage("all plies", shop.solid(), stack.layers(layers, Optional.empty()), layers, false));
        } else if (shop.order() == CureShop.Order.ONE_SHOT) {
            stages.add(stage(
                    "skins and core at once", shop.overCore(), stack.layers(layers, Optional.empty()), layers, true));
        } else {
            threeCures(layers, core, stages);
        }
        return new LaminateCure(name, laminate.thickness(), stages, List.of(), bend);
    }

    /** Outer skin at full pressure, core on it at low pressure, inner skin over both at low pressure. */
    private void threeCures(List<Layer> layers, int core, List<Stage> stages) {
        int first = layers.get(core - 1).role() == LayerRole.FILM ? core - 1 : core;
        int last = core;
        while (last + 1 < layers.size() && layers.get(last + 1).role() != LayerRole.PLY) {
            last++;
        }
        int innerFilm = last > core ? core + 1 : last + 1;
        CureStack stack = new CureStack(library);
        List<Layer> outer = layers.subList(0, first);
        stages.add(stage("outer skin", shop.solid(), stack.layers(outer, Optional.empty()), outer, false));
        double cured = degreeAfter(stages.getLast());
        List<HeatLayer> bonded = new ArrayList<>(stack.layers(outer, Optional.of(cured)));
        bonded.addAll(stack.layers(layers.subList(first, innerFilm), Optional.empty()));
        stages.add(stage("core on the outer skin", shop.overCore(), bonded, layers.subList(0, innerFilm), true));
        List<HeatLayer> whole = new ArrayList<>(stack.layers(outer, Optional.of(degreeAfter(stages.getLast()))));
        whole.addAll(stack.layers(layers.subList(first, layers.size()), Optional.empty()));
        stages.add(stage("inner skin over the core", shop.overCore(), whole, layers, true));
    }

    private static double degreeAfter(Stage stage) {
        return stage.history().map(h -> h.leastDegree(h.last())).orElse(0.0);
    }

    private static int core(List<Layer> layers) {
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).role() == LayerRole.CORE) {
                if (i == 0 || i == layers.size() - 1) {
                    throw new CureException("a core without a skin on both sides cannot be cured");
                }
                return i;
            }
        }
        return -1;
    }

    private Stage stage(String title, Cycle cycle, List<HeatLayer> stack, List<Layer> plies, boolean overCore) {
        List<HeatLayer> all = new ArrayList<>();
        all.add(HeatLayer.inert("mould", shop.toolThickness(), shop.tool().properties()));
        all.addAll(stack);
        CureStack known = new CureStack(library);
        known.layers(plies, Optional.empty());
        try {
            CureHistory history = new CureOven(
                            all, new Face.Convective(shop.toolSide()), new Face.Convective(shop.bagSide()), FINENESS)
                    .run(cycle);
            List<CureCheck> checks =
                    new CureChecks(shop, cycle, history, known.resins(), known.standIns()).all(plies, overCore);
            return new Stage(title, cycle, Optional.of(history), checks, known.standIns());
        } catch (CureException e) {
            CureCheck never = new CureCheck(
                    CureCheck.Subject.CYCLE,
                    CureCheck.Verdict.MISSED,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    e.getMessage());
            return new Stage(title, cycle, Optional.empty(), List.of(never), known.standIns());
        }
    }

    /** How bends of the laminate, or of its outer skin, close; empty where the data are missing. */
    public Optional<Bend> bend(Laminate laminate) {
        List<Ply> plies = new ArrayList<>();
        List<Layer> skin = new ArrayList<>();
        for (Layer layer : laminate.layers()) {
            if (layer.role() == LayerRole.CORE) {
                break;
            }
            if (layer.material() instanceof Ply ply) {
                plies.add(ply);
                skin.add(layer);
            }
        }
        boolean carbon = !plies.isEmpty()
                && plies.stream()
                        .allMatch(p -> library.plies().containsKey(p.name())
                                && library.plies().get(p.name()).fibre().equals("carbon"));
        boolean tape = ThroughThickness.canBeComputed(plies);
        Shrinkage data = library.laminates().get(tape ? "carbon-tape" : "carbon-cloth");
        if (!carbon || data == null) {
            return Optional.empty();
        }
        double change = CureStack.room() - shop.solid().hottest();
        SpringIn formula = data.springIn();
        String source = data.through().provenance().toString();
        if (tape) {
            ThroughThickness own = ThroughThickness.of(new Laminate(skin, laminate.reference()));
            formula = new SpringIn(own.along(), own.through(), formula.alongShrinkage(), formula.throughShrinkage());
            source = "expansion by laminate theory; shrinkage: "
                    + data.throughShrinkage().provenance();
        }
        return Optional.of(new Bend(formula, change, source));
    }
}
