// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import java.util.List;

/** Computes the points of a job somewhere. */
public interface StudyRunner extends AutoCloseable {
    /** Where, in a few words: {@code 2 cores of this machine}. */
    String where();

    /**
     * Computes points, in any order and any number of them at a time. Returns when every row has been handed to the watch,
     * or when that says stop. A design that cannot be is a row like any other.
     *
     * @param job what is common to all
     * @param points to compute, no key twice
     * @param watch hears of each row once
     * @throws FleetException where the runner itself cannot go on; rows told of before are good
     */
    void run(Job job, List<Point> points, Watch watch);

    /** Gives back what it holds between runs; most hold nothing. */
    @Override
    default void close() {}
}
