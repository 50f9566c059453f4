// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tubwright.desk.answer.EnoughAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.load.RollBalance;

/** How stiff is enough, as JSON; keys as docs/json.md tells them. */
public final class EnoughJson {
    private EnoughJson() {}

    /** The document. */
    public static String write(EnoughAnswer answer) {
        RollBalance balance = answer.balance();
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("tub", answer.tub());
            json.writeNumberProperty("rollStiffness_N_m_per_rad", balance.rollStiffness());
            json.writeNumberProperty("frontStiffnessShare", balance.frontStiffnessShare());
            json.writeNumberProperty("frontMomentShare", balance.frontMomentShare());
            json.writeNumberProperty("share", answer.share());
            json.writeNumberProperty("needed_N_m_per_rad", answer.needed());
            json.writeArrayPropertyStart("curve");
            for (double share : EnoughAnswer.SHARES) {
                json.writeStartObject();
                json.writeNumberProperty("share", share);
                json.writeNumberProperty("needed_N_m_per_rad", balance.needed(share));
                json.writeEndObject();
            }
            json.writeEndArray();
            if (answer.now().isPresent()) {
                EnoughAnswer.Now now = answer.now().get();
                json.writeObjectPropertyStart("lastRun");
                json.writeNumberProperty("betweenAxles_N_m_per_rad", now.between());
                json.writeNumberProperty("arrives", balance.arriving(now.between()));
                json.writeBooleanProperty("ofAnEarlierDesign", now.stale());
                if (answer.tubNeeded().isPresent()) {
                    json.writeNumberProperty(
                            "tubNeeded_N_m_per_rad", answer.tubNeeded().get());
                } else {
                    json.writeNullProperty("tubNeeded_N_m_per_rad");
                }
                json.writeEndObject();
            } else {
                json.writeNullProperty("lastRun");
            }
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }
}
