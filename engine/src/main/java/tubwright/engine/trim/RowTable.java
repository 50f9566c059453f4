// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** Rows candidate after candidate, so that what a mixture of a few misses is summed up for all rows at once. */
final class RowTable {
    private static final int ROOM = 64;

    private final List<Row> rows = new ArrayList<>();
    private final double[][] columns;
    private double[] least = new double[ROOM];

    /**
     * @param candidates how many coefficients a row has
     */
    RowTable(int candidates) {
        columns = new double[candidates][ROOM];
    }

    List<Row> rows() {
        return Collections.unmodifiableList(rows);
    }

    void add(Row row) {
        int at = rows.size();
        if (at == least.length) {
            least = Arrays.copyOf(least, 2 * at);
            for (int j = 0; j < columns.length; j++) {
                columns[j] = Arrays.copyOf(columns[j], 2 * at);
            }
        }
        rows.add(row);
        least[at] = row.least();
        for (int j = 0; j < columns.length; j++) {
            columns[j][at] = row.coefficients()[j];
        }
    }

    /** By how much a mixture misses each row; negative where it keeps to it. */
    double[] missedBy(double[] mixture) {
        double[] amounts = Arrays.copyOf(least, rows.size());
        for (int j = 0; j < mixture.length; j++) {
            if (mixture[j] != 0) {
                double share = mixture[j];
                double[] column = columns[j];
                for (int i = 0; i < amounts.length; i++) {
                    amounts[i] -= share * column[i];
                }
            }
        }
        return amounts;
    }
}
