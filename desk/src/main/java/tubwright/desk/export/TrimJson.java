// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.LedgerAnswer;
import tubwright.desk.answer.LightenAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.answer.WhatIfAnswer;
import tubwright.engine.rig.explain.LayupForecast;
import tubwright.engine.trim.Guard;
import tubwright.engine.trim.Interval;
import tubwright.engine.trim.LayupCheck;
import tubwright.engine.trim.LedgerEntry;
import tubwright.engine.trim.Lightened;
import tubwright.engine.trim.Owner;

/** Ledgers, what-if answers and lightest layups as JSON in SI units, each named in its key; {@code docs/json.md} explains every key. */
public final class TrimJson {
    /** Raised when keys are added. */
    private static final int SCHEMA_VERSION = 2;

    private TrimJson() {}

    /** A ledger. */
    public static String write(LedgerAnswer answer) {
        return JsonText.of(json -> {
            head(json, "ledger", answer.version(), answer.tub(), answer.variant(), answer.loading());
            json.writeStringProperty("computed", answer.stamp());
            json.writeNumberProperty("unknowns", answer.unknowns());
            json.writeNumberProperty("mass_kg", answer.ledger().mass());
            String unit = key(answer.unit());
            json.writeNumberProperty("stiffness_" + unit, answer.ledger().stiffness());
            json.writeNumberProperty("sectionStiffness_" + unit, answer.ledger().sectionStiffness());
            json.writeArrayPropertyStart("loadCases");
            answer.ledger().watched().forEach(json::writeString);
            json.writeEndArray();
            json.writeArrayPropertyStart("entries");
            for (LedgerEntry entry : answer.ledger().entries()) {
                json.writeStartObject();
                json.writeStringProperty("kind", entry.kind().name().toLowerCase(java.util.Locale.ROOT));
                json.writeStringProperty("of", kind(entry.owner()));
                json.writeStringProperty("name", entry.owner().name());
                json.writeNumberProperty("layer", entry.place());
                json.writeStringProperty("material", entry.material());
                json.writeNumberProperty("angle_deg", entry.degrees());
                json.writeNumberProperty("thickness_m", entry.thickness());
                json.writeNumberProperty("mass_kg", entry.mass());
                json.writeNumberProperty("lost_" + unit, entry.lost());
                if (entry.mass() > 0) {
                    json.writeNumberProperty("lostPerMass_" + unit + "_kg", entry.lostPerKilogram());
                }
                interval(json, "left_" + unit, entry.solved());
                interval(json, "leftWithoutSolving_" + unit, entry.firstOrder());
                json.writeNumberProperty("substitutions", entry.steps());
                guards(json, "reserves", entry.reserves());
                guards(json, "buckling", entry.buckling());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    /** A what-if answer. */
    public static String write(WhatIfAnswer answer) {
        return JsonText.of(json -> {
            head(json, "what-if", answer.version(), answer.tub(), answer.variant(), answer.loading());
            json.writeNumberProperty("unknowns", answer.unknowns());
            json.writeArrayPropertyStart("changes");
            answer.changes().forEach(json::writeString);
            json.writeEndArray();
            String unit = key(answer.unit());
            json.writeNumberProperty("before_" + unit, answer.before());
            json.writeNumberProperty("sectionStiffnessBefore_" + unit, answer.sectionBefore());
            interval(json, "after_" + unit, answer.after());
            json.writeArrayPropertyStart("otherCases");
            for (WhatIfAnswer.Other other : answer.others()) {
                json.writeStartObject();
                json.writeStringProperty("case", other.loading());
                json.writeNumberProperty("before_" + key(other.unit()), other.before());
                interval(json, "after_" + key(other.unit()), other.after());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeNumberProperty("massBefore_kg", answer.massBefore());
            json.writeNumberProperty("massAfter_kg", answer.massAfter());
            json.writeArrayPropertyStart("pieces");
            answer.pieces().forEach(piece -> {
                json.writeStartObject();
                json.writeStringProperty("piece", piece.name());
                json.writeNumberProperty("massBefore_kg", piece.before());
                json.writeNumberProperty("massAfter_kg", piece.after());
                json.writeEndObject();
            });
            json.writeEndArray();
            json.writeBooleanProperty("instant", answer.instant());
            json.writeNumberProperty("substitutions", answer.substitutions());
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    /** The lightest layup. */
    public static String write(LightenAnswer answer) {
        return JsonText.of(json -> {
            head(
                    json,
                    "lighten",
                    answer.version(),
                    answer.tub(),
                    answer.variant(),
                    answer.goals().getFirst().loading());
            json.writeNumberProperty("unknowns", answer.unknowns());
            json.writeNumberProperty("massBefore_kg", answer.massBefore());
            json.writeNumberProperty("mass_kg", answer.found().mass());
            json.writeNumberProperty("massBound_kg", answer.found().bound());
            json.writeNumberProperty("removable_kg", answer.found().removable());
            json.writeNumberProperty("solves", answer.found().solves());
            json.writeNumberProperty("harvests", answer.found().harvests());
            json.writeNumberProperty("nodes", answer.found().nodes());
            json.writeStringProperty("ended", answer.found().ended().name().toLowerCase(java.util.Locale.ROOT));
            json.writeNumberProperty("margin", answer.margin());
            json.writeStringProperty("trust", answer.trust());
            strings(json, "notLookedAt", answer.notLookedAt());
            strings(json, "zonesWithoutNeighbour", answer.alone());
            json.writeArrayPropertyStart("verified");
            for (LayupCheck.Finding finding : answer.found().verified()) {
                json.writeStartObject();
                json.writeStringProperty("what", finding.what());
                json.writeNumberProperty("value", finding.value());
                json.writeNumberProperty("least", finding.least());
                json.writeStringProperty("where", finding.where());
                json.writeEndObject();
            }
            json.writeEndArray();
            answer.scatter().ifPresent(s -> {
                json.writeObjectPropertyStart("scatter");
                json.writeNumberProperty("share", s.share());
                json.writeNumberProperty("massSofter_kg", s.lowMass());
                json.writeNumberProperty("massStiffer_kg", s.highMass());
                strings(json, "firm", s.firm());
                strings(json, "loose", s.loose());
                json.writeArrayPropertyStart("byMaterial");
                s.byMaterial().forEach(m -> {
                    json.writeStartObject();
                    json.writeStringProperty("what", m.what());
                    if (m.mass().isPresent()) {
                        json.writeNumberProperty("massSofter_kg", m.mass().getAsDouble());
                    } else {
                        json.writeNullProperty("massSofter_kg");
                    }
                    strings(json, "changed", m.changed());
                    json.writeEndObject();
                });
                json.writeEndArray();
                json.writeEndObject();
            });
            answer.foretold().ifPresent(f -> {
                json.writeObjectPropertyStart("asBuilt");
                foretold(json, f.stiffness());
                json.writeNumberProperty("mass_kg", f.mass());
                if (Double.isFinite(f.testedMass())) {
                    json.writeNumberProperty("testedMass_kg", f.testedMass());
                }
                f.weakest().ifPresent(w -> {
                    json.writeObjectPropertyStart("weakest");
                    json.writeStringProperty("case", w.load());
                    json.writeStringProperty("zone", w.zone());
                    json.writeStringProperty("check", w.check());
                    json.writeNumberProperty("reserveFactor", w.value());
                    json.writeEndObject();
                });
                calibrated(json, f.calibrated());
                json.writeEndObject();
            });
            json.writeArrayPropertyStart("targets");
            for (int g = 0; g < answer.goals().size(); g++) {
                LightenAnswer.Goal goal = answer.goals().get(g);
                String unit = key(goal.unit());
                json.writeStartObject();
                json.writeStringProperty("case", goal.loading());
                json.writeNumberProperty("least_" + unit, goal.least());
                json.writeNumberProperty("before_" + unit, goal.before());
                interval(json, "after_" + unit, answer.found().stiffness().get(g));
                json.writeNumberProperty("sectionStiffnessBefore_" + unit, goal.sectionBefore());
                json.writeNumberProperty("sectionStiffnessAfter_" + unit, goal.sectionAfter());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("changes");
            for (LightenAnswer.Change change : answer.changes()) {
                json.writeStartObject();
                json.writeStringProperty("zone", change.zone());
                json.writeStringProperty("words", change.words());
                json.writeStringProperty("before", change.before());
                json.writeStringProperty("after", change.after());
                json.writeNumberProperty("mass_kg", change.mass());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("history");
            for (Lightened.Step step : answer.found().history()) {
                json.writeStartObject();
                json.writeNumberProperty("time_s", step.seconds());
                json.writeNumberProperty("solves", step.solves());
                json.writeNumberProperty("mass_kg", step.mass());
                json.writeNumberProperty("massBound_kg", step.bound());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    static void head(JsonGenerator json, String what, String version, String tub, String variant, String loading) {
        json.writeStartObject();
        json.writeNumberProperty("schemaVersion", SCHEMA_VERSION);
        json.writeStringProperty("program", "tubwright");
        json.writeStringProperty("programVersion", version);
        json.writeStringProperty("answer", what);
        json.writeStringProperty("tub", tub);
        json.writeStringProperty("variant", variant);
        json.writeStringProperty("case", loading);
    }

    /** Torsional stiffness of a tub as its makers build it. */
    static void foretold(JsonGenerator json, LayupForecast.Foretold foretold) {
        json.writeNumberProperty("sectionStiffnessAsBuilt_N_m_per_rad", foretold.stiffness());
        json.writeNumberProperty("sectionStiffnessAsBuiltExpanded95_N_m_per_rad", foretold.expanded());
    }

    /** The calibration that was put on the tub. */
    static void calibrated(JsonGenerator json, RunAnswer.Calibrated calibrated) {
        json.writeObjectPropertyStart("calibration");
        json.writeStringProperty("testedTub", calibrated.tested());
        json.writeStringProperty("readings", calibrated.source());
        json.writeStringProperty("computed", calibrated.stamp());
        json.writeEndObject();
    }

    private static void guards(JsonGenerator json, String name, List<Guard> guards) {
        json.writeArrayPropertyStart(name);
        for (Guard guard : guards) {
            json.writeStartObject();
            json.writeStringProperty("case", guard.load());
            json.writeNumberProperty("before", guard.before());
            json.writeNumberProperty("after", guard.after());
            json.writeStringProperty("what", guard.what());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void strings(JsonGenerator json, String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }

    static void interval(JsonGenerator json, String name, Interval interval) {
        json.writeArrayPropertyStart(name);
        json.writeNumber(interval.low());
        json.writeNumber(interval.high());
        json.writeEndArray();
    }

    static String key(StiffnessUnit unit) {
        return unit == StiffnessUnit.TORSION ? "N_m_per_rad" : "N_per_m";
    }

    private static String kind(Owner owner) {
        return switch (owner) {
            case Owner.Zone _ -> "zone";
            case Owner.Patch _ -> "patch";
            case Owner.Joint _ -> "joint";
        };
    }
}
