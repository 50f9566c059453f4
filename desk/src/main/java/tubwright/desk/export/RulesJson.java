// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.RulesAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.safety.rules.Finding;
import tubwright.engine.safety.rules.PanelTest;

/** A tub held against rules, as JSON; its keys are explained in docs/json.md. */
public final class RulesJson {
    private RulesJson() {}

    /** The document. */
    public static String write(RulesAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "rules");
            json.writeStringProperty("computedAt", answer.stamp());
            json.writeStringProperty("tub", answer.tub());
            json.writeNumberProperty("meshSize_m", answer.meshSize());
            json.writeArrayPropertyStart("ruleSets");
            answer.sets().forEach(s -> set(json, s));
            json.writeEndArray();
            json.writeStringProperty("note", RulesAnswer.ASIDE);
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void set(JsonGenerator json, RulesAnswer.Held held) {
        json.writeStartObject();
        json.writeStringProperty("name", held.name());
        json.writeStringProperty("set", held.set().name());
        json.writeStringProperty("source", held.set().source());
        json.writeNumberProperty("year", held.set().year());
        json.writeArrayPropertyStart("clauses");
        held.findings().forEach(f -> finding(json, f));
        json.writeEndArray();
        json.writeArrayPropertyStart("testPanels");
        held.panels().forEach(p -> panel(json, p));
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void finding(JsonGenerator json, Finding f) {
        json.writeStartObject();
        json.writeStringProperty("clause", f.clause().number());
        json.writeStringProperty("says", f.clause().says());
        json.writeStringProperty("trust", f.clause().provenance().trust().mark());
        json.writeBooleanProperty("byTest", f.clause().byTest());
        json.writeStringProperty("verdict", f.verdict().words());
        json.writeStringProperty("found", f.found());
        number(json, "reserveFactor", f.reserve());
        json.writeStringProperty("how", f.how());
        json.writeArrayPropertyStart("needs");
        f.needs().forEach(json::writeString);
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void panel(JsonGenerator json, PanelTest p) {
        json.writeStartObject();
        json.writeStringProperty("zone", p.laminate());
        json.writeNumberProperty("span_m", p.span());
        json.writeNumberProperty("width_m", p.width());
        json.writeNumberProperty("stiffness_N_per_m", p.stiffness());
        json.writeNumberProperty("stiffnessLow_N_per_m", p.low());
        json.writeNumberProperty("stiffnessHigh_N_per_m", p.high());
        json.writeNumberProperty("shearShare", p.shearShare());
        json.writeArrayPropertyStart("ways");
        p.ways().forEach(w -> {
            json.writeStartObject();
            json.writeStringProperty("mode", w.mode());
            json.writeNumberProperty("load_N", w.load());
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, value);
        } else {
            json.writeNullProperty(name);
        }
    }
}
