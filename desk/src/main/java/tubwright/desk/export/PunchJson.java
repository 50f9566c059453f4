// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;
import java.util.OptionalDouble;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.PunchAnswer;
import tubwright.desk.answer.RunAnswer;

/** A hard body against a panel as JSON; its keys are explained in docs/json.md. */
public final class PunchJson {
    private PunchJson() {}

    /** The document. */
    public static String write(PunchAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "punch");
            json.writeStringProperty("computedAt", answer.stamp());
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("variant", answer.variant());
            json.writeStringProperty("laminate", answer.laminate());
            json.writeStringProperty("nose", answer.body().nose().name().toLowerCase(Locale.ROOT));
            json.writeNumberProperty("mass_kg", answer.body().mass());
            json.writeNumberProperty("diameter_m", answer.body().diameter());
            json.writeNumberProperty("speed_m_per_s", answer.body().speed());
            json.writeNumberProperty("energy_J", answer.body().energy());
            json.writeArrayPropertyStart("skins");
            answer.panel().skins().forEach(s -> {
                json.writeStartObject();
                json.writeStringProperty("name", s.name());
                json.writeNumberProperty("thickness_m", s.thickness());
                json.writeNumberProperty("density_kg_per_m3", s.density());
                number(json, "limitSpeed_m_per_s", s.limitSpeed());
                number(json, "fastEnergy_J", s.fastEnergy());
                json.writeEndObject();
            });
            json.writeEndArray();
            number(json, "slowEnergy_J", answer.slowEnergy());
            number(json, "fastEnergy_J", answer.panel().fastEnergy());
            number(json, "countedEnergy_J", answer.countedEnergy());
            json.writeArrayPropertyStart("notChecked");
            answer.panel().notChecked().forEach(n -> json.writeString(n.toString()));
            json.writeEndArray();
            json.writeArrayPropertyStart("validity");
            answer.panel().validity().forEach(json::writeString);
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void number(JsonGenerator json, String key, OptionalDouble value) {
        if (value.isPresent()) {
            json.writeNumberProperty(key, value.getAsDouble());
        } else {
            json.writeNullProperty(key);
        }
    }
}
