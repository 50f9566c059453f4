// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The rows a search knows: those given, which count for every choice, and those found on the way. */
final class RowPool {
    /** Rows handed out at a time. */
    private static final int AT_ONCE = 12;
    /** Rows found that are remembered. */
    private static final int MOST_FOUND = 600;

    private final int candidates;
    private final RowTable given;
    /** They spare the judge work where they are missed again, and are forgotten when long not missed. */
    private RowTable found;

    /** The node at which each of them was last missed. */
    private final Map<Row, Integer> last = new IdentityHashMap<>();

    private record Missed(Row row, double by) {}

    RowPool(int candidates) {
        this.candidates = candidates;
        given = new RowTable(candidates);
        found = new RowTable(candidates);
    }

    void give(Row row) {
        given.add(row);
    }

    List<Row> given() {
        return given.rows();
    }

    /**
     * Takes in a row that some node came upon, or says that it was missed again.
     *
     * @param node its number, rising
     */
    void find(Row row, int node) {
        boolean known = last.containsKey(row);
        last.put(row, node);
        if (known) {
            return;
        }
        found.add(row);
        if (found.rows().size() > MOST_FOUND) {
            List<Row> rows = new ArrayList<>(found.rows());
            rows.sort(Comparator.comparing((Row r) -> last.get(r)).reversed());
            found = new RowTable(candidates);
            rows.subList(0, MOST_FOUND / 2).forEach(found::add);
            rows.subList(MOST_FOUND / 2, rows.size()).forEach(last::remove);
        }
    }

    /** Whether a row is one of those found. */
    boolean wasFound(Row row) {
        return last.containsKey(row);
    }

    /**
     * The rows a mixture misses most. Nothing changes here, so that several may ask at once.
     *
     * @param by more than which counts
     * @param present rows the node has already
     */
    List<Row> missed(double[] mixture, double by, List<Row> present) {
        Set<Row> had = Collections.newSetFromMap(new IdentityHashMap<>());
        had.addAll(present);
        List<Missed> missed = new ArrayList<>();
        for (RowTable table : List.of(given, found)) {
            double[] amounts = table.missedBy(mixture);
            for (int i = 0; i < amounts.length; i++) {
                Row row = table.rows().get(i);
                if (amounts[i] > by && !had.contains(row)) {
                    missed.add(new Missed(row, amounts[i]));
                }
            }
        }
        missed.sort(Comparator.comparingDouble(Missed::by).reversed());
        return new ArrayList<>(missed.stream().limit(AT_ONCE).map(Missed::row).toList());
    }
}
