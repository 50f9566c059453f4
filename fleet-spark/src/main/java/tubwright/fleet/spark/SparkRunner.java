// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.net.InetAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
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
import tubwright.fleet.StudyRunner;
import tubwright.fleet.Watch;

/** Computes on the workers of a cluster. Keeps its place there until it is closed. */
final class SparkRunner implements StudyRunner {
    /** Parcels of a run at most: enough that 1600 cores end within a twelfth of each other, few enough for one driver. */
    private static final int PARCELS = 20_000;

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
        if (points.isEmpty()) {
            return;
        }
        JavaSparkContext here = place.filter(p -> !p.sc().isStopped()).orElseGet(this::begin);
        place = Optional.of(here);
        int parcels = Math.min(points.size(), PARCELS);
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
            collect(here.sc(), action, news, watch);
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
    private void collect(
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
                return;
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
        if (action.value().get().isFailure()) {
            throw broken(action.value().get().failed().get());
        }
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
