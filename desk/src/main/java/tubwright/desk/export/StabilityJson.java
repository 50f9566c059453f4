// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.Vibrations;
import tubwright.engine.structure.Mode;

/** Buckling and natural frequencies of a variant as JSON. */
final class StabilityJson {
    private StabilityJson() {}

    static void write(JsonGenerator json, Stability stability) {
        json.writeArrayPropertyStart("buckling");
        for (CaseBuckling each : stability.buckling()) {
            json.writeStartObject();
            json.writeStringProperty("case", each.load());
            json.writeBooleanProperty("loadCase", each.loadCase());
            json.writeBooleanProperty("buckles", !each.modes().isEmpty());
            json.writeStringProperty("note", each.note());
            number(json, "meshErrorOfLowest", each.meshError());
            json.writeNumberProperty("counted", each.count().counted());
            number(json, "countedUpTo", each.count().bound());
            json.writeArrayPropertyStart("modes");
            each.modes().forEach(mode -> mode(json, mode));
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeObjectPropertyStart("vibration");
        vibrations(json, "free", stability.free());
        vibrations(json, "held", stability.held());
        json.writeEndObject();
    }

    private static void mode(JsonGenerator json, Buckle mode) {
        json.writeStartObject();
        number(json, "factor", mode.factor());
        json.writeStringProperty("zone", mode.zone());
        number(json, "zoneShare", mode.share());
        json.writeStringProperty("panel", mode.panel());
        number(json, "panelShare", mode.panelShare());
        numbers(json, "place_m", mode.place(), 3);
        json.writeEndObject();
    }

    private static void vibrations(JsonGenerator json, String name, Optional<Vibrations> answer) {
        if (answer.isEmpty()) {
            json.writeNullProperty(name);
            return;
        }
        Vibrations vibrations = answer.get();
        json.writeObjectPropertyStart(name);
        number(json, "mass_kg", vibrations.modes().mass());
        json.writeNumberProperty("counted", vibrations.modes().count().counted());
        number(json, "countedUpTo_Hz", vibrations.known());
        json.writeObjectPropertyStart("first");
        for (Mode.Motion motion : Mode.Motion.values()) {
            Optional<Mode> first = vibrations.first(motion);
            if (first.isPresent() && motion != Mode.Motion.RIGID && motion != Mode.Motion.LOCAL) {
                json.writeObjectPropertyStart(motion.words());
                number(json, "frequency_Hz", first.get().frequency());
                number(json, "meshError_Hz", vibrations.meshErrors().getOrDefault(motion, Double.NaN));
                json.writeEndObject();
            }
        }
        json.writeEndObject();
        json.writeArrayPropertyStart("modes");
        for (Mode mode : vibrations.modes().elastic()) {
            json.writeStartObject();
            number(json, "frequency_Hz", mode.frequency());
            json.writeStringProperty("name", mode.name());
            json.writeStringProperty("strained", mode.strained());
            json.writeObjectPropertyStart("shares");
            for (Mode.Motion motion : Mode.Motion.values()) {
                if (motion != Mode.Motion.RIGID) {
                    number(json, motion.words(), mode.share(motion));
                }
            }
            json.writeEndObject();
            numbers(json, "effectiveMass_kg", mode.effectiveMass(), 3);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String name, double[] values, int count) {
        json.writeArrayPropertyStart(name);
        for (int i = 0; i < count; i++) {
            json.writeNumber(AnswerJson.tidy(values[i]));
        }
        json.writeEndArray();
    }

    private static void number(JsonGenerator json, String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, AnswerJson.tidy(value));
        } else {
            json.writeNullProperty(name);
        }
    }
}
