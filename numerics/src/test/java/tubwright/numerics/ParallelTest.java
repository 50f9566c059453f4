// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Numbered tasks are each run once, whatever else the pool is busy with. */
class ParallelTest {
    @Test
    void everyTaskIsRunOnceThoughThePoolWaitsForALockTheCallerHolds() {
        int waiting = ForkJoinPool.getCommonPoolParallelism() + 1;
        AtomicIntegerArray runs = new AtomicIntegerArray(50);
        CountDownLatch release = new CountDownLatch(1);
        List<ForkJoinTask<?>> blocked = new ArrayList<>();
        for (int i = 0; i < waiting; i++) {
            blocked.add(ForkJoinPool.commonPool().submit(() -> {
                release.await();
                return true;
            }));
        }
        assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
            Parallel.run(runs.length(), runs::incrementAndGet);
            release.countDown();
        });
        blocked.forEach(ForkJoinTask::join);
        for (int i = 0; i < runs.length(); i++) {
            assertEquals(1, runs.get(i));
        }
    }

    @Test
    void aWorkAloneKeepsItsLoopsAndStreamsToOneThread() {
        Set<Thread> seen = ConcurrentHashMap.newKeySet();
        int threads = Parallel.alone(() -> {
            Parallel.run(20, _ -> seen.add(Thread.currentThread()));
            IntStream.range(0, 1000).parallel().forEach(_ -> seen.add(Thread.currentThread()));
            return Parallel.threads();
        });
        assertEquals(1, threads);
        assertEquals(1, seen.size());
    }

    @Test
    void whatGoesWrongInAWorkAloneIsThrownAsItWas() {
        assertThrows(
                ArithmeticException.class,
                () -> Parallel.alone(() -> {
                    throw new ArithmeticException("as it was");
                }));
    }
}
