// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.Optional;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Metal;

/**
 * How a joint is made: what its strength is found from. What it joins comes from the laminates on either side.
 *
 * @param bond the bond line, if there is one
 * @param fasteners the rows of rivets or bolts, if there are any
 */
public record JointDetail(Optional<Bond> bond, Optional<Fasteners> fasteners) {
    /** Nothing known but its stiffness. */
    public static final JointDetail UNKNOWN = new JointDetail(Optional.empty(), Optional.empty());

    /** How the bonded faces lie. */
    public enum Lie {
        /** One face. */
        SINGLE_LAP,
        /** Two faces back to back. */
        DOUBLE_LAP,
        /** Two legs side by side at the edge of a wall. */
        TEE;

        /** Number of bonded faces side by side or back to back. */
        public int faces() {
            return this == SINGLE_LAP ? 1 : 2;
        }
    }

    /**
     * A bond line.
     *
     * @param lie how its faces lie
     * @param adhesive what it is made of
     * @param thickness of the adhesive, m
     * @param overlap width of the bonded face (of each leg in a tee), m
     * @param tape what makes the second face or the legs
     */
    public record Bond(Lie lie, Adhesive adhesive, double thickness, double overlap, Optional<Laminate> tape) {}

    /**
     * Rows of fasteners in single shear.
     *
     * @param diameter of the shank, m
     * @param headDiameter of the head, m
     * @param pitch along the row, m
     * @param rows number of them
     * @param rowSpacing between rows, m; 0 for a single one
     * @param edge distance of the outermost row from the edge of the sheet, m
     * @param metal of the fasteners
     * @param head how it holds the sheet against buckling between fasteners
     * @param flexibility formula for the share of the rows
     */
    public record Fasteners(
            double diameter,
            double headDiameter,
            double pitch,
            int rows,
            double rowSpacing,
            double edge,
            Metal metal,
            InterRivetBuckling.Head head,
            FastenerFlexibility flexibility) {}
}
