// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import static tubwright.engine.quantity.Dimension.ACTIVATION_ENERGY;
import static tubwright.engine.quantity.Dimension.DENSITY;
import static tubwright.engine.quantity.Dimension.DIMENSIONLESS;
import static tubwright.engine.quantity.Dimension.EXPANSION;
import static tubwright.engine.quantity.Dimension.HEAT_OF_REACTION;
import static tubwright.engine.quantity.Dimension.LENGTH;
import static tubwright.engine.quantity.Dimension.PRESSURE;
import static tubwright.engine.quantity.Dimension.RATE_CONSTANT;
import static tubwright.engine.quantity.Dimension.SPECIFIC_HEAT;
import static tubwright.engine.quantity.Dimension.TEMPERATURE;
import static tubwright.engine.quantity.Dimension.TEMPERATURE_RATE;
import static tubwright.engine.quantity.Dimension.THERMAL_CONDUCTIVITY;
import static tubwright.engine.quantity.Dimension.TIME;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tubwright.engine.make.data.SourcedText;
import tubwright.engine.make.data.SourcedText.Entry;
import tubwright.engine.material.PropertyValue;
import tubwright.engine.quantity.Dimension;

/** Turns a file of cure data into records. */
final class CureFile {
    private final CureLibrary library;

    CureFile(SourcedText text) {
        Entry root = text.root();
        library = new CureLibrary(
                each(root, "resins", this::resin),
                each(root, "fibres", this::heat),
                each(root, "plies", this::ply),
                each(root, "cores", this::heat),
                each(root, "films", this::heat),
                each(root, "tools", this::tool),
                each(root, "laminates", this::shrinkage),
                each(root, "cycles", this::cycle));
        root.nothingElse();
    }

    CureLibrary library() {
        return library;
    }

    private static <T> Map<String, T> each(Entry root, String family, Function<Entry, T> read) {
        Map<String, T> result = new LinkedHashMap<>();
        root.entries(family).forEach((name, entry) -> {
            try {
                result.put(name, read.apply(entry));
            } catch (CureException e) {
                throw entry.fault(name + ": " + e.getMessage());
            }
            entry.nothingElse();
        });
        return result;
    }

    private Resin resin(Entry entry) {
        Entry values = entry.inside("values");
        String kind = entry.text("kind");
        CureLaw law = switch (kind) {
            case "two-stage" ->
                new TwoStageCure(
                        of(entry, values, "A1", RATE_CONSTANT),
                        of(entry, values, "E1", ACTIVATION_ENERGY),
                        of(entry, values, "A2", RATE_CONSTANT),
                        of(entry, values, "E2", ACTIVATION_ENERGY),
                        of(entry, values, "A3", RATE_CONSTANT),
                        of(entry, values, "E3", ACTIVATION_ENERGY),
                        of(entry, values, "limit", DIMENSIONLESS),
                        of(entry, values, "change", DIMENSIONLESS));
            case "diffusion" ->
                new DiffusionCure(
                        of(entry, values, "A", RATE_CONSTANT),
                        of(entry, values, "E", ACTIVATION_ENERGY),
                        of(entry, values, "m", DIMENSIONLESS),
                        of(entry, values, "n", DIMENSIONLESS),
                        of(entry, values, "C", DIMENSIONLESS),
                        of(entry, values, "stop", DIMENSIONLESS),
                        of(entry, values, "stop by temperature", EXPANSION));
            default -> throw entry.fault("a resin of kind '" + kind + "' is not known; there are two-stage, diffusion");
        };
        Optional<GlassTransition> glass = entry.optionalValue(values, "Tg fresh", TEMPERATURE)
                .map(fresh -> {
                    PropertyValue full = entry.value(values, "Tg full", TEMPERATURE);
                    return new GlassTransition(
                            fresh.si(), full.si(), of(entry, values, "Tg lambda", DIMENSIONLESS), full.provenance());
                });
        Resin resin = new Resin(
                entry.name(),
                entry.text("description"),
                law,
                entry.provenance(),
                entry.value(values, "heat of reaction", HEAT_OF_REACTION),
                entry.value(values, "density", DENSITY),
                entry.value(values, "specific heat", SPECIFIC_HEAT),
                entry.value(values, "conductivity", THERMAL_CONDUCTIVITY),
                entry.value(values, "start", DIMENSIONLESS),
                entry.optionalValue(values, "gel", DIMENSIONLESS),
                entry.optionalValue(values, "least degree", DIMENSIONLESS),
                entry.optionalValue(values, "hottest", TEMPERATURE),
                glass);
        for (PropertyValue degree : List.of(resin.start(), resin.gel().orElse(resin.start()))) {
            if (!(degree.si() >= 0 && degree.si() < 1)) {
                throw entry.fault("a degree of cure lies between 0 and 1, not at " + degree.si());
            }
        }
        values.nothingElse();
        return resin;
    }

