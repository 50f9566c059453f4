// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table in characters: first column to the left, the others to the right unless said otherwise. */
final class TextTable {
    private final boolean[] left;
    private final List<String[]> rows = new ArrayList<>();

    /** A table with {@code left[c]} telling whether column c is set to the left. */
    TextTable(boolean... left) {
        this.left = left.clone();
    }

    TextTable row(String... cells) {
        rows.add(cells.clone());
        return this;
    }

    /** The rows as the terminal can show them, each indented by two, columns two apart, nothing behind the last word. */
    List<String> lines(Terminal terminal) {
        rows.forEach(row -> Arrays.setAll(row, c -> terminal.shown(row[c])));
        int[] widths = new int[left.length];
        for (String[] row : rows) {
            for (int c = 0; c < row.length; c++) {
                widths[c] = Math.max(widths[c], row[c].length());
            }
        }
        List<String> result = new ArrayList<>();
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < row.length; c++) {
                String air = " ".repeat(widths[c] - row[c].length());
                line.append("  ").append(left[c] ? row[c] + air : air + row[c]);
            }
            result.add(line.toString().stripTrailing());
        }
        return result;
    }
}
