// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rows outlive the process that wrote them, whatever ended it, and are not computed again. */
class RowStoreTest {
    private static final List<String> MASS = List.of("mass");

    @TempDir
    private Path folder;

    @Test
    void whatIsHalfWrittenIsCutOffAndTheRestKept() throws IOException {
        try (RowStore store = RowStore.open(folder)) {
            store.add(Row.done("a", MASS, new double[] {1.0 / 3}));
            store.add(Row.failed("b", MASS, "no tub\n    at all\tthere"));
        }
        Path file = folder.resolve(RowStore.FILE_NAME);
        byte[] whole = Files.readAllBytes(file);
        for (int cut = 1; cut < 20; cut++) {
            Files.write(file, whole);
            Files.writeString(
                    file, "c\tdone\tmass\t0.123456789\t12345678\n".substring(0, cut), StandardOpenOption.APPEND);
            try (RowStore store = RowStore.open(folder)) {
                assertEquals(1.0 / 3, store.find("a", MASS).orElseThrow().value("mass"));
                assertEquals(
                        "no tub\n    at all\tthere",
                        store.find("b", MASS).orElseThrow().reason().orElseThrow());
                assertEquals(Optional.empty(), store.find("c", MASS));
            }
            assertArrayEquals(whole, Files.readAllBytes(file));
        }
        Files.writeString(file, "c\tdone\tmass\t0.5\t00000000\n", StandardOpenOption.APPEND);
        try (RowStore store = RowStore.open(folder)) {
            assertEquals(Optional.empty(), store.find("c", MASS), "a line whose sum is wrong is no row");
            store.add(Row.done("c", MASS, new double[] {2}));
        }
        try (RowStore store = RowStore.open(folder)) {
            assertEquals(2, store.find("c", MASS).orElseThrow().value("mass"));
        }
    }

    @Test
    void aSecondProcessIsToldToWait() {
        try (RowStore _ = RowStore.open(folder)) {
            FleetException told = assertThrows(FleetException.class, () -> RowStore.open(folder));
            assertTrue(told.getMessage().contains("under way"), told::getMessage);
        }
    }

    @Test
    void aFullDiskKeepsWhatWasFinished() throws IOException {
        // The device that is always full: writing to it ends as on a disk without room.
        Path full = Path.of("/dev/full");
        org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(full));
        Files.createSymbolicLink(folder.resolve(RowStore.FILE_NAME), full);
        FleetException told = assertThrows(FleetException.class, () -> {
            try (RowStore store = RowStore.open(folder)) {
                store.add(Row.done("a", MASS, new double[] {1}));
            }
        });
        assertTrue(told.getMessage().contains("room"), told::getMessage);
    }

    @Test
    void rowsOfTheSameDesignAddUp() {
        try (RowStore store = RowStore.open(folder)) {
            store.add(Row.done("a", MASS, new double[] {1}));
            store.add(Row.done("a", List.of("plies"), new double[] {7}));
            Row both = store.find("a", List.of("plies", "mass")).orElseThrow();
            assertArrayEquals(new double[] {7, 1}, both.values());
        }
    }

    @Test
    void aStudyBrokenOffAndResumedEqualsOneInOneGo() {
        Job job = Tubes.job("torsional stiffness", "mass");
        Blueprint blueprint = new Blueprint(job);
        List<Point> points = new ArrayList<>();
        for (int w : new int[] {300, 350, -1, 400, 300, 450}) {
            points.add(blueprint.point(Tubes.width(w)));
        }
        String whole = run(folder.resolve("whole"), job, points, Integer.MAX_VALUE)
                .rows()
                .toString();
        Campaign.Outcome half = run(folder.resolve("parts"), job, points, 2);
        assertTrue(!half.complete() && half.count().done() >= 2, half::toString);
        Campaign.Outcome rest = run(folder.resolve("parts"), job, points, Integer.MAX_VALUE);
        assertEquals(whole, rest.rows().toString());
        assertEquals(half.count().done(), rest.count().known(), "nothing is computed twice");
        assertEquals(
                new Campaign.Count(5, 5, 0, 1),
                run(folder.resolve("parts"), job, points, 0).count());
    }

    private static Campaign.Outcome run(Path folder, Job job, List<Point> points, int most) {
        try (RowStore store = RowStore.open(folder)) {
            int[] done = {0};
            return new Campaign(store, new LocalCores(1)).run(job, points, new Campaign.Listener() {
                @Override
                public void progress(Campaign.Count count) {
                    done[0] = count.done();
                }

                @Override
                public boolean stop() {
                    return done[0] >= most;
                }
            });
        }
    }
}
