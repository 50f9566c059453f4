// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import tubwright.fleet.Campaign;
import tubwright.fleet.Job;
import tubwright.fleet.Point;
import tubwright.fleet.RowStore;
import tubwright.fleet.StudyRunner;

/** Runs designs through a store of their own and takes the time. */
final class StudyClock {
    private StudyClock() {}

    /** Seconds that all points take, from a runner that stands ready to the last row kept. */
    static double run(Job job, List<Point> points, StudyRunner runner) {
        try {
            Path folder = Files.createTempDirectory("rows");
            long start = System.nanoTime();
            try (RowStore store = RowStore.open(folder)) {
                Campaign.Outcome outcome = new Campaign(store, runner).run(job, points, new Campaign.Listener() {});
                if (outcome.count().failed() > 0) {
                    throw new IllegalStateException(outcome.count().failed() + " designs failed: "
                            + outcome.rows().getFirst());
                }
            }
            double seconds = ClockedSolver.since(start);
            delete(folder);
            return seconds;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void delete(Path folder) throws IOException {
        Files.deleteIfExists(folder.resolve(RowStore.FILE_NAME));
        Files.delete(folder);
    }
}
