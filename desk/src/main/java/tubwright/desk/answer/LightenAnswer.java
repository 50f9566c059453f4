// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.trim.Lightened;

/**
 * The lightest layup found for stiffness targets, and what is proved of it.
 *
 * @param tub name
 * @param variant name
 * @param goals stiffness targets, in the order of the bounds in {@code found}
 * @param massBefore kg
 * @param found the result
 * @param changes zones that change, in words and as stacks
 * @param unknowns of the mesh
 * @param version of the program
 */
public record LightenAnswer(
        String tub,
        String variant,
        List<Goal> goals,
        double massBefore,
        Lightened found,
        List<Change> changes,
        int unknowns,
        String version) {
    public LightenAnswer {
        goals = List.copyOf(goals);
        changes = List.copyOf(changes);
    }

    /**
     * One stiffness target.
     *
     * @param loading name of the case
     * @param unit in which stiffness is told
     * @param least what is asked, between loaded and held hardpoints; N·m/rad or N/m
     * @param before stiffness before, the same way
     * @param sectionBefore read between skin sections
     * @param sectionAfter the same for the new layup, solved anew
     */
    public record Goal(
            String loading,
            StiffnessUnit unit,
            double least,
            double before,
            double sectionBefore,
            double sectionAfter) {}

    /**
     * A zone that changes.
     *
     * @param zone name
     * @param words what the laminator leaves out
     * @param before orientation code
     * @param after orientation code
     * @param mass given back, kg
     */
    public record Change(String zone, String words, String before, String after, double mass) {}
}
