// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.safety.rules.RuleSet;
import tubwright.engine.safety.rules.RuledTub;
import tubwright.engine.shape.TubShape;

/** The rules a design is held against, with what their places are on the tub. */
final class RulesReader {
    private final TubShape shape;
    private final HardpointReader hardpoints;
    private final PointBook points;
    private final List<String> zones;

    private final boolean asDesigned;

    /**
     * @param zones of the tub
     * @param asDesigned false for a variant, which may have other zones: those it lacks count for nothing
     */
    RulesReader(TubShape shape, HardpointReader hardpoints, PointBook points, List<String> zones, boolean asDesigned) {
        this.asDesigned = asDesigned;
        this.shape = shape;
        this.hardpoints = hardpoints;
        this.points = points;
        this.zones = zones;
    }

    List<RuledTub> read(List<Named<RulesText>> texts) {
        Faults faults = new Faults();
        List<RuledTub> all = new ArrayList<>();
        texts.forEach(t -> faults.attempt(() -> one(t)).ifPresent(all::add));
        faults.throwIfAny();
        return all;
    }

    private RuledTub one(Named<RulesText> named) {
        RulesText text = named.value();
        RuleSet set = text.own()
                .map(RuleSetReader::of)
                .orElseGet(() -> RuleSetReader.find(text.set().orElseThrow()));
        TreeSet<String> known = new TreeSet<>();
        set.clauses().forEach(c -> known.addAll(asked(c.demand())));
        Map<String, RuledTub.Place> places = new LinkedHashMap<>();
        for (Named<RulesText.Where> where : text.places()) {
            Names.require(where.name(), known, "place in rule set \"" + set.name() + "\"");
            places.put(where.name().text(), place(where));
        }
        Optional<String> file = text.set().map(Name::text).filter(f -> !RuleSetReader.SHIPPED.contains(f));
        return new RuledTub(named.name().text(), set, file, places, CaseReader.supports(text.hold(), hardpoints));
    }

    private static List<String> asked(RuleSet.Demand demand) {
        return switch (demand) {
            case RuleSet.Bends b -> b.places();
            case RuleSet.BendsAcross b -> b.places();
            case RuleSet.Punched p -> List.of(p.place());
            case RuleSet.Carries c -> List.of(c.place());
            case RuleSet.Pushed p -> List.of(p.place());
            case RuleSet.Stopped s -> List.of();
            case RuleSet.PliesEnclosed p -> List.of();
            case RuleSet.Shown s -> List.of();
        };
    }

    private RuledTub.Place place(Named<RulesText.Where> named) {
        RulesText.Where text = named.value();
        if (asDesigned) {
            text.zones().forEach(z -> Names.require(z, zones, "zone"));
        }
        List<String> at = new ArrayList<>();
        text.points().forEach(p -> at.addAll(points.find(p)));
        boolean tested = text.testedBending().isPresent()
                || text.testedPunch().isPresent()
                || text.testedPoint().isPresent();
        if (tested && text.testedFrom().isEmpty()) {
            throw new DesignError(
                    named.name().place(),
                    "\"" + named.name() + "\": the tested values do not say where they come from",
                    "write \"tested from: ...\" beside them: which tests, when, of which panels");
        }
        return new RuledTub.Place(
                text.zones().stream().map(Name::text).filter(zones::contains).toList(),
                si(text.height()),
                at,
                text.at().map(a -> PointBook.three(a, "at")),
                PadReader.parts(text.on(), shape),
                new RuledTub.Tested(
                        si(text.testedBending()),
                        si(text.testedPunch()),
                        si(text.testedPoint()),
                        text.testedFrom().orElse("")));
    }

    private static OptionalDouble si(Optional<Amount> amount) {
        return amount.map(a -> OptionalDouble.of(a.si())).orElse(OptionalDouble.empty());
    }
}
