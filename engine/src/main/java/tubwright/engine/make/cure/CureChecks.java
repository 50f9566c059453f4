// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import tubwright.engine.laminate.Layer;
import tubwright.engine.make.cure.CureCheck.Subject;
import tubwright.engine.material.Core;
import tubwright.engine.material.Property;
import tubwright.engine.material.PropertyValue;

/** Looks at one cure that has been computed. */
final class CureChecks {
    private static final double ATMOSPHERE = 101_325;

    /** Wet glass transition this far above service (MIL-HDBK-17, from memory: 50 °F). */
    private static final double MARGIN = 28;

    private final CureShop shop;
    private final Cycle cycle;
    private final CureHistory history;
    private final Set<Resin> resins;
    private final List<String> standIns;

    CureChecks(CureShop shop, Cycle cycle, CureHistory history, Set<Resin> resins, List<String> standIns) {
        this.shop = shop;
        this.cycle = cycle;
        this.history = history;
        this.resins = resins;
        this.standIns = standIns;
    }

    List<CureCheck> all(List<Layer> plies, boolean overCore) {
        List<CureCheck> checks = new ArrayList<>();
        checks.add(peak());
        checks.add(degree());
        checks.add(glass());
        voids(overCore).ifPresent(checks::add);
        plies.stream()
                .filter(l -> l.material() instanceof Core)
                .findFirst()
                .ifPresent(l -> checks.add(core((Core) l.material())));
        return checks;
    }

    private CureCheck peak() {
        double peak = history.peak().temperature();
        OptionalDouble limit = least(resins.stream().map(Resin::hottest).toList());
        String words = standIns.isEmpty() ? "" : "errs on the high side: " + String.join(", ", standIns);
        return limit.isPresent()
                ? CureCheck.notAbove(Subject.PEAK, peak, limit.getAsDouble(), words)
                : CureCheck.unknown(
                        Subject.PEAK, OptionalDouble.of(peak), "the highest temperature of the resin (\"hottest\")");
    }

    private CureCheck degree() {
        double degree = history.leastDegree(history.last());
        if (!standIns.isEmpty()) {
            // Another resin's kinetics prove no degree; that nothing gels they are good enough to say.
            OptionalDouble gel = least(resins.stream().map(Resin::gel).toList());
            return gel.isPresent() && degree < gel.getAsDouble()
                    ? CureCheck.notBelow(
                            Subject.DEGREE,
                            degree,
                            gel.getAsDouble(),
                            "it does not even gel: this cycle never cures it; hold longer or hotter, or ask the supplier for a"
                                    + " cycle")
                    : CureCheck.unknown(Subject.DEGREE, OptionalDouble.of(degree), kinetics());
        }
        Optional<Double> wanted = resins.stream()
                .flatMap(r -> r.least().stream())
                .map(PropertyValue::si)
                .max(Double::compare);
        return wanted.map(limit -> CureCheck.notBelow(
                        Subject.DEGREE,
                        degree,
                        limit,
                        degree < limit ? "hold longer or hotter, or ask the supplier for a cycle" : ""))
                .orElseGet(() -> CureCheck.unknown(
                        Subject.DEGREE, OptionalDouble.of(degree), "what degree is asked for (\"least degree\")"));
    }

    private String kinetics() {
        return "the cure kinetics of " + String.join(", ", standIns);
    }

    private CureCheck glass() {
        double degree = history.leastDegree(history.last());
        if (resins.stream().anyMatch(r -> r.glassTransition().isEmpty())) {
            return CureCheck.unknown(
                    Subject.GLASS,
                    OptionalDouble.empty(),
                    "glass transitions against degree of cure, measured (ASTM D7028)");
        }
        OptionalDouble reached = resins.stream()
                .flatMap(r -> r.glassTransition().stream())
                .mapToDouble(g -> g.at(degree))
                .min();
        if (!standIns.isEmpty()) {
            return CureCheck.unknown(Subject.GLASS, reached, kinetics());
        }
        if (shop.service().isEmpty()) {
            return CureCheck.unknown(Subject.GLASS, reached, "the highest temperature of use (--service)");
        }
        return CureCheck.notBelow(
                Subject.GLASS,
                reached.orElse(0),
                shop.service().getAsDouble() + MARGIN,
                "dry; 28 K above use is asked");
    }

    /** The dampest store at which the pressure in the resin keeps water from boiling out while it flows. */
    private Optional<CureCheck> voids(boolean overCore) {
        OptionalDouble gel = least(resins.stream().map(Resin::gel).toList());
        if (gel.isEmpty()) {
            return Optional.of(CureCheck.unknown(
                    Subject.VOIDS, OptionalDouble.empty(), "the degree of cure at gelling (\"gel\")"));
        }
        double dampest = Double.POSITIVE_INFINITY;
        for (CureHistory.Moment moment : history.moments()) {
            Cycle.Step step = cycle.steps().get(moment.step());
            double pressure = overCore ? step.bag() : step.pressure() + ATMOSPHERE;
            for (int i = 0; i < history.heights().length; i++) {
                if (history.cures(i) && moment.degree()[i] < gel.getAsDouble()) {
                    dampest = Math.min(dampest, pressure / WaterVoids.leastPressure(1, moment.temperature()[i]));
                }
            }
        }
        if (dampest == Double.POSITIVE_INFINITY) {
            return Optional.empty();
        }
        String words = overCore
                ? "in a cell the resin feels only the bag's pressure; store drier or vent later"
                : "all of the autoclave's pressure counted, as if the fibres carried none";
        return Optional.of(CureCheck.notBelow(Subject.VOIDS, Math.min(1, dampest), shop.humidity(), words));
    }

    private CureCheck core(Core core) {
        double pressing = 0;
        for (Cycle.Step step : cycle.steps()) {
            pressing = Math.max(pressing, CorePressure.onVentedCore(step.pressure(), step.bag()));
        }
        OptionalDouble strength = core.properties().si(Property.ZC);
        return strength.isPresent()
                ? CureCheck.notAbove(
                        Subject.CORE,
                        pressing,
                        CorePressure.SHARE_OF_STRENGTH * strength.getAsDouble(),
                        "0.3 of the strength at room temperature; cells vented to the bag")
                : CureCheck.unknown(
                        Subject.CORE,
                        OptionalDouble.of(pressing),
                        "the compressive strength ZC of '" + core.name() + "'");
    }

    private static OptionalDouble least(List<Optional<PropertyValue>> values) {
        return values.stream()
                .flatMap(Optional::stream)
                .mapToDouble(PropertyValue::si)
                .min();
    }
}