    private HeatProperties heat(Entry entry) {
        entry.text("description");
        Entry values = entry.inside("values");
        HeatProperties result = heat(entry, values);
        values.nothingElse();
        return result;
    }

    private static HeatProperties heat(Entry entry, Entry values) {
        return new HeatProperties(
                of(entry, values, "density", DENSITY),
                of(entry, values, "specific heat", SPECIFIC_HEAT),
                of(entry, values, "conductivity", THERMAL_CONDUCTIVITY));
    }

    private PlyCure ply(Entry entry) {
        Optional<PropertyValue> share = Optional.empty();
        if (entry.has("values")) {
            Entry values = entry.inside("values");
            share = Optional.of(entry.value(values, "fibre volume fraction", DIMENSIONLESS));
            values.nothingElse();
        }
        return new PlyCure(
                entry.name(),
                entry.text("resin"),
                entry.optionalText("stands in for"),
                entry.text("fibre"),
                share,
                entry.provenance());
    }

    private Tool tool(Entry entry) {
        Entry values = entry.inside("values");
        Tool tool = new Tool(
                entry.name(),
                entry.text("description"),
                heat(entry, values),
                entry.provenance(),
                entry.value(values, "expansion", EXPANSION),
                entry.value(values, "thickness", LENGTH));
        values.nothingElse();
        return tool;
    }

    private Shrinkage shrinkage(Entry entry) {
        entry.text("description");
        Entry values = entry.inside("values");
        Shrinkage result = new Shrinkage(
                entry.name(),
                entry.value(values, "along", EXPANSION),
                entry.value(values, "through", EXPANSION),
                entry.value(values, "along shrinkage", DIMENSIONLESS),
                entry.value(values, "through shrinkage", DIMENSIONLESS));
        values.nothingElse();
        return result;
    }

    private Cycle cycle(Entry entry) {
        List<Cycle.Step> steps = entry.rows("steps").stream()
                .map(row -> {
                    Cycle.Step step = new Cycle.Step(
                            row.si("to", TEMPERATURE),
                            row.si("rate", TEMPERATURE_RATE),
                            row.si("hold", TIME),
                            holdFrom(row),
                            row.si("pressure", PRESSURE),
                            row.si("bag", PRESSURE));
                    row.nothingElse();
                    return step;
                })
                .toList();
        return new Cycle(
                entry.name(), entry.text("description"), entry.si("start", TEMPERATURE), steps, entry.provenance());
    }

    private static Cycle.HoldFrom holdFrom(Entry row) {
        String word = row.text("hold from");
        return switch (word) {
            case "air" -> Cycle.HoldFrom.AIR;
            case "lagging" -> Cycle.HoldFrom.LAGGING;
            default -> throw row.fault("a hold starts from 'air' or from the 'lagging' place, not from '" + word + "'");
        };
    }

    private static double of(Entry entry, Entry values, String key, Dimension dimension) {
        return entry.value(values, key, dimension).si();
    }
}
