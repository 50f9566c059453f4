// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.BuiltAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.built.BuiltComparison;
import tubwright.engine.make.built.BuiltTub;

/** A tub as built, as JSON; keys as docs/json.md tells them. */
public final class BuiltJson {
    private BuiltJson() {}

    /** The document. */
    public static String write(BuiltAnswer answer) {
        BuiltComparison c = answer.comparison();
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "built");
            json.writeStringProperty("tub", answer.tub());
            json.writeNumberProperty("number", answer.number());
            json.writeStringProperty("computed", answer.stamp());
            json.writeStringProperty("issue", answer.built().issue());
            json.writeStringProperty("fingerprint", answer.built().design());
            weighed(json, "pieces", c.pieces());
            weighed(json, "plies", c.plies());
            weighed(json, "whole", c.tub().stream().toList());
            json.writeNumberProperty("massFactor", c.massFactor());
            json.writeArrayPropertyStart("materials");
            c.materials().forEach((name, f) -> {
                json.writeStartObject();
                json.writeStringProperty("material", name);
                json.writeNumberProperty("arealFactor", f.factor());
                json.writeNumberProperty("shareWeighed", f.known());
                json.writeEndObject();
            });
            json.writeEndArray();
            json.writeArrayPropertyStart("batches");
            c.batches().values().forEach(b -> {
                json.writeStartObject();
                json.writeStringProperty("batch", b.name());
                json.writeStringProperty("material", b.material());
                json.writeArrayPropertyStart("patterns");
                b.plies().forEach(json::writeString);
                json.writeEndArray();
                json.writeEndObject();
            });
            json.writeEndArray();
            texts(json, "beyondLimits", c.beyond());
            texts(json, "withoutBatch", c.without());
            texts(json, "warnings", answer.warnings());
            said(json, "deviations", answer.said(BuiltTub.Kind.DEVIATION));
            said(json, "concessions", answer.said(BuiltTub.Kind.CONCESSION));
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void weighed(JsonGenerator json, String name, List<BuiltComparison.Weighed> all) {
        json.writeArrayPropertyStart(name);
        for (BuiltComparison.Weighed w : all) {
            json.writeStartObject();
            json.writeStringProperty("name", w.name());
            if (Double.isFinite(w.planned())) {
                json.writeNumberProperty("planned_kg", w.planned());
            }
            json.writeNumberProperty("mass_kg", w.mass());
            json.writeStringProperty("batch", w.batch());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void texts(JsonGenerator json, String name, List<String> texts) {
        json.writeArrayPropertyStart(name);
        texts.forEach(json::writeString);
        json.writeEndArray();
    }

    private static void said(JsonGenerator json, String name, List<BuiltTub.Line> lines) {
        json.writeArrayPropertyStart(name);
        for (BuiltTub.Line line : lines) {
            json.writeStartObject();
            json.writeStringProperty("piece", line.piece());
            json.writeStringProperty("pattern", line.pattern());
            json.writeStringProperty("words", line.words());
            json.writeStringProperty("releasedBy", line.released());
            json.writeEndObject();
        }
        json.writeEndArray();
    }
}
