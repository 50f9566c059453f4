// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.spark.TaskContext;
import org.apache.spark.broadcast.Broadcast;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;
import tubwright.fleet.Computation;
import tubwright.fleet.Job;
import tubwright.fleet.Point;
import tubwright.fleet.Row;

/** What a worker does with a parcel of points: lines of text in, a Parquet file of their rows out. */
final class ParcelTask extends AbstractFunction1<Iterator<String>, byte[]> implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Computations are made once a process; variants of a study come one after the other. */
    private static final int KEPT = 4;

    private static final Map<String, Computation> MADE = new LinkedHashMap<>();

    private final Broadcast<String> job;
    private final String program;

    /**
     * @param job its line
     * @param program whose keys these are, by {@link ProgramPrint}
     */
    ParcelTask(Broadcast<String> job, String program) {
        this.job = job;
        this.program = program;
    }

    @Override
    public byte[] apply(Iterator<String> points) {
        TaskContext context = TaskContext.get();
        String line = job.value();
        Computation computation = computation(line, program);
        List<Row> rows = new ArrayList<>();
        while (points.hasNext()) {
            rows.add(computation.row(Point.of(points.next()), context::isInterrupted));
        }
        return ParquetRows.write(Job.of(line).readings(), rows);
    }

    private static synchronized Computation computation(String line, String program) {
        if (ProgramPrint.differ(program, Here.PRINT)) {
            throw new OtherProgramException();
        }
        Computation known = MADE.remove(line);
        Computation used = known == null ? new Computation(Job.of(line)) : known;
        MADE.put(line, used);
        if (MADE.size() > KEPT) {
            MADE.remove(MADE.keySet().iterator().next());
        }
        return used;
    }

    /** Read when a worker first needs it. */
    private static final class Here {
        static final String PRINT = ProgramPrint.here();

        private Here() {}
    }

    /** A worker that runs another build. */
    static final class OtherProgramException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        OtherProgramException() {
            super("the worker's program is not that of the study");
        }
    }
}
