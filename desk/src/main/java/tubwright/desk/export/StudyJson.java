// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.Reading;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.findings.LayupDraws;
import tubwright.fleet.plan.Variation;
import tubwright.fleet.statistics.Probability;

/** A study as JSON; keys as docs/json.md tells them. Readings are in SI. */
public final class StudyJson {
    private StudyJson() {}

    /** The document. */
    public static String write(StudyAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("study", answer.plan().name());
            json.writeStringProperty("about", answer.plan().text().about().orElse(""));
            json.writeStringProperty("version", answer.version());
            json.writeBooleanProperty("complete", answer.findings().complete());
            json.writeArrayPropertyStart("varied");
            for (Variation variation : answer.plan().variations()) {
                json.writeStartObject();
                json.writeStringProperty("name", variation.name());
                json.writeStringProperty("unit", variation.unit());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("readings");
            for (Reading reading : answer.plan().readings()) {
                json.writeString(reading.text());
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("variants");
            answer.findings().variants().forEach(v -> variant(json, answer, v));
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void variant(JsonGenerator json, StudyAnswer answer, Findings.OfVariant variant) {
        List<Variation> variations = answer.plan().variations();
        json.writeStartObject();
        json.writeStringProperty("name", variant.variant());
        json.writeNumberProperty("failed", variant.failed());
        json.writeArrayPropertyStart("points");
        for (Findings.OfPoint point : variant.points()) {
            json.writeStartObject();
            json.writeArrayPropertyStart("at");
            for (int d = 0; d < variations.size(); d++) {
                double share = point.shares()[d];
                if (variations.get(d).words().isPresent()) {
                    json.writeString(variations.get(d).text(share));
                } else {
                    json.writeNumber(variations.get(d).number(share));
                }
            }
            json.writeEndArray();
            numbers(json, "shares", point.shares());
            json.writeArrayPropertyStart("values");
            if (point.row().filter(r -> r.ok()).isPresent()) {
                for (double value : point.row().get().values()) {
                    json.writeNumber(value);
                }
            }
            json.writeEndArray();
            json.writeStringProperty(
                    "reason", point.row().map(r -> r.reason().orElse("")).orElse("not computed yet"));
            json.writeStringProperty("key", point.row().map(r -> r.key()).orElse(""));
            json.writeBooleanProperty("added", point.added());
            json.writeEndObject();
        }
        json.writeEndArray();
        told(json, variant);
        json.writeEndObject();
    }

    private static void told(JsonGenerator json, Findings.OfVariant variant) {
        json.writeArrayPropertyStart("chances");
        for (Findings.Chance chance : variant.chances()) {
            json.writeStartObject();
            json.writeStringProperty("reading", chance.reading());
            json.writeNumberProperty("limit", chance.limit());
            json.writeBooleanProperty("atLeast", chance.atLeast());
            json.writeNumberProperty("probability", chance.met().share());
            json.writeNumberProperty("low", chance.met().low());
            json.writeNumberProperty("high", chance.met().high());
            json.writeNumberProperty("draws", chance.met().all());
            if (Double.isFinite(chance.suffices())) {
                json.writeNumberProperty("scatterThatSuffices", chance.suffices());
            } else {
                json.writeNullProperty("scatterThatSuffices");
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("indices");
        for (Findings.Indices indices : variant.indices()) {
            json.writeStartObject();
            json.writeStringProperty("reading", indices.reading());
            numbers(json, "first", indices.of().first());
            numbers(json, "firstError", indices.of().firstError());
            numbers(json, "total", indices.of().total());
            numbers(json, "totalError", indices.of().totalError());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("between");
        for (Findings.Between between : variant.between()) {
            json.writeStartObject();
            json.writeStringProperty("reading", between.reading());
            json.writeNumberProperty("error", between.error());
            json.writeNumberProperty("explained", between.explained());
            numbers(json, "slopes", between.slopes());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("front");
        variant.front().forEach(json::writeNumber);
        json.writeEndArray();
        if (variant.layups().isEmpty()) {
            json.writeNullProperty("layups");
            return;
        }
        LayupDraws draws = variant.layups().get();
        json.writeObjectPropertyStart("layups");
        json.writeNumberProperty("draws", draws.draws());
        json.writeNumberProperty("nominal_N_m_per_rad", draws.nominal());
        numbers(json, "shares", LayupDraws.SHARES);
        numbers(json, "quantiles_N_m_per_rad", draws.quantiles());
        json.writeNumberProperty("widest", draws.widest());
        chance(json, "stiffnessTarget", draws.stiffness());
        chance(json, "massTarget", draws.mass());
        json.writeNumberProperty("massDeviation_kg", draws.massDeviation());
        if (Double.isFinite(draws.suffices())) {
            json.writeNumberProperty("scatterThatSuffices", draws.suffices());
        } else {
            json.writeNullProperty("scatterThatSuffices");
        }
        json.writeArrayPropertyStart("inputs");
        for (int i = 0; i < draws.explained().length; i++) {
            json.writeStartObject();
            json.writeStringProperty("name", draws.inputs().get(i));
            json.writeNumberProperty("explained", draws.explained()[i]);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeNumberProperty("rest", draws.shortfall());
        json.writeEndObject();
    }

    private static void chance(JsonGenerator json, String name, Optional<Probability> of) {
        if (of.isEmpty()) {
            json.writeNullProperty(name);
            return;
        }
        json.writeObjectPropertyStart(name);
        json.writeNumberProperty("low", of.get().low());
        json.writeNumberProperty("high", of.get().high());
        json.writeNumberProperty("met", of.get().counted());
        json.writeNumberProperty("unknown", of.get().unknown());
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String name, double[] values) {
        json.writeArrayPropertyStart(name);
        for (double value : values) {
            json.writeNumber(value);
        }
        json.writeEndArray();
    }
}
