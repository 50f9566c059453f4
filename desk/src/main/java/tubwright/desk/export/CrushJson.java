// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.CrushAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.safety.crush.CrushChain;
import tubwright.engine.safety.crush.CrushRun;
import tubwright.engine.safety.crush.CrushVerdicts;

/** Impacts as JSON; its keys are explained in docs/json.md. */
public final class CrushJson {
    private CrushJson() {}

    /** The document. */
    public static String write(CrushAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "crush");
            json.writeStringProperty("computedAt", answer.stamp());
            json.writeStringProperty("tub", answer.tub());
            structures(json, answer);
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    /** The structures alone, as a property of an open object. */
    static void structures(JsonGenerator json, CrushAnswer answer) {
        json.writeArrayPropertyStart("crushStructures");
        answer.structures().forEach(s -> structure(json, s));
        json.writeEndArray();
    }

    private static void structure(JsonGenerator json, CrushAnswer.Each each) {
        json.writeStartObject();
        json.writeStringProperty("name", each.structure().name());
        json.writeStringProperty("hit", each.structure().hit().name().toLowerCase(java.util.Locale.ROOT));
        json.writeNumberProperty("mass_kg", each.structure().impact().mass());
        json.writeNumberProperty("speed_m_per_s", each.structure().impact().speed());
        json.writeNumberProperty("energy_J", each.structure().impact().energy());
        each.whole().ifPresent(a -> whole(json, a));
        each.apart().ifPresent(a -> apart(json, a));
        lines(json, each.lines());
        json.writeEndObject();
    }

    private static void whole(JsonGenerator json, CrushRun.Answer a) {
        json.writeNumberProperty("stroke_m", a.stroke());
        json.writeNumberProperty("time_s", a.time());
        json.writeNumberProperty("meanForce_N", a.meanForce());
        json.writeNumberProperty("peakForce_N", a.peakForce());
        json.writeNumberProperty("speedLeft_m_per_s", a.speedLeft());
        json.writeArrayPropertyStart("sectionEnergies_J");
        a.sectionEnergies().forEach(json::writeNumber);
        json.writeEndArray();
        json.writeArrayPropertyStart("notes");
        a.notes().forEach(json::writeString);
        json.writeEndArray();
    }

    private static void apart(JsonGenerator json, CrushChain.Answer a) {
        json.writeObjectPropertyStart("apart");
        json.writeNumberProperty("stroke_m", a.stroke());
        json.writeNumberProperty("crushed_J", a.crushed());
        json.writeArrayPropertyStart("parted");
        a.parted().forEach(p -> {
            json.writeStartObject();
            json.writeStringProperty("name", p.name());
            json.writeNumberProperty("time_s", p.time());
            json.writeNumberProperty("speed_m_per_s", p.speed());
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeEndObject();
    }

    static void lines(JsonGenerator json, java.util.List<CrushVerdicts.Line> lines) {
        json.writeArrayPropertyStart("limits");
        lines.forEach(l -> {
            json.writeStartObject();
            json.writeStringProperty("limit", l.limit());
            json.writeStringProperty("found", l.found());
            if (Double.isFinite(l.reserve())) {
                json.writeNumberProperty("reserveFactor", l.reserve());
            } else {
                json.writeNullProperty("reserveFactor");
            }
            json.writeStringProperty("verdict", l.verdict().words());
            json.writeArrayPropertyStart("needs");
            l.needs().forEach(json::writeString);
            json.writeEndArray();
            json.writeEndObject();
        });
        json.writeEndArray();
    }
}
