// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.nio.file.Path;
import java.util.List;

/**
 * A choice written into a design file, and what that file says when it is read and run again.
 *
 * @param file that was written
 * @param variant name of the variant that holds the choice
 * @param mass of the tub read again, kg
 * @param readings stiffness read again, one for each case
 */
public record KeptChoice(Path file, String variant, double mass, List<Reading> readings) {
    public KeptChoice {
        readings = List.copyOf(readings);
    }

    /**
     * Stiffness in one case.
     *
     * @param loading name of the case
     * @param unit in which it is told
     * @param stiffness between loaded and held hardpoints, N·m/rad or N/m
     */
    public record Reading(String loading, StiffnessUnit unit, double stiffness) {}
}
