// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Optional;
import tubwright.desk.text.Figures;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.trim.Guard;
import tubwright.engine.trim.Ledger;
import tubwright.engine.trim.LedgerEntry;
import tubwright.engine.trim.Owner;

/**
 * A ply ledger and what belongs beside it.
 *
 * @param tub name
 * @param variant name
 * @param loading name of the case
 * @param unit in which stiffness is told
 * @param ledger the ledger
 * @param mesh it was computed on
 * @param unknowns of that mesh
 * @param hasLoads whether the design has load cases, watched or not
 * @param worth per element: stiffness lost for each kilogram, were its laminate thinned evenly; N·m/rad/kg or N/m/kg
 * @param stamp time
 * @param version of the program
 */
public record LedgerAnswer(
        String tub,
        String variant,
        String loading,
        StiffnessUnit unit,
        Ledger ledger,
        Mesh mesh,
        int unknowns,
        boolean hasLoads,
        double[] worth,
        String stamp,
        String version) {

    /** What an entry gives up, in words: {@code "45° pw-t650-976"}. */
    public static String words(LedgerEntry entry) {
        return switch (entry.kind()) {
            case PLY -> Math.round(entry.degrees()) + "° " + entry.material();
            case CORE -> "core " + Math.round(1e4 * entry.thickness()) / 10.0 + " mm thinner";
            case JOINT -> "half its stiffness";
        };
    }

    /** A factor with and without an entry: {@code "2.31 → 1.94"}; empty where none is told. */
    public static String factors(Optional<Guard> guard) {
        return guard.map(g -> Figures.significant(g.before(), 3, "") + " → " + Figures.significant(g.after(), 3, ""))
                .orElse("");
    }

    /** Where an entry's layer lies: {@code "flank 3"}, {@code "patch doublers 1"}, {@code "joint waist"}. */
    public static String place(LedgerEntry entry) {
        return switch (entry.owner()) {
            case Owner.Zone(String name) -> name + " " + entry.place();
            case Owner.Patch(String name) -> "patch " + name + " " + entry.place();
            case Owner.Joint(String name) -> "joint " + name;
        };
    }
}
