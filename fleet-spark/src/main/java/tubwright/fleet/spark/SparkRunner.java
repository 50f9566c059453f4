// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.net.InetAddress;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.apache.spark.SimpleFutureAction;
import org.apache.spark.SparkConf;
import org.apache.spark.SparkContext;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import scala.jdk.javaapi.CollectionConverters;
import scala.runtime.BoxedUnit;
import tubwright.fleet.FleetException;
import tubwright.fleet.Job;
import tubwright.fleet.Point;
import tubwright.fleet.Row;
import tubwright.fleet.StudyRunner;
import tubwright.fleet.Watch;

/** Computes on the workers of a cluster. Keeps its place there until it is closed. */
final class SparkRunner implements StudyRunner {
    /** Parcels of a run at most: enough that 1600 cores end within a twelfth of each other, few enough for one driver. */
    private static final int PARCELS = 20_000;

    /** So many designs, one after the other with no row between, may bring down their processes: then it is not the designs. */
    private static final int FATAL_IN_A_ROW = 3;

    /** How long the caller sleeps between asking whether to stop, ms. */
    private static final long NAP = 100;

    private final MasterAddress master;
    private final Duration patience;
    private final String program;
    private Optional<JavaSparkContext> place = Optional.empty();

    /**
     * @param patience how long to wait for any worker
     * @param program what computes, by {@link ProgramPrint}
     */
    SparkRunner(MasterAddress master, Duration patience, String program) {
        this.master = master;
        this.patience = patience;
        this.program = program;
    }

    @Override
    public String where() {
        return "the cluster at " + master.text();
    }

    @Override
    public void run(Job job, List<Point> points, Watch watch) {
        Map<String, Point> open = new LinkedHashMap<>();
        points.forEach(p -> open.put(p.key(), p));
        boolean[] stopped = {false};
        int[] inARow = {0};
        Watch counting = new Watch() {
            @Override
            public void done(Row row) {
                open.remove(row.key());
                inARow[0] = 0;
                watch.done(row);
            }

            @Override
            public boolean stop() {
                stopped[0] |= watch.stop();
                return stopped[0];
            }
        };
        Deque<List<Point>> batches = new ArrayDeque<>(List.of(points));
        while (!batches.isEmpty() && !stopped[0]) {
            List<Point> batch = stillOpen(batches.pop(), open);
            if (batch.isEmpty()) {
                continue;
            }
            int parcels = Math.min(batch.size(), PARCELS);
            Optional<Fatal> fatal = attempt(job, batch, parcels, counting);
            if (fatal.isPresent()) {
                List<Point> suspects = stillOpen(fatal.get().among(batch, parcels), open);
                batches.push(stillOpen(batch, open).stream()
                        .filter(p -> !suspects.contains(p))
                        .toList());
                if (suspects.size() == 1) {
                    if (++inARow[0] > FATAL_IN_A_ROW) {
                        throw broken(fatal.get().by());
                    }
                    open.remove(suspects.getFirst().key());
                    watch.done(fatal.get().row(suspects.getFirst(), job));
                } else {
                    batches.push(suspects); // each in a parcel of its own
                }
            }
        }
    }

    private static List<Point> stillOpen(List<Point> points, Map<String, Point> open) {
        return points.stream().filter(p -> open.containsKey(p.key())).toList();
    }

