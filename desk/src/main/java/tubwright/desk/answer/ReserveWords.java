// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Locale;
import tubwright.engine.response.Reserve;

/** Reserve factors in words. */
public final class ReserveWords {
    /** How to read the table. */
    public static final String ASIDE =
            "The factor on a case's loads at which it gives way, lowest first; the stress left"
                    + " by the cure stays as it is. A first crack between fibres is no break. * where stress depends on the"
                    + " mesh: at an insert, or on a patch that is small for the elements. Left and right"
                    + " share a row where their factors differ by no more than half a per cent. What was not checked is no pass.";

    private ReserveWords() {}

    /** The factor, with a star where the mesh cannot settle it. */
    public static String value(Reserve row) {
        String number = row.value() >= 100 ? "> 100" : String.format(Locale.ROOT, "%.2f", row.value());
        return number + (row.local() ? " *" : "");
    }

    /** What would settle a factor that depends on the mesh; empty where nothing is to settle. */
    public static String settles(Reserve row) {
        if (!row.local()) {
            return "";
        }
        return row.settledBy() > 0
                ? String.format(Locale.ROOT, "elements of %.0f mm here (--mesh), or a test", 1e3 * row.settledBy())
                : "a test";
    }

    /** What gives way. */
    public static String what(Reserve row) {
        String mode = row.mode().isEmpty() ? row.check() : row.mode() + " (" + row.check() + ")";
        return row.firstCrack() ? "first crack: " + mode : mode;
    }
}
