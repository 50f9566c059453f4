// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.KitAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.PlyMass;
import tubwright.engine.make.nest.Nest;

/** What a tub takes to make, as JSON; keys as docs/json.md tells them. */
public final class KitJson {
    private KitJson() {}

    /** The document. */
    public static String write(KitAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "kit");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("computed", answer.stamp());
            json.writeNumberProperty("mass_kg", answer.mass().total());
            json.writeArrayPropertyStart("materials");
            answer.materials().forEach((name, b) -> {
                json.writeStartObject();
                json.writeStringProperty("material", name);
                json.writeNumberProperty("inTub_kg", b.inTub());
                json.writeNumberProperty("cut_kg", b.used());
                json.writeNumberProperty("bought_kg", b.bought());
                json.writeNumberProperty("roll_m", b.length());
                json.writeEndObject();
            });
            json.writeEndArray();
            json.writeArrayPropertyStart("plies");
            for (PlyMass.Entry entry : answer.mass().plies()) {
                json.writeStartObject();
                json.writeStringProperty("name", entry.ply().name());
                json.writeStringProperty("piece", entry.ply().piece());
                json.writeStringProperty("material", entry.ply().material().name());
                json.writeNumberProperty("area_m2", entry.area());
                json.writeNumberProperty("mass_kg", entry.mass());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("kits");
            answer.kits().forEach(kit -> kit(json, kit));
            json.writeEndArray();
            json.writeNumberProperty("cures", answer.cures());
            json.writeArrayPropertyStart("hours");
            for (Hours.Step step : answer.hours().steps()) {
                json.writeStartObject();
                json.writeStringProperty("step", step.name());
                json.writeNumberProperty("seconds", step.seconds());
                json.writeStringProperty("source", step.source());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeNumberProperty("learningShare", answer.hours().learning());
            BuildJson.write(json, answer.build());
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void kit(JsonGenerator json, KitNest kit) {
        json.writeStartObject();
        json.writeStringProperty("piece", kit.piece());
        json.writeStringProperty("material", kit.material().name());
        json.writeArrayPropertyStart("notNested");
        kit.left().forEach(json::writeString);
        json.writeEndArray();
        if (kit.nest().isPresent()) {
            Nest nest = kit.nest().get();
            json.writeNumberProperty("rollWidth_m", nest.roll().width());
            json.writeNumberProperty("rollLength_m", nest.length());
            json.writeNumberProperty("utilisation", kit.used() / kit.bought());
            json.writeArrayPropertyStart("placements");
            for (Nest.Placement placement : nest.placements()) {
                json.writeStartObject();
                json.writeStringProperty(
                        "pattern", nest.pieces().get(placement.piece()).label());
                json.writeNumberProperty("turned_deg", 90 * placement.quarters());
                json.writeNumberProperty("x_m", placement.x());
                json.writeNumberProperty("y_m", placement.y());
                json.writeEndObject();
            }
            json.writeEndArray();
        }
        json.writeEndObject();
    }
}
