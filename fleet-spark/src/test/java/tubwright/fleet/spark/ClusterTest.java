// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.Design;
import tubwright.fleet.Blueprint;
import tubwright.fleet.Campaign;
import tubwright.fleet.Elsewhere;
import tubwright.fleet.FleetException;
import tubwright.fleet.Job;
import tubwright.fleet.LocalCores;
import tubwright.fleet.Patch;
import tubwright.fleet.Point;
import tubwright.fleet.Row;
import tubwright.fleet.RowStore;
import tubwright.fleet.StudyRunner;
import tubwright.fleet.Watch;

/** A master and two workers of their own on the loopback address, and studies sent to them. */
class ClusterTest {
    private static final int DESIGNS = 30;

    @TempDir
    static Path logs;

    private static SmallCluster cluster;
    private static Process first;

    @TempDir
    Path folder;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        System.setProperty(SparkElsewhere.PATIENCE, "600"); // whatever else this machine is doing
        cluster = new SmallCluster(logs);
        first = cluster.worker("first");
        cluster.worker("second");
    }

    @AfterAll
    static void end() throws InterruptedException {
        cluster.close();
    }

    private static Job job() throws IOException {
        try (InputStream in = ClusterTest.class.getResourceAsStream("box.yaml")) {
            return new Job(
                    new String(in.readAllBytes(), StandardCharsets.UTF_8),
                    "box.yaml",
                    Design.AS_DESIGNED,
                    List.of("torsional stiffness", "mass"),
                    0,
                    "test");
        }
    }

    /** Skins of many gauges, one of which is none. */
    private static List<Point> points(Job job) {
        Blueprint blueprint = new Blueprint(job);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < DESIGNS; i++) {
            String gauge = i == 5 ? "-1 mm" : 2 + 0.05 * i + " mm";
            points.add(blueprint.point(List.of(new Patch(List.of("laminates", "skin", "thickness"), gauge))));
        }
        return points;
    }

    @Test
    void aWorkerKilledInTheMiddleCostsTimeAndNoRow() throws IOException {
        Job job = job();
        List<Point> points = points(job);
        int[] left = {0};
        List<Optional<Row>> there;
        try (RowStore store = RowStore.open(folder.resolve("cluster"));
                StudyRunner runner = Elsewhere.found().orElseThrow().at(cluster.address())) {
            Campaign campaign = new Campaign(store, runner);
            // Both at work: the second run finds the place taken by the first.
            campaign.run(job, points.subList(0, 4), new Campaign.Listener() {});
            Campaign.Outcome outcome = campaign.run(job, points, new Campaign.Listener() {
                @Override
                public void progress(Campaign.Count count) {
                    if (count.done() == 6) {
                        left[0] = count.left();
                        SmallCluster.pull(first);
                    }
                }
            });
            there = outcome.rows();
            assertEquals(1, outcome.count().failed());
        }
        assertTrue(left[0] > DESIGNS / 2, left[0] + " designs were open when the worker was killed");
        assertTrue(!first.isAlive());
        try (RowStore store = RowStore.open(folder.resolve("here"))) {
            assertEquals(
                    new Campaign(store, new LocalCores())
                            .run(job, points, new Campaign.Listener() {})
                            .rows(),
                    there);
        }
        try (RowStore store = RowStore.open(folder.resolve("cluster"))) {
            for (int i = 0; i < DESIGNS; i++) {
                assertEquals(there.get(i), store.find(points.get(i).key(), job.readings()), "kept");
            }
        }
    }

    @Test
    void whoeverSaysStopIsObeyedAndKeepsWhatIsThere() throws IOException {
        Job job = job();
        List<Row> rows = new ArrayList<>();
        try (StudyRunner runner = Elsewhere.found().orElseThrow().at(cluster.address())) {
            runner.run(job, points(job), new Watch() {
                @Override
                public void done(Row row) {
                    rows.add(row);
                }

                @Override
                public boolean stop() {
                    return rows.size() >= 3;
                }
            });
        }
        assertTrue(rows.size() >= 3 && rows.size() < DESIGNS, rows.size() + " rows");
    }

    /** Elements of half a millimetre: more than the heap of a process holds. */
    @Test
    void aDesignThatBringsItsProcessDownIsKeptWithItsReasonAndTheStudyGoesOn() throws IOException {
        Job job = job();
        List<Point> points = new ArrayList<>(points(job).subList(0, 4));
        points.add(1, new Blueprint(job).point(List.of(new Patch(List.of("mesh", "size"), "0.5 mm"))));
        System.setProperty("spark.task.maxFailures", "2");
        try (RowStore store = RowStore.open(folder);
                StudyRunner runner = Elsewhere.found().orElseThrow().at(cluster.address())) {
            Campaign.Outcome outcome = new Campaign(store, runner).run(job, points, new Campaign.Listener() {});
            assertTrue(outcome.complete());
            assertEquals(1, outcome.count().failed());
            String reason = outcome.rows().get(1).orElseThrow().reason().orElseThrow();
            assertTrue(reason.startsWith("brings its process down, 2 times of 2"), reason);
        } finally {
            System.clearProperty("spark.task.maxFailures");
        }
    }

    @Test
    void anotherBuildOfTheProgramIsRefused() throws IOException {
        Job job = job();
        try (StudyRunner runner =
                new SparkRunner(MasterAddress.of(cluster.address()), Duration.ofSeconds(600), "0".repeat(64))) {
            FleetException told = assertThrows(FleetException.class, () -> runner.run(job, points(job), row -> {}));
            assertTrue(told.getMessage().contains("another build"), told.getMessage());
        }
    }

    @Test
    void aMasterWithoutWorkersIsWaitedForAndThenTold() throws IOException, InterruptedException {
        Files.createDirectories(folder.resolve("alone"));
        try (SmallCluster alone = new SmallCluster(folder.resolve("alone"));
                StudyRunner runner = new SparkRunner(
                        MasterAddress.of(alone.address()), Duration.ofSeconds(2), ProgramPrint.UNKNOWN)) {
            Job job = job();
            FleetException told = assertThrows(FleetException.class, () -> runner.run(job, points(job), row -> {}));
            assertTrue(told.getMessage().contains("no worker"), told.getMessage());
        }
    }

    @Test
    void aMasterThatCannotBeReachedIsNamedAtOnceAndRowsAreKept() throws IOException {
        Job job = job();
        List<Point> points = points(job);
        String nobody = "spark://127.0.0.1:" + SmallCluster.freePort();
        try (RowStore store = RowStore.open(folder)) {
            new Campaign(store, new LocalCores()).run(job, points.subList(0, 2), new Campaign.Listener() {});
            try (StudyRunner runner = Elsewhere.found().orElseThrow().at(nobody)) {
                long start = System.nanoTime();
                FleetException told = assertThrows(
                        FleetException.class,
                        () -> new Campaign(store, runner).run(job, points, new Campaign.Listener() {}));
                assertTrue(told.getMessage().startsWith("no master answers at " + nobody), told.getMessage());
                assertTrue(System.nanoTime() - start < 10e9);
            }
        }
        try (RowStore store = RowStore.open(folder)) {
            assertEquals(2, store.size());
        }
    }
}
