// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.core.JsonGenerator;
import tubwright.engine.response.InstalledAnswer;

/** The tub with what is bolted to it as JSON. */
final class InstalledJson {
    private static final String PER_RADIAN = "_N_m_per_rad";

    private InstalledJson() {}

    static void write(JsonGenerator json, InstalledAnswer answer) {
        json.writeObjectPropertyStart("installed");
        answer.torsion().ifPresent(t -> {
            json.writeObjectPropertyStart("torsion");
            json.writeStringProperty("case", t.name());
            json.writeArrayPropertyStart("fitted");
            t.fitted().forEach(json::writeString);
            json.writeEndArray();
            number(json, "tubAlone" + PER_RADIAN, t.sections());
            number(json, "with" + PER_RADIAN, t.sectionsWith());
            number(json, "tubAloneAtHardpoints" + PER_RADIAN, t.hardpoints());
            number(json, "withAtHardpoints" + PER_RADIAN, t.hardpointsWith());
            json.writeEndObject();
        });
        answer.hubToHub().ifPresent(h -> {
            json.writeObjectPropertyStart("hubToHub");
            number(json, "stiffness" + PER_RADIAN, h.stiffness());
            number(json, "linksRigid" + PER_RADIAN, h.withoutLinks());
            json.writeArrayPropertyStart("springs");
            for (InstalledAnswer.Spring each : h.springs()) {
                json.writeStartObject();
                json.writeStringProperty("name", each.name());
                number(json, "share", each.share());
                number(json, "alone" + PER_RADIAN, each.stiffness());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        });
        json.writeArrayPropertyStart("pickUps");
        for (InstalledAnswer.PickUp each : answer.pickUps()) {
            json.writeStartObject();
            json.writeStringProperty("hardpoint", each.name());
            json.writeArrayPropertyStart("direction");
            for (double d : each.direction()) {
                json.writeNumber(AnswerJson.tidy(d));
            }
            json.writeEndArray();
            number(json, "stiffness_N_per_m", each.stiffness());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("alignment");
        for (InstalledAnswer.Lost each : answer.alignment()) {
            json.writeStartObject();
            json.writeStringProperty("case", each.load());
            json.writeStringProperty("wheel", each.wheel());
            number(json, "camber_rad", each.camber());
            number(json, "toe_rad", each.toe());
            json.writeEndObject();
        }
        json.writeEndArray();
        number(json, "tubMass_kg", answer.masses().tub());
        number(json, "boltedMass_kg", answer.masses().bolted());
        number(json, "sprungMass_kg", answer.masses().sprung());
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, AnswerJson.tidy(value));
        } else {
            json.writeNullProperty(name);
        }
    }
}
