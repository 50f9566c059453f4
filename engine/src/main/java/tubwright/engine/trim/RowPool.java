// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The rows a search knows: those given, which count for every choice, and those found on the way. */
final class RowPool {
    /** Rows handed out at a time. */
    private static final int AT_ONCE = 12;
    /** Rows found that are remembered. */
    private static final int MOST_FOUND = 600;

    private final List<Row> given = new ArrayList<>();
    /** They spare the judge work where they are missed again, and are forgotten when long not missed. */
    private List<Found> found = new ArrayList<>();

    /** A row and the node at which it was last missed. */
    private static final class Found {
        final Row row;
        int last;

        Found(Row row, int last) {
            this.row = row;
            this.last = last;
        }
    }

    private record Missed(Row row, double by) {}

    void give(Row row) {
        given.add(row);
    }

    List<Row> given() {
        return Collections.unmodifiableList(given);
    }

    /**
     * Takes in a row that some node came upon.
     *
     * @param node its number, rising
     */
    void find(Row row, int node) {
        found.add(new Found(row, node));
        if (found.size() > MOST_FOUND) {
            found.sort(Comparator.comparingInt((Found f) -> f.last).reversed());
            found = new ArrayList<>(found.subList(0, MOST_FOUND / 2));
        }
    }

    /**
     * The rows a mixture misses most.
     *
     * @param by more than which counts
     * @param present rows the node has already
     * @param node its number
     */
    List<Row> missed(double[] mixture, double by, List<Row> present, int node) {
        int[] used =
                IntStream.range(0, mixture.length).filter(j -> mixture[j] != 0).toArray();
        List<Missed> missed = new ArrayList<>();
        for (Row row : given) {
            double amount = row.missedBy(mixture, used);
            if (amount > by && !present.contains(row)) {
                missed.add(new Missed(row, amount));
            }
        }
        for (Found each : found) {
            double amount = each.row.missedBy(mixture, used);
            if (amount > by && !present.contains(each.row)) {
                each.last = node;
                missed.add(new Missed(each.row, amount));
            }
        }
        missed.sort(Comparator.comparingDouble(Missed::by).reversed());
        return new ArrayList<>(missed.stream().limit(AT_ONCE).map(Missed::row).toList());
    }
}
