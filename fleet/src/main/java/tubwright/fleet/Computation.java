// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;
import tubwright.numerics.Parallel;

/** Points to rows. Made once for a job; may be used by many threads at a time, each call keeping to one. */
public final class Computation {
    private final Job job;
    private final Blueprint blueprint;
    private final List<Reading> readings;

    /**
     * @throws DesignError if the document is no YAML or lacks the variant
     * @throws IllegalArgumentException if a reading is none
     */
    public Computation(Job job) {
        this.job = job;
        blueprint = new Blueprint(job);
        readings = job.readings().stream().map(Reading::of).toList();
    }

    /**
     * The row of a point: the same bits wherever and beside whatever it is computed. What is wrong with the design itself
     * makes a row with a reason.
     *
     * @param stop asked now and then
     * @throws CancellationException when that says so
     */
    public Row row(Point point, BooleanSupplier stop) {
        return Parallel.alone(() -> {
            try {
                return Row.done(point.key(), job.readings(), values(point, stop));
            } catch (CancellationException told) {
                throw told;
            } catch (RuntimeException fault) {
                return Row.failed(point.key(), job.readings(), Objects.toString(fault.getMessage(), fault.toString()));
            } catch (StackOverflowError deep) {
                return Row.failed(point.key(), job.readings(), "the design leads nowhere: " + deep);
            }
        });
    }

    private double[] values(Point point, BooleanSupplier stop) {
        Design design = blueprint.design(point.patches());
        try {
            Measured measured = new Measured(design.asDesigned(), job.meshSize(), stop);
            double[] values = new double[readings.size()];
            for (int r = 0; r < values.length; r++) {
                values[r] = measured.value(readings.get(r));
                if (!Double.isFinite(values[r])) {
                    throw new FleetException(readings.get(r).text() + " comes to " + values[r], "");
                }
            }
            return values;
        } catch (CancellationException | FleetException told) {
            throw told;
        } catch (RuntimeException fault) {
            throw design.explain(fault);
        }
    }
}
