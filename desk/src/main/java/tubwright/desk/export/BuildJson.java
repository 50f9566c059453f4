// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.BuildAnswer;
import tubwright.engine.make.build.Costs;
import tubwright.engine.make.build.Schedule.Placed;

/** A build plan inside a JSON document; keys as docs/json.md tells them. */
final class BuildJson {
    private BuildJson() {}

    /** Writes the property {@code build} with what it costs. */
    static void write(JsonGenerator json, BuildAnswer answer) {
        json.writeObjectPropertyStart("build");
        times(json, answer);
        costs(json, answer);
        json.writeEndObject();
    }

    /** Writes the property {@code build} for those who name the prices themselves. */
    static void plan(JsonGenerator json, BuildAnswer answer) {
        json.writeObjectPropertyStart("build");
        times(json, answer);
        json.writeEndObject();
    }

    private static void times(JsonGenerator json, BuildAnswer answer) {
        json.writeNumberProperty("tubs", answer.plan().tubs());
        json.writeStringProperty("begin", answer.plan().schedule().begin().toString());
        json.writeStringProperty("delivered", answer.plan().schedule().end().toString());
        json.writeArrayPropertyStart("activities");
        for (Placed p : answer.plan().schedule().placed()) {
            json.writeStartObject();
            json.writeStringProperty("name", p.activity().name());
            json.writeStringProperty("step", p.activity().step());
            json.writeStringProperty("lane", p.activity().lane());
            json.writeNumberProperty("tub", p.activity().tub());
            json.writeStringProperty("start", p.start().toString());
            json.writeStringProperty("finish", p.finish().toString());
            json.writeStringProperty("latestFinish", p.latestFinish().toString());
            json.writeNumberProperty("work_s", p.activity().work());
            json.writeBooleanProperty(
                    "longestPath", answer.plan().schedule().chain().contains(p));
            json.writeStringProperty("source", p.activity().source());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void costs(JsonGenerator json, BuildAnswer answer) {
        json.writeStringProperty("currency", answer.costs().currency());
        json.writeArrayPropertyStart("costs");
        lines(json, 0, answer.costs().once());
        for (int n = 1; n <= answer.plan().tubs(); n++) {
            lines(json, n, answer.costs().tubs().get(n - 1));
        }
        json.writeEndArray();
    }

    private static void lines(JsonGenerator json, int tub, List<Costs.Line> lines) {
        for (Costs.Line line : lines) {
            json.writeStartObject();
            json.writeNumberProperty("tub", tub);
            json.writeStringProperty("what", line.what());
            json.writeNumberProperty("work_s", line.work());
            json.writeNumberProperty("autoclave_s", line.oven());
            json.writeNumberProperty("money", line.money());
            json.writeStringProperty("rule", line.rule());
            json.writeEndObject();
        }
    }
}
