// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tubwright.desk.answer.SpreadStory;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Reference;
import tubwright.engine.response.Study;
import tubwright.engine.safety.damage.Patch;
import tubwright.engine.safety.damage.Patches;
import tubwright.engine.safety.spread.Energies;
import tubwright.engine.safety.spread.LoadPath;
import tubwright.engine.safety.spread.Neighbourhood;
import tubwright.engine.safety.spread.Panel;
import tubwright.engine.safety.spread.SpreadAnswer;
import tubwright.engine.safety.spread.SpreadModel;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** Follows loads on panels and on places of a tub until little is left. */
public final class SpreadWork {
    private SpreadWork() {}

    /**
     * A panel to push.
     *
     * @param laminate name
     * @param length m
     * @param width m
     * @param span between supports, m; 0 where all edges hold
     * @param pad m
     * @param elements along and across
     */
    public record OnPanel(String laminate, double length, double width, double span, double pad, int elements) {}

    /**
     * A place on the tub.
     *
     * @param at a point, hardpoint, zone or wall
     * @param loading name of the case
     * @param size across which shells may fail, m
     * @param hole diameter of what is torn out first, m; 0 for nothing
     */
    public record OnTub(String at, String loading, double size, double hole) {}

    /**
     * What is asked: a panel or a place, one of them.
     *
     * @param on variant and mesh
     * @param energies to assume where a material gives none
     */
    public record Request(TrimWork.Request on, Optional<OnPanel> panel, Optional<OnTub> place, Energies energies) {}

    /**
     * Follows the load.
     *
     * @param stop asked before each step whether to end with what there is
     */
    public static SpreadStory spread(
            Design design,
            Request request,
            String stamp,
            String version,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        Design.Variant variant = TrimWork.variant(design, request.on);
        try {
            return request.panel.isPresent()
                    ? panel(design, variant, request, request.panel.get(), stamp, version, listener, stop)
                    : place(design, variant, request, request.place.orElseThrow(), stamp, version, listener, stop);
        } catch (StructureException | ShapeException fault) {
            throw design.explain(variant, fault);
        }
    }

    private static SpreadAnswer follow(SpreadModel model, Workbench.Listener listener, BooleanSupplier stop) {
        return LoadPath.of(
                model,
                LoadPath.Manner.USUAL,
                Solvers.best(),
                r -> listener.stage(String.format(
                        Locale.ROOT,
                        "step %d: bears %.3g, %.0f %% of the most so far (ends at %.0f %%)",
                        r.step(),
                        r.factor(),
                        100 * r.factor() / r.peak(),
                        100 * LoadPath.Manner.USUAL.until())),
                stop);
    }

    private static SpreadStory panel(
            Design design,
            Design.Variant variant,
            Request request,
            OnPanel asked,
            String stamp,
            String version,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        Tub tub = variant.tub();
        Laminate laminate = PunchWork.laminate("--panel", variant, asked.laminate);
        boolean all = asked.span == 0;
        Panel panel = new Panel(
                laminate.about(Reference.MIDDLE),
                asked.length,
                asked.width,
                all ? asked.length : asked.span,
                all,
                asked.pad,
                asked.elements,
                asked.elements);
        listener.stage("panel of " + asked.elements + " x " + asked.elements + " elements");
        SpreadModel model = panel.model(tub.strength(), request.energies);
        SpreadAnswer path = follow(model, listener, stop);
        String what = String.format(
                Locale.ROOT,
                "panel of %s, %.0f x %.0f mm, %s, pushed on its outer face by a pad of %.0f mm%s",
                asked.laminate,
                1e3 * asked.length,
                1e3 * asked.width,
                all ? "held at all edges" : String.format(Locale.ROOT, "on supports %.0f mm apart", 1e3 * asked.span),
                1e3 * asked.pad,
                all ? " square" : " across its width");
        return new SpreadStory(
                design.name(),
                variant.name(),
                what,
                true,
                1,
                false,
                path,
                model.mesh(),
                model.elements(),
                model.unknowns(),
                assumed(request.energies),
                stamp,
                version);
    }

    private static SpreadStory place(
            Design design,
            Design.Variant variant,
            Request request,
            OnTub asked,
            String stamp,
            String version,
            Workbench.Listener listener,
            BooleanSupplier stop) {
        Tub tub = variant.tub();
        Case wanted = tub.cases().stream()
                .filter(c -> c.name().equals(asked.loading))
                .findFirst()
                .orElseThrow(() -> new UserMistake("--case " + asked.loading + ": there are "
                        + tub.cases().stream().map(Case::name).collect(Collectors.joining(", "))));
        listener.stage(variant.name() + ": mesh");
        Structure bare = Structure.of(tub, Study.mesh(tub, TrimWork.meshSize(tub, request.on)));
        Structure structure = wanted instanceof Case.Loads ? bare.with(tub.fittings()) : bare;
        Patches patches = new Patches(bare);
        Patch middle = DamageWork.patch(patches, bare, asked.at, asked.size);
        int[] torn = asked.hole > 0
                ? DamageWork.patch(patches, bare, asked.at, asked.hole).elements()
                : new int[0];
        int[] near = IntStream.concat(
                        Arrays.stream(Neighbourhood.within(bare.mesh(), middle.place(), 0.5 * asked.size)),
                        Arrays.stream(middle.elements()))
                .filter(e -> Arrays.binarySearch(torn, e) < 0)
                .sorted()
                .distinct()
                .toArray();
        if (near.length == 0) {
            throw new UserMistake("--size: nothing is left round the hole that could fail; take a larger place");
        }
        listener.stage(variant.name() + ": the rest of the tub condensed onto the place");
        Neighbourhood place = Neighbourhood.of(tub, structure, near, torn, wanted, request.energies, Solvers.best());
        SpreadAnswer path = follow(place.model(), listener, stop);
        List<String> asides = new ArrayList<>(place.notFollowed());
        asides.addAll(assumed(request.energies));
        String what = String.format(
                Locale.ROOT,
                "%d shells within %.0f mm of %s%s, the rest of the tub elastic, in case '%s'",
                near.length,
                500 * asked.size,
                asked.at,
                asked.hole > 0 ? String.format(Locale.ROOT, " round a hole of %.0f mm", 1e3 * asked.hole) : "",
                wanted.name());
        return new SpreadStory(
                design.name(),
                variant.name(),
                what,
                false,
                force(wanted),
                wanted instanceof Case.Torsion,
                path,
                bare.mesh(),
                near,
                place.model().unknowns(),
                asides,
                stamp,
                version);
    }

    /** Size of a case's load: a couple, or its forces added without their directions; of one without forces 1. */
    private static double force(Case wanted) {
        double sum = switch (wanted) {
            case Case.Torsion t -> Math.abs(t.couple());
            case Case.Bending b -> length(b.force());
            case Case.Loads l ->
                l.forces().stream().mapToDouble(f -> length(f.force())).sum();
        };
        return sum > 0 ? sum : 1;
    }

    private static double length(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }

    private static List<String> assumed(Energies energies) {
        List<String> words = new ArrayList<>();
        add(words, "fibres", energies.fibres());
        add(words, "cracks between fibres", energies.matrix());
        add(words, "cores", energies.core());
        add(words, "bonds", energies.bond());
        return words;
    }

    private static void add(List<String> words, String of, OptionalDouble energy) {
        energy.ifPresent(e -> words.add(
                String.format(Locale.ROOT, "assumed where a material gives none: %.3g kJ/m² for %s", 1e-3 * e, of)));
    }
}
