// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Locale;
import tubwright.engine.response.Reserve;

/** Reserve factors in words. */
public final class ReserveWords {
    /** How to read the table. */
    public static final String ASIDE =
            "The factor on a case's loads at which it gives way, lowest first; the stress left"
                    + " by the cure stays as it is. A first crack between fibres is no break. * at an insert, where stress"
                    + " depends on the mesh: settle it by a finer mesh or a test.";

    private ReserveWords() {}

    /** The factor, with a star where the mesh cannot settle it. */
    public static String value(Reserve row) {
        String number = row.value() >= 100 ? "> 100" : String.format(Locale.ROOT, "%.2f", row.value());
        return number + (row.local() ? " *" : "");
    }

    /** What gives way. */
    public static String what(Reserve row) {
        String mode = row.mode().isEmpty() ? row.check() : row.mode() + " (" + row.check() + ")";
        return row.firstCrack() ? "first crack: " + mode : mode;
    }
}
