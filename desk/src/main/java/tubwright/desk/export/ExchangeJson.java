// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.trim.ExchangeCurve;

/** The curve of mass against stiffness as JSON in SI units; {@code docs/json.md} explains every key. */
public final class ExchangeJson {
    private ExchangeJson() {}

    /** The whole document. */
    public static String write(ExchangeAnswer answer) {
        return JsonText.of(json -> {
            TrimJson.head(json, "exchange", answer.version(), answer.tub(), answer.variant(), answer.loading());
            json.writeStringProperty("computed", answer.stamp());
            json.writeNumberProperty("unknowns", answer.unknowns());
            String unit = TrimJson.key(answer.unit());
            json.writeArrayPropertyStart("points");
            for (int k = 0; k < answer.curve().points().size(); k++) {
                ExchangeCurve.Point point = answer.curve().points().get(k);
                json.writeStartObject();
                json.writeNumberProperty("least_" + unit, point.asked());
                json.writeNumberProperty("mass_kg", point.found().mass());
                json.writeNumberProperty("massBound_kg", point.found().bound());
                TrimJson.interval(json, "reached_" + unit, point.reached());
                json.writeNumberProperty("solves", point.found().solves());
                if (!answer.foretold().isEmpty()) {
                    TrimJson.foretold(json, answer.foretold().get(k));
                }
                json.writeBooleanProperty("chosen", answer.chosen().equals(java.util.Optional.of(k)));
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("byMass");
            for (ExchangeCurve.Reading reading : answer.readings()) {
                json.writeStartObject();
                json.writeNumberProperty("mass_kg", reading.mass());
                reading.stiffest()
                        .ifPresent(p -> json.writeNumberProperty(
                                "stiffest_" + unit, p.reached().low()));
                if (Double.isFinite(reading.atMost())) {
                    json.writeNumberProperty("noneReaches_" + unit, reading.atMost());
                }
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("marks");
            for (ExchangeAnswer.Mark mark : answer.marks()) {
                json.writeStartObject();
                json.writeStringProperty("name", mark.name());
                json.writeNumberProperty("mass_kg", mark.mass());
                json.writeNumberProperty("stiffness_" + unit, mark.stiffness());
                json.writeEndObject();
            }
            json.writeEndArray();
            answer.calibrated().ifPresent(c -> TrimJson.calibrated(json, c));
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }
}
