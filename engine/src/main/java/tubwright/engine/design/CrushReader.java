// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Limit;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.laminate.LayupAdvice.Severity;
import tubwright.engine.material.Provenance;
import tubwright.engine.material.Trust;
import tubwright.engine.safety.crush.CrushChain;
import tubwright.engine.safety.crush.CrushData;
import tubwright.engine.safety.crush.CrushLibrary;
import tubwright.engine.safety.crush.CrushLimit;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushSection;
import tubwright.engine.safety.crush.CrushStructure;
import tubwright.engine.safety.crush.Impact;
import tubwright.engine.shape.TubShape;
import tubwright.engine.strength.Check;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;

/** Crush structures of a design, and the cases their force makes for the tub behind them. */
final class CrushReader {
    private static final double EVERYWHERE = 1e9;

    private final TubShape shape;
    private final HardpointReader hardpoints;
    private final List<Named<CrushDataText>> own;
    private final List<Warning> warnings;
    private final List<CrushStructure> structures = new ArrayList<>();
    private final List<Case> cases = new ArrayList<>();

    private CrushReader(
            TubShape shape, HardpointReader hardpoints, List<Named<CrushDataText>> own, List<Warning> warnings) {
        this.shape = shape;
        this.hardpoints = hardpoints;
        this.own = own;
        this.warnings = warnings;
    }

    /** All of a document. */
    static CrushReader of(DesignText text, TubShape shape, HardpointReader hardpoints, List<Warning> warnings) {
        CrushReader reader = new CrushReader(shape, hardpoints, text.crushData(), warnings);
        Faults faults = new Faults();
        List<String> taken = Names.texts(text.cases());
        for (Named<CrushText> each : text.crush()) {
            faults.attempt(() -> {
                reader.one(each, taken);
                return true;
            });
        }
        for (Named<CrushDataText> each : text.crushData()) {
            faults.attempt(() -> data(each, true));
        }
        faults.throwIfAny();
        return reader;
    }

    List<CrushStructure> structures() {
        return structures;
    }

    List<Case> cases() {
        return cases;
    }

    private void one(Named<CrushText> named, List<String> taken) {
        CrushText text = named.value();
        String name = named.name().text();
        List<Check.NotChecked> missing = new ArrayList<>();
        List<CrushSection> sections = new ArrayList<>();
        text.sections().forEach(s -> section(s, missing).ifPresent(sections::add));
        double parts =
                text.parts().stream().mapToDouble(p -> p.value().mass().si()).sum();
        if (parts >= text.mass().si()) {
            throw new DesignError(
                    text.mass().place(),
                    "\"" + name + "\": its parts weigh as much as the whole, or more",
                    "\"mass\" is that of the car with all its parts");
        }
        if (text.bears().isPresent() && text.bearsFrom().isEmpty()) {
            throw new DesignError(
                    text.bears().get().place(),
                    "\"" + name + "\": it is not said where the force that is borne comes from",
                    "write \"bears from: ...\" beside it: which test");
        }
        if (text.margin().si() < 1) {
            throw new DesignError(
                    text.margin().place(),
                    "\"" + name + "\": a margin of " + text.margin() + " would ask less than the crush force",
                    "1 or more");
        }
        if (text.firstPeak().isPresent() && text.firstPeak().get().si() < 1) {
            throw new DesignError(
                    text.firstPeak().get().place(),
                    "\"" + name + "\": a first peak of " + text.firstPeak().get() + " lies below the steady force",
                    "1 or more");
        }
        CrushStructure structure = new CrushStructure(
                name,
                text.hit(),
                new Impact(text.mass().si(), text.speed().si()),
                missing.isEmpty() ? sections : List.of(),
                missing,
                new CrushRun.Trigger(
                        text.firstPeak().map(a -> OptionalDouble.of(a.si())).orElse(OptionalDouble.empty()),
                        text.trigger()),
                limits(text.limits()),
                text.parts().stream()
                        .map(p -> new CrushChain.Body(
                                p.name().text(),
                                p.value().mass().si(),
                                p.value().stiffness().si(),
                                p.value().strength().si()))
                        .toList(),
                text.bears().map(a -> OptionalDouble.of(a.si())).orElse(OptionalDouble.empty()),
                text.bearsFrom().orElse(""),
                text.margin().si(),
                onto(text));
        structures.add(structure);
        pushes(named, structure, taken);
    }

