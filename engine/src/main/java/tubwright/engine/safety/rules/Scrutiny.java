// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Ply;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.crush.CrushVerdicts;
import tubwright.engine.safety.rules.Finding.Verdict;
import tubwright.engine.structure.Tub;

/** A tub held against a rule set, clause by clause. What the design does not say, or nothing here can compute, is not checked. */
public final class Scrutiny {
    private static final String TEST = "the clause asks for a test";

    private final Tub tub;
    private final List<CrushStructure> crush;
    private final RuledTub rules;
    private final Pushes pushes;

    private Scrutiny(Tub tub, List<CrushStructure> crush, RuledTub rules, Pushes pushes) {
        this.tub = tub;
        this.crush = crush;
        this.rules = rules;
        this.pushes = pushes;
    }

    /**
     * Holds a tub against its rules.
     *
     * @param pushes what its pads and points come to, solved before
     */
    public static List<Finding> of(Tub tub, List<CrushStructure> crush, RuledTub rules, Pushes pushes) {
        Scrutiny scrutiny = new Scrutiny(tub, crush, rules, pushes);
        return rules.set().clauses().stream().map(scrutiny::one).toList();
    }

    /** Test panels of the layups whose bending the rules count, foretold; one a layup. */
    public static List<PanelTest> panels(Tub tub, RuledTub rules) {
        Map<String, PanelTest> panels = new LinkedHashMap<>();
        rules.places()
                .forEach((name, place) -> place.zones()
                        .forEach(zone -> PanelTest.of(zone, tub.laminates().get(zone), PanelTest.SPAN, PanelTest.WIDTH)
                                .ifPresent(p -> panels.putIfAbsent(zone, p))));
        return panels.values().stream()
                .sorted(java.util.Comparator.comparing(PanelTest::laminate))
                .toList();
    }

    private Finding one(RuleSet.Clause clause) {
        return switch (clause.demand()) {
            case RuleSet.Bends d -> bends(clause, d);
            case RuleSet.BendsAcross d -> across(clause, d);
            case RuleSet.Punched d -> punched(clause, d);
            case RuleSet.Carries d -> carries(clause, d);
            case RuleSet.Pushed d -> pushed(clause, d);
            case RuleSet.Stopped d -> stopped(clause, d);
            case RuleSet.PliesEnclosed d -> enclosed(clause);
            case RuleSet.Shown d -> missing(clause, d.needs());
        };
    }

    private Finding bends(RuleSet.Clause clause, RuleSet.Bends demand) {
        double sum = 0;
        double tested = 0;
        boolean allTested = true;
        List<String> sources = new ArrayList<>();
        for (String name : demand.places()) {
            Optional<RuledTub.Place> place = rules.place(name);
            if (place.isEmpty()
                    || place.get().zones().isEmpty()
                    || place.get().height().isEmpty()) {
                return missing(clause, "\"zones\" and \"height\" of place \"" + name + "\"");
            }
            double height = place.get().height().getAsDouble();
            sum += place.get().zones().stream()
                            .mapToDouble(z -> PanelBending.along(tub.laminates().get(z)))
                            .min()
                            .orElse(0)
                    * height;
            OptionalDouble own = place.get().tested().bending();
            allTested &= own.isPresent();
            tested += own.orElse(0);
            sources.add(place.get().tested().source());
        }
        if (allTested) {
            return judged(
                    clause,
                    tested >= demand.bending(),
                    ei(tested, demand.bending()),
                    tested / demand.bending(),
                    "own test: " + String.join(", ", sources));
        }
        double low = sum / PanelBending.HIGH;
        String found = ei(sum, demand.bending());
        double reserve = sum / demand.bending();
        if (sum < demand.bending() && !demand.flat()) {
            return new Finding(
                    clause,
                    Verdict.NOT_CHECKED,
                    found + " as a flat panel",
                    reserve,
                    "computed from the laminates",
                    List.of("EI of the true section, which counts here and is larger"));
        }
        if (sum < demand.bending()) {
            return new Finding(clause, Verdict.NOT_MET, found, reserve, "computed from the laminates", List.of());
        }
        if (low < demand.bending()) {
            return new Finding(
                    clause,
                    Verdict.NOT_CHECKED,
                    found,
                    reserve,
                    "computed from the laminates",
                    List.of(
                            "panel tests: the clause lies within the scatter of such panels (one in ten measures less than "
                                    + String.format(Locale.ROOT, "%.0f N·m²)", low)));
        }
        return new Finding(clause, Verdict.MET, found, reserve, computed(clause), List.of());
    }

