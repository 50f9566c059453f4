// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import java.util.List;
import java.util.Optional;
import tubwright.engine.response.Reserve;
import tubwright.engine.rig.explain.Doubt;
import tubwright.engine.rig.statistics.Uncertainty;
import tubwright.engine.structure.Case;

/**
 * A torsion test planned.
 *
 * @param tub name
 * @param loading the case that stands for the test
 * @param means what it is made with, its greatest torque settled
 * @param heldStation mean station of the held hardpoints, m
 * @param loadedStation mean station of the loaded ones, m
 * @param weakest what gives way first under the torque, its reserve factor for the case's couple; empty where nothing
 *     could be checked
 * @param notChecked what could not be checked, in words
 * @param safeTorque torque at which the lowest reserve factor is still {@link TestPlanner#MARGIN}, N·m; NaN where
 *     nothing could be checked
 * @param restraint how it is held
 * @param stiffness expected, N·m/rad
 * @param pairs gauge pairs in order of choice: the held end, the loaded end, then by gain
 * @param doubts of the tub
 * @param left share of each doubt's spread that the test will leave
 * @param budget expected standard uncertainties of the stiffness, N·m/rad
 * @param rigNeeded stiffness that the rig needs, N·m/rad, see {@link TestPlanner#RIG}
 * @param outline of the tub for a drawing: rows of station, lowest z, highest z, greatest half width, m
 */
public record TestPlan(
        String tub,
        Case.Torsion loading,
        Means means,
        double heldStation,
        double loadedStation,
        Optional<Reserve> weakest,
        List<String> notChecked,
        double safeTorque,
        Restraint restraint,
        double stiffness,
        List<GaugePair> pairs,
        List<Doubt> doubts,
        double[] left,
        Uncertainty budget,
        double rigNeeded,
        List<double[]> outline) {
    public TestPlan {
        notChecked = List.copyOf(notChecked);
        pairs = List.copyOf(pairs);
        doubts = List.copyOf(doubts);
        outline = List.copyOf(outline);
    }

    /** Greatest torque, N·m. */
    public double torque() {
        return means.greatestTorque().orElseThrow();
    }

    /** Twist expected between the ends at the greatest torque, rad. */
    public double twist() {
        return torque() / stiffness;
    }

    /** Half-width of the expected 95 % interval of the stiffness, N·m/rad. */
    public double expanded() {
        return budget.expanded(0.95);
    }

    /** Torque of each step on the way up, N·m, zero first. */
    public double[] torques() {
        double[] torques = new double[means.steps() + 1];
        for (int i = 0; i < torques.length; i++) {
            torques[i] = torque() * i / means.steps();
        }
        return torques;
    }
}