    private Optional<CrushSection> section(Named<CrushSectionText> named, List<Check.NotChecked> missing) {
        CrushSectionText text = named.value();
        Found found = find(text.crushesAs());
        if (found.data.isEmpty()) {
            missing.add(new Check.NotChecked(
                    named.name().text(),
                    List.of("crush stress or specific energy of \"" + text.crushesAs() + "\""
                            + (found.bare
                                    ? " (its bare strength is the peak before it crushes, not what it goes on at)"
                                    : ""))));
            return Optional.empty();
        }
        CrushData data = found.data.get();
        boolean stress = data.measure() == CrushData.Measure.STRESS;
        Optional<Amounts> area = stress ? text.grossArea() : text.wallArea();
        if (area.isEmpty()) {
            throw new DesignError(
                    text.place(),
                    "\"" + named.name() + "\": \"" + text.crushesAs() + "\" has "
                            + (stress ? "a crush stress" : "a specific energy"),
                    stress
                            ? "give the \"gross area\" it acts on, not the area of the walls"
                            : "give the \"wall area\" of its section, not the area over all");
        }
        double[] two = area.get().si();
        if (two.length > 2) {
            throw new DesignError(
                    area.get().place(), named.name() + ": more than two areas", "one, or two: front and rear");
        }
        if (!stress && Double.isNaN(found.density)) {
            missing.add(new Check.NotChecked(
                    named.name().text(),
                    List.of("density of \"" + text.crushesAs() + "\", beside its specific energy")));
            return Optional.empty();
        }
        return Optional.of(new CrushSection(
                named.name().text(),
                text.length().si(),
                data,
                two[0],
                two[two.length - 1],
                stress ? 0 : found.density));
    }

    /**
     * Data of a name.
     *
     * @param data empty where it says neither crush stress nor specific energy
     * @param density of the wall, kg/m³; not a number where none is given
     * @param bare whether it has a bare strength instead
     */
    private record Found(Optional<CrushData> data, double density, boolean bare) {}

    private Found find(Name name) {
        for (Named<CrushDataText> each : own) {
            if (each.name().text().equals(name.text())) {
                return data(each, false);
            }
        }
        Map<String, CrushData> shipped = new LinkedHashMap<>();
        CrushLibrary.all().forEach(d -> shipped.put(d.name(), d));
        CrushLibrary.cores().forEach(c -> shipped.put(c.crush().name(), c.crush()));
        if (!shipped.containsKey(name.text())) {
            List<String> known = new ArrayList<>(Names.texts(own));
            known.addAll(shipped.keySet());
            throw Names.unknown(name, known, "crush data");
        }
        return new Found(Optional.of(shipped.get(name.text())), Double.NaN, false);
    }

    private static Found data(Named<CrushDataText> named, boolean onlyCheck) {
        CrushDataText text = named.value();
        for (Optional<Amount> share : List.of(text.usableShare())) {
            if (share.isPresent() && share.get().si() > 1) {
                throw new DesignError(
                        share.get().place(),
                        "\"" + named.name() + "\": a usable share of " + share.get() + " is more than all of it",
                        "a share of its length, at most 1");
            }
        }
        if (text.atSpeed().isPresent() && text.atSpeedFrom().isEmpty()) {
            throw new DesignError(
                    text.atSpeed().get().place(),
                    "\"" + named.name() + "\": it is not said where the factor at speed comes from",
                    "write \"at speed from: ...\" beside it: a dynamic test, a publication");
        }
        boolean stress = text.crushStress().isPresent();
        Optional<Amount> value = stress ? text.crushStress() : text.specificEnergy();
        double density = text.density().map(Amount::si).orElse(Double.NaN);
        if (value.isEmpty() || onlyCheck) {
            return new Found(Optional.empty(), density, text.bareStrength().isPresent());
        }
        if (stress
                && text.bareStrength().isPresent()
                && text.bareStrength().get().si() <= value.get().si()) {
            throw new DesignError(
                    text.bareStrength().get().place(),
                    "\"" + named.name() + "\": its bare strength is no higher than its crush stress",
                    "a core peaks at its bare strength and goes on crushing at about half of it; were they exchanged?");
        }
        CrushData data = new CrushData(
                named.name().text(),
                stress ? CrushData.Measure.STRESS : CrushData.Measure.SPECIFIC_ENERGY,
                value.get().si(),
                text.usableShare().map(Amount::si).orElse(1.0),
                OptionalDouble.empty(),
                new Provenance(text.source(), Trust.STATED));
        if (text.atSpeed().isPresent()) {
            data = data.atRate(
                    text.atSpeed().get().si(), new Provenance(text.atSpeedFrom().orElseThrow(), Trust.STATED));
        }
        return new Found(Optional.of(data), density, false);
    }

