// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.SpreadStory;
import tubwright.engine.safety.spread.SpreadAnswer;

/** A load followed until little is left as JSON in SI units; {@code docs/json.md} explains every key. */
public final class SpreadJson {
    private SpreadJson() {}

    /** The whole document. */
    public static String write(SpreadStory story) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("program", "tubwright");
            json.writeStringProperty("programVersion", story.version());
            json.writeStringProperty("answer", "spread");
            json.writeStringProperty("tub", story.tub());
            json.writeStringProperty("variant", story.variant());
            json.writeStringProperty("computed", story.stamp());
            json.writeStringProperty("loaded", story.what());
            json.writeNumberProperty("unknowns", story.unknowns());
            json.writeNumberProperty(story.couple() ? "load_N_m" : "load_N", story.force());
            json.writeStringProperty("ended", story.path().ended());
            json.writeStringProperty("convergence", story.convergence());
            json.writeArrayPropertyStart("steps");
            story.path().steps().forEach(s -> step(json, story, s));
            json.writeEndArray();
            json.writeArrayPropertyStart("failures");
            story.path().events().forEach(e -> event(json, story, e));
            json.writeEndArray();
            words(json, "needs", story.path().needs());
            words(json, "loweredStrengths", story.path().lowered());
            words(json, "asides", story.asides());
            json.writeStringProperty("note", SpreadStory.ASIDE);
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }

    private static void step(JsonGenerator json, SpreadStory story, SpreadAnswer.Step step) {
        json.writeStartObject();
        json.writeNumberProperty("loadFactor", step.factor());
        json.writeNumberProperty(story.couple() ? "movement_rad" : "movement_m", story.movement(step));
        json.writeNumberProperty("energyByLaws_J", step.taken());
        json.writeNumberProperty("energyByWork_J", step.released());
        json.writeNumberProperty("imbalance", step.imbalance());
        json.writeNumberProperty("solutions", step.rounds());
        json.writeBooleanProperty("settled", step.settled());
        json.writeEndObject();
    }

    private static void event(JsonGenerator json, SpreadStory story, SpreadAnswer.Event event) {
        json.writeStartObject();
        json.writeStringProperty("zone", event.zone());
        json.writeStringProperty("what", event.what());
        json.writeNumberProperty("loadFactor", event.factor());
        json.writeNumberProperty(story.couple() ? "movement_rad" : "movement_m", story.movement(event));
        json.writeArrayPropertyStart("place_m");
        for (double x : event.place()) {
            json.writeNumber(x);
        }
        json.writeEndArray();
        json.writeNumberProperty("shareBegun", event.share());
        json.writeNumberProperty("shareGone", event.gone());
        json.writeEndObject();
    }

    private static void words(JsonGenerator json, String key, List<String> all) {
        json.writeArrayPropertyStart(key);
        all.forEach(json::writeString);
        json.writeEndArray();
    }
}
