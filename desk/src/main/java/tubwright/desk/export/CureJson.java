// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.CureHistory;
import tubwright.engine.make.cure.LaminateCure;

/** Cures as JSON; keys as docs/json.md tells them. */
public final class CureJson {
    private CureJson() {}

    /** The document. */
    public static String write(CureAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "cure");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("computed", answer.stamp());
            shop(json, answer);
            json.writeArrayPropertyStart("laminates");
            answer.places().forEach(place -> place(json, place));
            json.writeEndArray();
            json.writeArrayPropertyStart("bends");
            for (CureAnswer.Bend bend : answer.bends()) {
                json.writeStartObject();
                json.writeStringProperty("between", bend.between());
                json.writeStringProperty("zone", bend.zone());
                json.writeNumberProperty("from_m", bend.from());
                json.writeNumberProperty("to_m", bend.to());
                json.writeNumberProperty("leastAngle_rad", bend.least());
                json.writeNumberProperty("mostAngle_rad", bend.most());
                number(json, "closesAtLeast_rad", bend.leastClosing());
                number(json, "closesAtMost_rad", bend.mostClosing());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("moulds");
            for (CureAnswer.Mould mould : answer.moulds()) {
                json.writeStartObject();
                json.writeStringProperty("material", mould.material());
                json.writeNumberProperty("expansion_per_K", mould.expansion());
                json.writeNumberProperty("coldOverPart", mould.factor());
                json.writeNumberProperty("part_m", mould.part());
                json.writeNumberProperty("cold_m", mould.part() * mould.factor());
                json.writeStringProperty("source", mould.source());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void shop(JsonGenerator json, CureAnswer answer) {
        json.writeObjectPropertyStart("shop");
        json.writeStringProperty("mould", answer.shop().tool().name());
        json.writeNumberProperty("mouldThickness_m", answer.shop().toolThickness());
        json.writeNumberProperty("mouldSide_W_per_m2_K", answer.shop().toolSide());
        json.writeNumberProperty("bagSide_W_per_m2_K", answer.shop().bagSide());
        json.writeStringProperty("cycleOfSolid", answer.shop().solid().name());
        json.writeStringProperty("cycleOverCore", answer.shop().overCore().name());
        json.writeStringProperty("order", answer.shop().order().word());
        json.writeNumberProperty("relativeHumidity", answer.shop().humidity());
        json.writeEndObject();
    }

    private static void place(JsonGenerator json, CureAnswer.Place place) {
        LaminateCure cure = place.cure();
        json.writeStartObject();
        json.writeStringProperty("stack", place.code());
        json.writeArrayPropertyStart("where");
        place.where().forEach(json::writeString);
        json.writeEndArray();
        json.writeNumberProperty("thickness_m", cure.thickness());
        json.writeArrayPropertyStart("missing");
        cure.missing().forEach(json::writeString);
        json.writeEndArray();
        number(
                json,
                "springInOfRightAngle_rad",
                cure.springIn().map(LaminateCure.Bend::ofRightAngle).orElse(Double.NaN));
        json.writeArrayPropertyStart("cures");
        for (LaminateCure.Stage stage : cure.stages()) {
            json.writeStartObject();
            json.writeStringProperty("title", stage.title());
            json.writeStringProperty("cycle", stage.cycle().name());
            json.writeArrayPropertyStart("standsInFor");
            stage.standsInFor().forEach(json::writeString);
            json.writeEndArray();
            json.writeArrayPropertyStart("checks");
            for (CureCheck check : stage.checks()) {
                json.writeStartObject();
                json.writeStringProperty("subject", check.subject().title());
                json.writeStringProperty("verdict", check.verdict().word());
                number(json, "value_SI", check.value().orElse(Double.NaN));
                number(json, "limit_SI", check.limit().orElse(Double.NaN));
                json.writeStringProperty("words", check.words());
                json.writeEndObject();
            }
            json.writeEndArray();
            stage.history().ifPresent(h -> history(json, h));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void history(JsonGenerator json, CureHistory history) {
        json.writeNumberProperty("ends_s", history.stoppedAt());
        json.writeNumberProperty("peak_K", history.peak().temperature());
        json.writeNumberProperty("peakAt_s", history.peak().time());
        json.writeNumberProperty("peakAbove_mouldFace_m", history.peak().height());
        json.writeArrayPropertyStart("curves");
        for (CureHistory.Moment moment : history.moments()) {
            json.writeStartObject();
            json.writeNumberProperty("time_s", moment.time());
            json.writeNumberProperty("air_K", moment.air());
            number(json, "lagging_K", history.lagging(moment));
            number(json, "leading_K", history.leading(moment));
            json.writeNumberProperty("leastDegree", history.leastDegree(moment));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void number(JsonGenerator json, String key, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(key, value);
        } else {
            json.writeNullProperty(key);
        }
    }
}
