// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.response.Reserve;

/**
 * Rows of a reserve table for a reader: what is on the left and on the right of the tub and fails alike stands in one row,
 * named {@code rocker, left and right}, with the lower of the two factors.
 *
 * <p>Alike means the same case, check and mode, and factors that differ by no more than half a per cent. Twins that a case
 * loads differently stay apart. Files for machines keep both.
 */
public final class ReserveTwins {
    private static final double ALIKE = 0.005;
    private static final String LEFT = " L";
    private static final String RIGHT = " R";

    private ReserveTwins() {}

    /** @param rows lowest first; the answer has the same order */
    public static List<Reserve> joined(List<Reserve> rows) {
        record Key(String load, String stem, String check, String mode, boolean firstCrack, boolean local) {}
        List<Reserve> shown = new ArrayList<>();
        Map<Key, Integer> waiting = new LinkedHashMap<>();
        for (Reserve row : rows) {
            if (side(row).isEmpty()) {
                shown.add(row);
                continue;
            }
            var key = new Key(row.load(), stem(row), row.check(), row.mode(), row.firstCrack(), row.local());
            int at = waiting.getOrDefault(key, -1);
            if (at >= 0 && alike(shown.get(at), row)) {
                shown.set(at, both(shown.get(at)));
                waiting.remove(key);
            } else {
                waiting.put(key, shown.size());
                shown.add(row);
            }
        }
        return List.copyOf(shown);
    }

    private static boolean alike(Reserve lower, Reserve higher) {
        return !side(lower).equals(side(higher)) && higher.value() - lower.value() <= ALIKE * lower.value();
    }

    private static String side(Reserve row) {
        return row.zone().endsWith(LEFT) ? LEFT : row.zone().endsWith(RIGHT) ? RIGHT : "";
    }

    private static String stem(Reserve row) {
        return row.zone().substring(0, row.zone().length() - LEFT.length());
    }

    private static Reserve both(Reserve row) {
        return new Reserve(
                row.load(),
                row.check(),
                row.mode(),
                row.firstCrack(),
                stem(row) + ", left and right",
                row.ply(),
                row.place(),
                row.value(),
                row.knockDown(),
                row.local(),
                row.settledBy(),
                row.basis());
    }
}
