// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.plan;

import java.util.List;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.quantity.NearestName;

/**
 * What is wanted of a reading, or of a thing that is varied.
 *
 * @param reading as the study reads it
 * @param most whether more is better
 */
public record Aim(String reading, boolean most) {
    static Aim of(Name name, List<Name> read) {
        String text = name.text();
        boolean most = text.startsWith("most ");
        if (!most && !text.startsWith("least ")) {
            throw new DesignError(
                    name.place(), "\"" + text + "\" does not say which way", "begin with \"least\" or \"most\"");
        }
        String reading = text.substring(text.indexOf(' ') + 1).strip();
        List<String> known = read.stream().map(Name::text).toList();
        if (!known.contains(reading)) {
            throw new DesignError(
                    name.place(),
                    "\"" + reading + "\" is not read",
                    NearestName.of(reading, known)
                            .map(n -> "did you mean \"" + n + "\"?")
                            .orElse("read: " + String.join(", ", known)));
        }
        return new Aim(reading, most);
    }

    /** The less the better. */
    public double cost(double value) {
        return most ? -value : value;
    }
}