    private static String ei(double found, double asked) {
        return String.format(Locale.ROOT, "%.0f N·m² for %.0f", found, asked);
    }

    private Finding across(RuleSet.Clause clause, RuleSet.BendsAcross demand) {
        double least = Double.POSITIVE_INFINITY;
        String where = "";
        for (String name : demand.places()) {
            for (String zone : rules.place(name).map(RuledTub.Place::zones).orElse(List.of())) {
                Laminate laminate = tub.laminates().get(zone);
                double share = PanelBending.across(laminate) / PanelBending.along(laminate);
                if (share < least) {
                    least = share;
                    where = zone;
                }
            }
        }
        if (where.isEmpty()) {
            return missing(clause, "\"zones\" of the places " + String.join(", ", demand.places()));
        }
        return judged(
                clause,
                least >= demand.share(),
                String.format(Locale.ROOT, "%.0f %% of the stiffness along, in %s", 100 * least, where),
                least / demand.share(),
                computed(clause));
    }

    private Finding punched(RuleSet.Clause clause, RuleSet.Punched demand) {
        Optional<RuledTub.Place> place = rules.place(demand.place());
        OptionalDouble tested = place.isPresent() ? place.get().tested().punched() : OptionalDouble.empty();
        String asked = String.format(Locale.ROOT, "%.1f kN", 1e-3 * demand.force());
        if (tested.isEmpty()) {
            return missing(
                    clause,
                    String.format(
                            Locale.ROOT,
                            "a punch test of the laminate at \"%s\", %.0f mm, for %s: strength through the thickness is no"
                                    + " value of the materials",
                            demand.place(),
                            1e3 * demand.diameter(),
                            asked));
        }
        double force = tested.getAsDouble();
        return judged(
                clause,
                force >= demand.force(),
                String.format(Locale.ROOT, "%.1f kN for %s", 1e-3 * force, asked),
                force / demand.force(),
                "own test: " + place.get().tested().source());
    }

    private Finding carries(RuleSet.Clause clause, RuleSet.Carries demand) {
        Optional<RuledTub.Place> place = rules.place(demand.place());
        if (place.isEmpty() || place.get().points().isEmpty()) {
            return missing(clause, "\"points\" of place \"" + demand.place() + "\"");
        }
        OptionalDouble tested = place.get().tested().carried();
        if (tested.isPresent()) {
            return judged(
                    clause,
                    tested.getAsDouble() >= demand.force(),
                    kn(tested.getAsDouble()) + " for " + kn(demand.force()),
                    tested.getAsDouble() / demand.force(),
                    "own test: " + place.get().tested().source());
        }
        Pushes.Answer answer = pushes.of(clause.number());
        if (!answer.notChecked().isEmpty()) {
            return new Finding(clause, Verdict.NOT_CHECKED, "", Double.NaN, "", answer.notChecked());
        }
        return judged(
                clause,
                answer.reserve() >= 1,
                String.format(
                        Locale.ROOT,
                        "%s carries %.1f kN for %s (%s)",
                        answer.where(),
                        1e-3 * answer.reserve() * demand.force(),
                        kn(demand.force()),
                        answer.mode()),
                answer.reserve(),
                computed(clause) + "; along the axes of the car, insert and its skin; bracket and bolt not looked at");
    }

