// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Optional;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.DrapeAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.DrapedStiffness;

/** Laid plies as JSON; keys as docs/json.md tells them. */
public final class DrapeJson {
    private DrapeJson() {}

    /** The document. */
    public static String write(DrapeAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "Tubwright");
            json.writeStringProperty("programVersion", answer.version());
            json.writeStringProperty("answer", "drape");
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("variant", answer.variant());
            json.writeStringProperty("computed", answer.stamp());
            Optional<DrapedStiffness> stiffness = answer.stiffness();
            if (stiffness.isPresent()) {
                json.writeObjectPropertyStart("torsionalStiffness");
                json.writeNumberProperty("nominal_N_m_per_rad", stiffness.get().nominal());
                json.writeNumberProperty("asLaid_N_m_per_rad", stiffness.get().draped());
                json.writeNumberProperty("cost", stiffness.get().cost());
                json.writeEndObject();
            } else {
                json.writeNullProperty("torsionalStiffness");
            }
            json.writeArrayPropertyStart("plies");
            answer.laid().plies().forEach(ply -> ply(json, ply));
            json.writeEndArray();
            json.writeArrayPropertyStart("limits");
            answer.limits().forEach(json::writeString);
            json.writeEndArray();
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void ply(JsonGenerator json, DrapedPly each) {
        DrapedPly.Figures f = each.figures();
        json.writeStartObject();
        json.writeStringProperty("ply", each.ply().name());
        json.writeStringProperty("piece", each.ply().piece());
        json.writeNumberProperty("step", each.ply().sequence());
        json.writeStringProperty("material", each.ply().material().name());
        json.writeStringProperty("role", each.ply().role().name().toLowerCase(java.util.Locale.ROOT));
        json.writeNumberProperty("angle_rad", each.ply().angle());
        json.writeNumberProperty("thickness_m", each.ply().thickness());
        json.writeStringProperty("patch", each.ply().patch());
        json.writeArrayPropertyStart("zones");
        each.ply().zones().forEach(json::writeString);
        json.writeEndArray();
        json.writeNumberProperty("area_m2", f.area());
        json.writeNumberProperty("largestShear_rad", f.largestShear());
        json.writeNumberProperty("meanShear_rad", f.meanShear());
        json.writeNumberProperty("wantsCare_m2", f.warned());
        json.writeNumberProperty("locked_m2", f.locked());
        json.writeNumberProperty("notReached_m2", f.bare());
        json.writeNumberProperty("largestTurn_rad", f.largestTurn());
        json.writeNumberProperty("meanTurn_rad", f.meanTurn());
        json.writeNumberProperty("thicknessFactor", f.thickness());
        json.writeNumberProperty("turnedAtStart_rad", each.turned());
        numbers(json, "start_m", each.start());
        if (f.steering().isPresent()) {
            DrapedPly.Steering s = f.steering().get();
            json.writeObjectPropertyStart("steering");
            json.writeNumberProperty("radius_m", s.radius());
            json.writeNumberProperty("edgeStrain", s.strain());
            json.writeNumberProperty("widestTape_m", s.widest());
            json.writeEndObject();
        }
        json.writeObjectPropertyStart("flat");
        json.writeNumberProperty("length_m", each.flat().length());
        json.writeNumberProperty("width_m", each.flat().width());
        json.writeNumberProperty("area_m2", each.flat().area());
        json.writeNumberProperty("longest", each.flat().distortion().longest());
        json.writeNumberProperty("shortest", each.flat().distortion().shortest());
        json.writeNumberProperty("stretched", each.flat().distortion().beyond());
        json.writeNumberProperty("missing_m", each.flat().missing());
        json.writeBooleanProperty("overlapsItself", each.flat().overlapsItself());
        json.writeEndObject();
        json.writeArrayPropertyStart("advice");
        each.advice().forEach(json::writeString);
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void numbers(JsonGenerator json, String name, double[] values) {
        json.writeArrayPropertyStart(name);
        for (double value : values) {
            json.writeNumber(value);
        }
        json.writeEndArray();
    }
}
