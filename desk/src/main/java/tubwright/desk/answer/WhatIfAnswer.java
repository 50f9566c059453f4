// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.trim.Interval;

/**
 * What a change of layup does.
 *
 * @param tub name
 * @param variant name
 * @param loading name of the case
 * @param unit in which stiffness is told
 * @param changes in words
 * @param before stiffness as designed, between loaded and held hardpoints; N·m/rad or N/m
 * @param sectionBefore the same read between skin sections
 * @param after bounds on the stiffness after the change
 * @param massBefore kg
 * @param massAfter kg
 * @param instant whether the reduced model alone answered
 * @param substitutions back-substitutions spent
 * @param answerSeconds seconds of a second asking, when fields and Gramians are at hand
 * @param unknowns of the mesh
 * @param version of the program
 */
public record WhatIfAnswer(
        String tub,
        String variant,
        String loading,
        StiffnessUnit unit,
        List<String> changes,
        double before,
        double sectionBefore,
        Interval after,
        double massBefore,
        double massAfter,
        boolean instant,
        int substitutions,
        double answerSeconds,
        int unknowns,
        String version) {
    public WhatIfAnswer {
        changes = List.copyOf(changes);
    }
}
