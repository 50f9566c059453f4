// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import tubwright.desk.text.Conversions;
import tubwright.engine.structure.Case;

/** The unit in which a case's stiffness is told. */
public enum StiffnessUnit {
    TORSION("N·m/deg", Conversions.perDegree(1), "torsional"),
    BENDING("N/mm", 1e-3, "bending");

    private final String text;
    private final double factor;
    private final String adjective;

    StiffnessUnit(String text, double factor, String adjective) {
        this.text = text;
        this.factor = factor;
        this.adjective = adjective;
    }

    /** The unit that suits a case. */
    public static StiffnessUnit of(Case loading) {
        return switch (loading) {
            case Case.Torsion _ -> TORSION;
            case Case.Bending _ -> BENDING;
            case Case.Loads loads -> throw new IllegalArgumentException(loads.name() + " has no stiffness");
        };
    }

    /** The unit as printed. */
    public String text() {
        return text;
    }

    /** A stiffness (N·m/rad or N/m) in this unit. */
    public double of(double si) {
        return factor * si;
    }

    /** "torsional" or "bending". */
    public String adjective() {
        return adjective;
    }
}
