// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.TornReserves;
import tubwright.engine.safety.damage.Aftermath;
import tubwright.engine.safety.damage.PatchAnswer;

/** What hits cost as JSON in SI units; {@code docs/json.md} explains every key. */
public final class DamageJson {
    private DamageJson() {}

    /** The whole document. */
    public static String write(DamageAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "damage");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("computed", answer.stamp());
            json.writeNumberProperty("size_m", answer.size());
            json.writeArrayPropertyStart("variants");
            for (DamageAnswer.PerVariant variant : answer.variants()) {
                json.writeStartObject();
                json.writeStringProperty("variant", variant.name());
                json.writeNumberProperty("unknowns", variant.unknowns());
                json.writeArrayPropertyStart("patches");
                variant.patches().forEach(p -> patch(json, p));
                json.writeEndArray();
                variant.aftermath().ifPresent(a -> aftermath(json, a));
                json.writeArrayPropertyStart("hotSpots");
                variant.hotSpots().forEach(spot -> {
                    json.writeStartObject();
                    json.writeStringProperty("at", spot.patch().patch().name());
                    aftermath(json, spot.aftermath());
                    json.writeEndObject();
                });
                json.writeEndArray();
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeStringProperty("note", DamageAnswer.ASIDE);
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void aftermath(JsonGenerator json, Aftermath after) {
        json.writeArrayPropertyStart("buckling");
        for (Aftermath.Buckling each : after.buckling()) {
            json.writeStartObject();
            json.writeStringProperty("case", each.name());
            number(json, "factorBefore", each.before());
            number(json, "factorAfter", each.after());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("beyondTheHole");
        for (TornReserves.Row each : after.rows()) {
            json.writeStartObject();
            json.writeStringProperty("case", each.after().load());
            json.writeStringProperty("zone", each.after().zone());
            json.writeStringProperty("check", each.after().check());
            number(json, "factorBefore", each.before());
            number(json, "factorAfter", each.after().value());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void patch(JsonGenerator json, PatchAnswer answer) {
        json.writeStartObject();
        json.writeStringProperty("at", answer.patch().name());
        json.writeArrayPropertyStart("place_m");
        for (double x : answer.patch().place()) {
            json.writeNumber(x);
        }
        json.writeEndArray();
        json.writeStringProperty("zone", answer.patch().region());
        json.writeNumberProperty("area_m2", answer.patch().area());
        json.writeStringProperty("degree", answer.degree().words());
        json.writeBooleanProperty("leavesSomethingLoose", answer.loose());
        json.writeArrayPropertyStart("stiffness");
        for (PatchAnswer.Stiffness each : answer.stiffness()) {
            String unit = each.torsion() ? "N_m_per_rad" : "N_per_m";
            json.writeStartObject();
            json.writeStringProperty("case", each.name());
            json.writeNumberProperty("before_" + unit, each.before());
            number(json, "after_" + unit, each.after());
            number(json, "lostShare", each.share());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("loads");
        for (PatchAnswer.UnderLoad each : answer.loads()) {
            json.writeStartObject();
            json.writeStringProperty("case", each.name());
            reserve(json, "before", each.before());
            reserve(json, "after", each.after());
            json.writeBooleanProperty("carried", !each.loose());
            json.writeArrayPropertyStart("loadsWithoutPath");
            each.disconnected().forEach(json::writeString);
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeObjectPropertyStart("lostShareOfTies");
        answer.lost().forEach((name, share) -> json.writeNumberProperty(name, share));
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void number(JsonGenerator json, String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, value);
        } else {
            json.writeNullProperty(name);
        }
    }

    private static void reserve(JsonGenerator json, String name, Optional<Reserve> reserve) {
        if (reserve.isEmpty()) {
            json.writeNullProperty(name);
            return;
        }
        Reserve row = reserve.get();
        json.writeObjectPropertyStart(name);
        json.writeNumberProperty("factor", row.value());
        json.writeStringProperty("check", row.check());
        json.writeStringProperty("zone", row.zone());
        json.writeBooleanProperty("dependsOnMesh", row.local());
        json.writeEndObject();
    }
}