    private Finding pushed(RuleSet.Clause clause, RuleSet.Pushed demand) {
        Optional<String> lacks = Pushes.lacks(rules, demand);
        if (lacks.isPresent()) {
            return missing(clause, lacks.get());
        }
        Pushes.Answer answer = pushes.of(clause.number());
        boolean bounded = Double.isFinite(demand.moves());
        boolean moves = bounded && !(answer.movement() <= demand.moves());
        String found = String.format(
                Locale.ROOT,
                "gives way at %.2f times the load (%s, %s)%s",
                answer.reserve(),
                answer.where(),
                answer.mode(),
                Double.isNaN(answer.movement())
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "; moves %.1f mm%s",
                                1e3 * answer.movement(),
                                bounded ? String.format(Locale.ROOT, " of %.0f", 1e3 * demand.moves()) : ""));
        double reserve = bounded ? Math.min(answer.reserve(), demand.moves() / answer.movement()) : answer.reserve();
        String how = computed(clause) + "; linear"
                + (Double.isNaN(demand.hold())
                        ? ""
                        : String.format(Locale.ROOT, "; creep in %.0f s of holding not looked at", demand.hold()));
        boolean broken = answer.reserve() < 1 || moves;
        List<String> needs = broken ? List.of() : answer.notChecked();
        return new Finding(
                clause,
                broken ? Verdict.NOT_MET : needs.isEmpty() ? Verdict.MET : Verdict.NOT_CHECKED,
                found,
                reserve,
                how,
                needs);
    }

    private Finding stopped(RuleSet.Clause clause, RuleSet.Stopped demand) {
        Stop stop = demand.stop();
        String side = stop.hit().name().toLowerCase(Locale.ROOT);
        Optional<CrushStructure> found =
                crush.stream().filter(c -> c.hit() == stop.hit()).findFirst();
        if (found.isEmpty()) {
            return missing(clause, "a structure under \"crush\" that is hit from the " + side);
        }
        CrushStructure as = found.get();
        CrushStructure asked = new CrushStructure(
                as.name(),
                as.hit(),
                stop.impact(),
                as.sections(),
                as.missing(),
                as.trigger(),
                stop.limits(),
                List.of(),
                OptionalDouble.empty(),
                "",
                as.margin(),
                as.onto());
        List<CrushVerdicts.Line> lines = CrushVerdicts.of(asked);
        lines = lines.subList(0, lines.size() - 1); // what bulkhead and mounts bear is no part of the clause
        List<String> needs =
                lines.stream().flatMap(l -> l.needs().stream()).distinct().toList();
        String words = asked.whole()
                .map(a -> String.format(
                        Locale.ROOT,
                        "%s: %s, mean %.1f g, peak %.1f g",
                        as.name(),
                        a.speedLeft() > 0
                                ? String.format(Locale.ROOT, "used up at %.1f m/s", a.speedLeft())
                                : String.format(Locale.ROOT, "stops in %.0f mm", 1e3 * a.stroke()),
                        a.meanForce() / a.impact().mass() / CrushRun.GRAVITY,
                        a.peakForce() / a.impact().mass() / CrushRun.GRAVITY))
                .orElse("");
        if (!needs.isEmpty()) {
            return new Finding(clause, Verdict.NOT_CHECKED, words, Double.NaN, "", needs);
        }
        boolean met = lines.stream().allMatch(l -> l.verdict() == CrushVerdicts.Verdict.MET);
        double reserve = lines.stream()
                .mapToDouble(CrushVerdicts.Line::reserve)
                .filter(Double::isFinite)
                .min()
                .orElse(Double.NaN);
        return judged(clause, met, words, reserve, computed(clause) + "; one dimension");
    }

    private Finding enclosed(RuleSet.Clause clause) {
        List<String> bare = tub.laminates().entrySet().stream()
                .filter(e ->
                        tub.layout().zones().stream().anyMatch(z -> z.name().equals(e.getKey())))
                .filter(e -> !enclosed(e.getValue()))
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
        return judged(
                clause,
                bare.isEmpty(),
                bare.isEmpty() ? "every zone" : bare.stream().collect(Collectors.joining(", ", "not in ", "")),
                Double.NaN,
                "read off the stacks; patches and tapes of joints not looked at");
    }

    private static boolean enclosed(Laminate laminate) {
        List<Layer> layers = laminate.layers();
        for (int i = 0; i < layers.size(); i++) {
            if (unidirectional(layers.get(i))) {
                boolean outside = i == 0 || i == layers.size() - 1;
                if (outside
                        || layers.get(i - 1).role() != LayerRole.PLY
                        || layers.get(i + 1).role() != LayerRole.PLY) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean unidirectional(Layer layer) {
        return layer.material() instanceof Ply ply && ply.form() == Ply.Form.UNIDIRECTIONAL;
    }

    private static Finding judged(RuleSet.Clause clause, boolean met, String found, double reserve, String how) {
        return new Finding(clause, met ? Verdict.MET : Verdict.NOT_MET, found, reserve, how, List.of());
    }

    private static Finding missing(RuleSet.Clause clause, String needs) {
        return new Finding(clause, Verdict.NOT_CHECKED, "", Double.NaN, "", List.of(needs));
    }

    private static String computed(RuleSet.Clause clause) {
        return clause.byTest() ? "computed; " + TEST : "computed";
    }

    private static String kn(double force) {
        return String.format(Locale.ROOT, "%.1f kN", 1e-3 * force);
    }
}
