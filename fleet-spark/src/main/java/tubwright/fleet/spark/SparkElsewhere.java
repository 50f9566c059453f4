// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.time.Duration;
import tubwright.fleet.Elsewhere;
import tubwright.fleet.StudyRunner;

/** The cluster's door in the program. */
public final class SparkElsewhere implements Elsewhere {
    /** System property: how long a study waits for any worker, s. */
    static final String PATIENCE = "tubwright.cluster.patience";

    @Override
    public StudyRunner at(String master) {
        return new SparkRunner(
                MasterAddress.of(master), Duration.ofSeconds(Long.getLong(PATIENCE, 90)), ProgramPrint.here());
    }
}
