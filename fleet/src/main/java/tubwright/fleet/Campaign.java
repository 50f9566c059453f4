// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Runs points through a store: what is known is read, what is not is computed, and every row is kept as it comes. */
public final class Campaign {
    private final RowStore store;
    private final StudyRunner runner;

    /**
     * @param store asked first, and told of every row
     * @param runner computes what the store does not have
     */
    public Campaign(RowStore store, StudyRunner runner) {
        this.store = store;
        this.runner = runner;
    }

    /** Hears how it goes, and may stop it. */
    public interface Listener {
        /** How far it is; called once before the first design, and after each. */
        default void progress(Count count) {}

        /** Whether to stop. */
        default boolean stop() {
            return false;
        }
    }

    /**
     * How far it is.
     *
     * @param all designs that differ
     * @param known of them, taken from the store
     * @param done of them, computed now
     * @param failed of all that are there
     */
    public record Count(int all, int known, int done, int failed) {
        /** Designs still to be computed. */
        public int left() {
            return all - known - done;
        }
    }

    /**
     * What came of it.
     *
     * @param rows one for each point in their order; empty where it was stopped before
     * @param count how many
     */
    public record Outcome(List<Optional<Row>> rows, Count count) {
        public Outcome {
            rows = List.copyOf(rows);
        }

        /** Whether every point has a row. */
        public boolean complete() {
            return rows.stream().allMatch(Optional::isPresent);
        }
    }

    /**
     * Gives each point its row.
     *
     * @param job what is common
     * @param points in any number; those of one key are computed once
     * @param listener hears of it
     * @throws FleetException where the store or the runner cannot go on; finished rows are kept
     */
    public Outcome run(Job job, List<Point> points, Listener listener) {
        Map<String, Point> distinct = new LinkedHashMap<>();
        points.forEach(p -> distinct.putIfAbsent(p.key(), p));
        Map<String, Row> rows = new LinkedHashMap<>();
        List<Point> open = new ArrayList<>();
        for (Point point : distinct.values()) {
            store.find(point.key(), job.readings())
                    .ifPresentOrElse(row -> rows.put(point.key(), row), () -> open.add(point));
        }
        int known = rows.size();
        int[] failed = {(int) rows.values().stream().filter(r -> !r.ok()).count()};
        listener.progress(new Count(distinct.size(), known, 0, failed[0]));
        runner.run(job, open, new Watch() {
            @Override
            public void done(Row row) {
                store.add(row);
                rows.put(row.key(), row);
                failed[0] += row.ok() ? 0 : 1;
                listener.progress(new Count(distinct.size(), known, rows.size() - known, failed[0]));
            }

            @Override
            public boolean stop() {
                return listener.stop();
            }
        });
        return new Outcome(
                points.stream().map(p -> Optional.ofNullable(rows.get(p.key()))).toList(),
                new Count(distinct.size(), known, rows.size() - known, failed[0]));
    }
}
