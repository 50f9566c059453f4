// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.MouldAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.mould.Draft;

/** Pieces and moulds as JSON; keys as docs/json.md tells them. */
public final class MouldJson {
    private MouldJson() {}

    /** The document. */
    public static String write(MouldAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "moulds");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("variant", answer.variant());
            json.writeStringProperty("computed", answer.stamp());
            json.writeNumberProperty("draftWanted_rad", answer.wanted());
            json.writeStringProperty("mould", answer.material());
            json.writeNumberProperty("freezes_K", answer.change());
            json.writeArrayPropertyStart("pieces");
            answer.pieces().forEach(p -> piece(json, p));
            json.writeEndArray();
            json.writeArrayPropertyStart("bends");
            answer.bends().forEach(b -> bend(json, b));
            json.writeEndArray();
            json.writeArrayPropertyStart("coldSizes");
            answer.factors().forEach(f -> {
                json.writeStartObject();
                json.writeStringProperty("material", f.material());
                json.writeNumberProperty("expansion_per_K", f.expansion());
                json.writeNumberProperty("coldOverPart", f.factor());
                json.writeStringProperty("source", f.source());
                json.writeEndObject();
            });
            json.writeEndArray();
            json.writeArrayPropertyStart("tooling");
            answer.tooling().forEach(t -> {
                json.writeStartObject();
                json.writeStringProperty("piece", t.piece());
                json.writeStringProperty("what", t.what());
                numbers(json, "size_m", t.size());
                finite(json, "mass_kg", t.mass());
                json.writeStringProperty("note", t.note());
                json.writeEndObject();
            });
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void piece(JsonGenerator json, MouldAnswer.Piece piece) {
        json.writeStartObject();
        json.writeStringProperty("piece", piece.name());
        json.writeNumberProperty("area_m2", piece.area());
        numbers(json, "size_m", piece.size());
        json.writeObjectPropertyStart("edges_m");
        piece.edges().forEach(json::writeNumberProperty);
        json.writeEndObject();
        finite(json, "coldOverPart", piece.factor());
        piece.draft().ifPresent(d -> draft(json, d, piece.given()));
        piece.flat().ifPresent(f -> {
            json.writeObjectPropertyStart("developed");
            json.writeNumberProperty("length_m", f.length());
            json.writeNumberProperty("width_m", f.width());
            json.writeNumberProperty("area_m2", f.area());
            json.writeNumberProperty("longest", f.distortion().longest());
            json.writeNumberProperty("shortest", f.distortion().shortest());
            json.writeEndObject();
        });
        words(json, "advice", piece.advice());
        json.writeEndObject();
    }

    private static void draft(JsonGenerator json, Draft draft, boolean given) {
        json.writeObjectPropertyStart("draft");
        numbers(json, "pull", draft.pull());
        json.writeBooleanProperty("pullGiven", given);
        json.writeNumberProperty("least_rad", draft.least());
        json.writeNumberProperty("little_m2", draft.little());
        json.writeNumberProperty("undercut_m2", draft.under());
        json.writeArrayPropertyStart("undercuts");
        draft.undercuts().forEach(u -> {
            json.writeStartObject();
            json.writeStringProperty("part", u.part());
            json.writeNumberProperty("from_m", u.fromX());
            json.writeNumberProperty("to_m", u.toX());
            json.writeNumberProperty("worst_rad", u.worst());
            json.writeNumberProperty("area_m2", u.area());
            json.writeNumberProperty("hook_m", u.hook());
            json.writeNumberProperty("height_m", u.height());
            json.writeStringProperty("beside", u.beside());
            json.writeEndObject();
        });
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void bend(JsonGenerator json, MouldAnswer.Bend bend) {
        json.writeStartObject();
        json.writeStringProperty("piece", bend.piece());
        json.writeStringProperty("between", bend.bend().between());
        json.writeStringProperty("zone", bend.bend().zone());
        json.writeNumberProperty("from_m", bend.bend().from());
        json.writeNumberProperty("to_m", bend.bend().to());
        json.writeNumberProperty("least_rad", bend.bend().least());
        json.writeNumberProperty("most_rad", bend.bend().most());
        finite(json, "leastClosing_rad", bend.bend().leastClosing());
        finite(json, "mostClosing_rad", bend.bend().mostClosing());
        json.writeNumberProperty("leastRadius_m", bend.leastRadius());
        json.writeNumberProperty("mostRadius_m", bend.mostRadius());
        json.writeNumberProperty("insideRadius_m", bend.inside());
        json.writeEndObject();
    }

    private static void finite(JsonGenerator json, String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, value);
        } else {
            json.writeNullProperty(name);
        }
    }

    private static void words(JsonGenerator json, String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }

    private static void numbers(JsonGenerator json, String name, double[] values) {
        json.writeArrayPropertyStart(name);
        for (double value : values) {
            json.writeNumber(value);
        }
        json.writeEndArray();
    }
}
