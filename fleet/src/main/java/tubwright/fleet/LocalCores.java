// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import tubwright.numerics.Parallel;

/** Computes on the cores of this machine: one design on each at a time, each on one thread. */
public final class LocalCores implements StudyRunner {
    /** How long the caller sleeps between asking whether to stop, ms. */
    private static final long NAP = 100;

    private final int workers;

    /** On all cores the program may use. */
    public LocalCores() {
        this(Parallel.threads());
    }

    /** @param workers designs at a time, at least one */
    public LocalCores(int workers) {
        this.workers = Math.max(1, workers);
    }

    @Override
    public String where() {
        return workers == 1 ? "one core of this machine" : workers + " cores of this machine";
    }

    /** A row, or what broke a worker. */
    private sealed interface News {
        record Done(Row row) implements News {}

        record Broken(Throwable by) implements News {}

        record Ended() implements News {}
    }

    @Override
    public void run(Job job, List<Point> points, Watch watch) {
        if (points.isEmpty()) {
            return;
        }
        Computation computation = new Computation(job);
        AtomicInteger next = new AtomicInteger();
        AtomicBoolean stop = new AtomicBoolean();
        LinkedBlockingQueue<News> news = new LinkedBlockingQueue<>();
        int count = Math.min(workers, points.size());
        for (int w = 0; w < count; w++) {
            Thread.ofPlatform().daemon().name("study-" + w).start(() -> {
                try {
                    for (int i = next.getAndIncrement(); i < points.size() && !stop.get(); i = next.getAndIncrement()) {
                        news.add(new News.Done(computation.row(points.get(i), stop::get)));
                    }
                } catch (CancellationException told) {
                    // Asked for.
                } catch (RuntimeException | Error broken) {
                    news.add(new News.Broken(broken));
                } finally {
                    news.add(new News.Ended());
                }
            });
        }
        try {
            collect(news, count, watch, stop);
        } finally {
            stop.set(true);
        }
    }

    /** Hands rows on until all workers have ended, so that nothing runs on behind the caller's back. */
    private static void collect(LinkedBlockingQueue<News> news, int workers, Watch watch, AtomicBoolean stop) {
        Throwable broken = null;
        for (int running = workers; running > 0; ) {
            if (watch.stop()) {
                stop.set(true);
            }
            try {
                switch (news.poll(NAP, TimeUnit.MILLISECONDS)) {
                    case null -> {}
                    case News.Done(Row row) -> {
                        if (broken == null) {
                            watch.done(row);
                        }
                    }
                    case News.Broken(Throwable by) -> broken = broken == null ? by : broken;
                    case News.Ended _ -> running--;
                }
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new CancellationException("interrupted");
            } catch (RuntimeException | Error e) {
                broken = e;
            }
            if (broken != null) {
                stop.set(true);
            }
        }
        switch (broken) {
            case null -> {}
            case OutOfMemoryError _ ->
                throw new FleetException(
                        "there is not memory enough for " + workers + " designs at a time",
                        "fewer workers (--workers 1), more memory (TUBWRIGHT_JAVA_OPTIONS=-Xmx8g) or a coarser mesh"
                                + " (--mesh); finished designs are kept");
            case RuntimeException e -> throw e;
            case Error e -> throw e;
            default -> throw new IllegalStateException(broken);
        }
    }
}
