// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.RunAnswer;

/** What a pack holds as JSON; keys as docs/json.md tells them. */
public final class PackJson {
    private PackJson() {}

    /** The document; nothing of the time it was made. */
    public static String write(PackAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("answer", "pack");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("variant", answer.variant());
            json.writeStringProperty("issue", answer.issue());
            json.writeStringProperty("date", answer.date());
            json.writeStringProperty("fingerprint", answer.fingerprint());
            json.writeStringProperty("version", answer.version());
            json.writeNumberProperty("massOfPlies_kg", answer.massLaid());
            json.writeNumberProperty("massInTheModel_kg", answer.structuralMass());
            json.writeNumberProperty("splices", answer.splices());
            json.writeArrayPropertyStart("materials");
            for (PackAnswer.OfMaterial each : answer.materials()) {
                json.writeStartObject();
                json.writeStringProperty("material", each.material().name());
                json.writeNumberProperty("pieces", each.pieces());
                json.writeNumberProperty("laid_m2", each.areaLaid());
                json.writeNumberProperty("laid_kg", each.massLaid());
                json.writeNumberProperty("rollUsed_m", each.roll());
                json.writeNumberProperty("bought_kg", each.bought());
                json.writeNumberProperty("utilisation", each.used());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("left");
            answer.left().forEach(json::writeString);
            json.writeEndArray();
            BuildJson.plan(json, answer.build());
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }
}
