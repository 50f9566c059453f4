// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tubwright.desk.answer.CabinAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.cabin.Cabin;

/** What goes into a tub as JSON; keys are told in docs/json.md. */
public final class CabinJson {
    private CabinJson() {}

    /** The document. */
    public static String write(CabinAnswer answer) {
        return JsonText.of(json -> {
            json.writeStartObject();
            json.writeNumberProperty("schemaVersion", 1);
            json.writeStringProperty("tub", answer.tub());
            json.writeStringProperty("variant", answer.variant().name());
            json.writeBooleanProperty("fits", !answer.fails());
            json.writeNumberProperty("roomWanted_m", answer.cabin().room());
            json.writeArrayPropertyStart("nearest");
            for (Cabin.Nearest n : answer.fit().nearest()) {
                json.writeStartObject();
                json.writeStringProperty("of", n.what());
                json.writeNumberProperty("distance_m", n.distance());
                json.writeNumberProperty("x_m", n.at()[0]);
                json.writeNumberProperty("y_m", n.at()[1]);
                json.writeNumberProperty("z_m", n.at()[2]);
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayPropertyStart("inEachOthersWay");
            for (Cabin.Clash c : answer.fit().clashes()) {
                json.writeString(c.one() + " / " + c.other());
            }
            json.writeEndArray();
            if (answer.cabin().driver().isPresent()) {
                json.writeNumberProperty(
                        "legReachToSpare_m", answer.cabin().driver().get().reach());
            }
            if (answer.cabin().tank().isPresent()) {
                json.writeNumberProperty(
                        "tankHolds_m3", answer.cabin().tank().get().holds());
                json.writeNumberProperty("tankRoom_m3", answer.fit().tankRoom());
            }
            json.writeStringProperty("caution", RunAnswer.CAUTION);
            json.writeEndObject();
        });
    }
}
