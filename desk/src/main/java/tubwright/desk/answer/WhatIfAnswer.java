// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import tubwright.engine.trim.Interval;
import tubwright.engine.trim.Layup;

/**
 * What a change of layup does.
 *
 * @param tub name
 * @param variant name
 * @param loading name of the case
 * @param unit in which stiffness is told
 * @param changes in words
 * @param layup with the changes made
 * @param before stiffness as designed, between loaded and held hardpoints; N·m/rad or N/m
 * @param sectionBefore the same read between skin sections
 * @param after bounds on the stiffness after the change
 * @param others the other stiffness cases
 * @param pieces mass of each piece
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
        Layup layup,
        double before,
        double sectionBefore,
        Interval after,
        List<Other> others,
        List<Piece> pieces,
        double massBefore,
        double massAfter,
        boolean instant,
        int substitutions,
        double answerSeconds,
        int unknowns,
        String version) {
    public WhatIfAnswer {
        changes = List.copyOf(changes);
        others = List.copyOf(others);
        pieces = List.copyOf(pieces);
    }

    /**
     * What becomes of the stiffness in another case.
     *
     * @param loading name of the case
     * @param unit in which it is told
     * @param before as designed, N·m/rad or N/m
     * @param after bounds
     */
    public record Other(String loading, StiffnessUnit unit, double before, Interval after) {}

    /**
     * What becomes of a piece.
     *
     * @param name of it
     * @param before kg
     * @param after kg
     */
    public record Piece(String name, double before, double after) {}
}
