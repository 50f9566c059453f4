// SPDX-License-Identifier: Apache-2.0
package tubwright.numerics;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/**
 * Runs numbered tasks on all cores. Which thread takes which task is left to chance, so a task must own what it writes;
 * then results do not depend on timing.
 */
public final class Parallel {
    private static final int THREADS = Math.max(
            1, Integer.getInteger("tubwright.threads", Runtime.getRuntime().availableProcessors()));

    private static final int CHUNK = 1 << 17;

    private Parallel() {}

    /**
     * Number of threads used here: inside a pool of one's own that pool's, as for parallel streams; else system property
     * {@code tubwright.threads}, else the number of processors.
     */
    public static int threads() {
        ForkJoinPool own = ForkJoinTask.getPool();
        return own == null || own == ForkJoinPool.commonPool() ? THREADS : Math.min(THREADS, own.getParallelism());
    }

    /**
     * Does a work on one thread, whatever it holds of parallel loops and streams, so that many such works may run side by
     * side without getting into each other's way. Equal works give equal bits, however many run.
     *
     * @return what the work gives, which may not be null
     */
    public static <T> T alone(Supplier<T> work) {
        AtomicReference<T> result = new AtomicReference<>();
        AtomicReference<Throwable> failure = new AtomicReference<>();
        ClassLoader loader = Thread.currentThread().getContextClassLoader();
        // A parallel stream begun by a thread of a pool stays in that pool.
        try (ForkJoinPool one = new ForkJoinPool(1)) {
            one.submit(() -> {
                        Thread.currentThread().setContextClassLoader(loader);
                        try {
                            result.set(work.get());
                        } catch (RuntimeException | Error e) {
                            failure.set(e);
                        }
                    })
                    .join();
        }
        if (failure.get() != null) {
            throw rethrown(failure.get());
        }
        return result.get();
    }

    /**
     * Runs {@code task} for 0 to {@code tasks - 1}, in rising order of start, and returns when all are done. The calling
     * thread takes part. The first exception thrown by a task is thrown here, after the running tasks have ended.
     */
    public static void run(int tasks, IntConsumer task) {
        int helpers = Math.min(threads(), tasks) - 1;
        if (helpers <= 0) {
            for (int i = 0; i < tasks; i++) {
                task.accept(i);
            }
            return;
        }
        AtomicInteger next = new AtomicInteger();
        Runnable worker = () -> {
            try {
                for (int i = next.getAndIncrement(); i < tasks; i = next.getAndIncrement()) {
                    task.accept(i);
                }
            } catch (RuntimeException | Error failure) {
                next.set(tasks);
                throw failure;
            }
        };
        // A helper whose turn never comes, because the pool's threads wait for a lock the caller holds, is not waited
        // for.
        AtomicBoolean[] claimed = new AtomicBoolean[helpers];
        ForkJoinPool own = ForkJoinTask.getPool();
        ForkJoinPool pool = own == null ? ForkJoinPool.commonPool() : own;
        List<ForkJoinTask<?>> running = new ArrayList<>(helpers);
        for (int i = 0; i < helpers; i++) {
            AtomicBoolean mine = new AtomicBoolean();
            claimed[i] = mine;
            running.add(pool.submit(() -> {
                if (mine.compareAndSet(false, true)) {
                    worker.run();
                }
            }));
        }
        Throwable first = null;
        try {
            worker.run();
        } catch (RuntimeException | Error failure) {
            first = failure;
        }
        for (int i = 0; i < helpers; i++) {
            ForkJoinTask<?> helper = running.get(i);
            if (claimed[i].compareAndSet(false, true)) {
                continue;
            }
            helper.quietlyJoin();
            if (first == null) {
                first = helper.getException();
            }
        }
        if (first != null) {
            throw rethrown(first);
        }
    }

    /** Work on a range of entries. */
    @FunctionalInterface
    public interface RangeTask {
        /** Does the entries from the first to before the last. */
        void run(int from, int to);
    }

    /** Splits the entries of a long array into ranges and runs them on all cores. */
    public static void chunks(int length, RangeTask task) {
        int parts = (length + CHUNK - 1) / CHUNK;
        run(parts, part -> task.run(part * CHUNK, (int) Math.min(length, (part + 1L) * CHUNK)));
    }

    private static RuntimeException rethrown(Throwable failure) {
        Throwable cause = failure;
        // The pool wraps an exception of another thread in a copy of itself whose cause is the original.
        while (cause.getCause() != null && cause.getCause().getClass() == cause.getClass()) {
            cause = cause.getCause();
        }
        if (cause instanceof Error error) {
            throw error;
        }
        return cause instanceof RuntimeException exception ? exception : new IllegalStateException(cause);
    }
}