    static List<CrushLimit> limits(Optional<CrushLimitsText> text) {
        List<CrushLimit> limits = new ArrayList<>();
        text.ifPresent(t -> {
            t.mean().ifPresent(l -> limits.add(new CrushLimit.Mean(above(l))));
            t.peak().ifPresent(l -> limits.add(new CrushLimit.Peak(above(l))));
            t.force().ifPresent(l -> limits.add(new CrushLimit.Force(above(l))));
            t.stages().forEach(s -> limits.add(stage(s)));
            t.spikes()
                    .forEach(s -> limits.add(new CrushLimit.TimeAbove(s.above().si(), above(s.lasting()))));
        });
        return limits;
    }

    private static CrushLimit stage(CrushStageText text) {
        double limit = above(text.peak().or(text::mean).orElseThrow());
        if (text.first().isPresent()) {
            double stroke = text.first().get().si();
            return text.peak().isPresent()
                    ? new CrushLimit.PeakWithinStroke(stroke, limit)
                    : new CrushLimit.MeanWithinStroke(stroke, limit);
        }
        if (text.mean().isPresent()) {
            throw new DesignError(
                    text.mean().get().place(), "a mean goes with \"first\", a stroke", "over an energy give \"peak\"");
        }
        return new CrushLimit.PeakWithinEnergy(text.firstEnergy().orElseThrow().si(), limit);
    }

    private static double above(Limit limit) {
        if (limit.atLeast()) {
            throw new DesignError(
                    limit.place(),
                    "\"" + limit + "\" binds the wrong way",
                    "an impact is bounded above: \"at most ...\"");
        }
        return limit.si();
    }

    private String onto(CrushText text) {
        return String.join(
                ", ",
                text.onto().isEmpty()
                        ? text.over().stream().map(Name::text).toList()
                        : text.onto().stream().map(Name::text).toList());
    }

    /** The case of the highest crush force times the margin on what carries it, the tub a free body. */
    private void pushes(Named<CrushText> named, CrushStructure structure, List<String> taken) {
        CrushText text = named.value();
        List<String> mounts = new ArrayList<>();
        for (Name each : text.onto()) {
            hardpoints.find(each).stream().map(Hardpoint::name).forEach(mounts::add);
        }
        List<String> parts = PadReader.parts(text.over(), shape);
        if (mounts.isEmpty() && parts.isEmpty()) {
            return;
        }
        String name = structure.name() + " crush";
        if (taken.contains(name)) {
            throw new DesignError(
                    named.name().place(),
                    "a case is called \"" + name + "\" already",
                    "that name belongs to the crush force of \"" + structure.name() + "\"; rename the case");
        }
        if (structure.designForce().isEmpty()) {
            warnings.add(new Warning(
                    named.name().place(),
                    Severity.NOTE,
                    "the force of crush structure \"" + structure.name()
                            + "\" is not known: the strength run has no case of it",
                    structure.missing().isEmpty()
                            ? "needs \"first peak\""
                            : structure.missing().getFirst().toString()));
            return;
        }
        double[] force = structure.hit().direction();
        double whole = structure.designForce().getAsDouble();
        Arrays.setAll(force, d -> force[d] * whole);
        String source = String.format(
                java.util.Locale.ROOT,
                "highest crush force of \"%s\", %.1f kN, times %.2f; tub and all it carries as a free body",
                structure.name(),
                1e-3 * whole / structure.margin(),
                structure.margin());
        List<Case.Force> at = mounts.stream()
                .map(m -> new Case.Force(
                        m, Arrays.stream(force).map(f -> f / mounts.size()).toArray(), new double[3]))
                .toList();
        Case.Loads loads = new Case.Loads(name, List.of(), at, new double[3], source);
        if (!parts.isEmpty()) {
            double[] low = {text.x().map(s -> s.from()).orElse(-EVERYWHERE), -EVERYWHERE, -EVERYWHERE};
            double[] high = {text.x().map(s -> s.to()).orElse(EVERYWHERE), EVERYWHERE, EVERYWHERE};
            loads = loads.with(List.of(new Case.Spread(structure.name(), parts, low, high, force)));
        }
        cases.add(loads);
    }
}