    /**
     * Sends points to the cluster and hands rows on until all are there or somebody says stop.
     *
     * @return the parcel that brought down every process it was given to, where there was one
     */
    private Optional<Fatal> attempt(Job job, List<Point> points, int parcels, Watch watch) {
        JavaSparkContext here = place.filter(p -> !p.sc().isStopped()).orElseGet(this::begin);
        place = Optional.of(here);
        Broadcast<String> shared = here.broadcast(job.line());
        LinkedBlockingQueue<byte[]> news = new LinkedBlockingQueue<>();
        List<Object> numbers = new ArrayList<>();
        for (int i = 0; i < parcels; i++) {
            numbers.add(i);
        }
        SimpleFutureAction<BoxedUnit> action = here.sc()
                .submitJob(
                        here.parallelize(points.stream().map(Point::line).toList(), parcels)
                                .rdd(),
                        new ParcelTask(shared, program),
                        CollectionConverters.asScala(numbers).toSeq(),
                        (Object _, byte[] file) -> {
                            news.add(file);
                            return BoxedUnit.UNIT;
                        },
                        () -> BoxedUnit.UNIT);
        try {
            return collect(here.sc(), action, news, watch);
        } finally {
            if (!action.isCompleted()) {
                action.cancel();
            }
            if (!here.sc().isStopped()) {
                shared.destroy();
            }
        }
    }

    private JavaSparkContext begin() {
        InetAddress own = master.reached();
        SparkConf settings = ClusterSettings.of(master.text(), own);
        try {
            return new JavaSparkContext(settings);
        } catch (RuntimeException refused) {
            throw new FleetException(
                    "the master at " + master.text() + " takes no study: " + reason(refused),
                    "is it a master of the version that this program brings? all finished rows are kept");
        }
    }

    /** Hands rows on as they come, until the engine is done or somebody has had enough. */
    private Optional<Fatal> collect(
            SparkContext context, SimpleFutureAction<BoxedUnit> action, LinkedBlockingQueue<byte[]> news, Watch watch) {
        long alone = System.nanoTime();
        while (true) {
            boolean ended = action.isCompleted(); // asked before looking for news: none can come after
            byte[] file = next(news);
            if (file != null) {
                ParquetRows.read(file).forEach(watch::done);
            } else if (ended) {
                break;
            }
            if (watch.stop()) {
                return Optional.empty();
            }
            if (file != null || workers(context) > 0) {
                alone = System.nanoTime();
            } else if (System.nanoTime() - alone > patience.toNanos()) {
                throw new FleetException(
                        "no worker of the cluster at " + master.text() + " has been there for " + patience.toSeconds()
                                + " s",
                        "start workers, with as much memory as one asks for (spark.executor.memory,"
                                + " docs/how-to/send-a-study-to-a-cluster.md); all finished rows are kept");
            }
        }
        if (!action.value().get().isFailure()) {
            return Optional.empty();
        }
        Throwable by = action.value().get().failed().get();
        Optional<Fatal> fatal = Fatal.of(by);
        if (fatal.isEmpty()) {
            throw broken(by);
        }
        return fatal;
    }

    private static byte[] next(LinkedBlockingQueue<byte[]> news) {
        try {
            return news.poll(NAP, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new CancellationException("interrupted");
        }
    }

    /** Processes of the workers that are there for this study; the driver counts as one of those told of. */
    private static int workers(SparkContext context) {
        return context.isStopped() ? 0 : context.statusTracker().getExecutorInfos().length - 1;
    }

    private FleetException broken(Throwable by) {
        if (String.valueOf(by.getMessage()).contains(ParcelTask.OtherProgramException.class.getName())) {
            return new FleetException(
                    "the workers at " + master.text() + " run another build of the program than this one",
                    "build both from the same sources and copy the cluster's folder to every machine again;"
                            + " docs/how-to/send-a-study-to-a-cluster.md");
        }
        return new FleetException(
                "the cluster at " + master.text() + " has given up: " + reason(by),
                "its workers' logs say more (folder work); all finished rows are kept, and the same command goes on");
    }

    /** The first line that says something: the engine puts whole stacks of the workers into its messages. */
    private static String reason(Throwable fault) {
        String message = fault.getMessage();
        return message == null || message.isBlank()
                ? fault.getClass().getSimpleName()
                : message.strip().lines().findFirst().orElseThrow();
    }

    @Override
    public void close() {
        place.ifPresent(JavaSparkContext::close);
        place = Optional.empty();
    }
}
