// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.ReserveTable;
import tubwright.engine.strength.Check;

/** The reserve factors of a variant as JSON. */
final class ReserveJson {
    private ReserveJson() {}

    static void write(JsonGenerator json, ReserveTable table) {
        json.writeObjectPropertyStart("reserves");
        json.writeArrayPropertyStart("loads");
        table.loads().forEach((load, source) -> {
            json.writeStartObject();
            json.writeStringProperty("case", load);
            json.writeStringProperty("source", source);
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeStringProperty("strengths", table.strengths());
        json.writeArrayPropertyStart("rows");
        for (List<Reserve> cases : table.byPlace()) {
            Reserve row = cases.getFirst();
            json.writeStartObject();
            json.writeStringProperty("case", row.load());
            json.writeStringProperty("zone", row.zone());
            json.writeStringProperty("check", row.check());
            json.writeStringProperty("mode", row.mode());
            json.writeBooleanProperty("firstCrack", row.firstCrack());
            json.writeStringProperty("ply", row.ply());
            json.writeArrayPropertyStart("place_m");
            for (double x : row.place()) {
                json.writeNumber(AnswerJson.tidy(x));
            }
            json.writeEndArray();
            json.writeNumberProperty("reserveFactor", AnswerJson.tidy(row.value()));
            json.writeStringProperty("knockDowns", row.knockDown());
            json.writeBooleanProperty("atInsert", row.local());
            if (row.settledBy() > 0) {
                json.writeNumberProperty("settledByMeshSize_m", AnswerJson.tidy(row.settledBy()));
            } else {
                json.writeNullProperty("settledByMeshSize_m");
            }
            json.writeStringProperty("basis", row.basis());
            json.writeArrayPropertyStart("byCase");
            for (Reserve each : cases) {
                json.writeStartObject();
                json.writeStringProperty("case", each.load());
                json.writeNumberProperty("reserveFactor", AnswerJson.tidy(each.value()));
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("notChecked");
        for (Check.NotChecked each : table.notChecked()) {
            json.writeString(each.toString());
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
