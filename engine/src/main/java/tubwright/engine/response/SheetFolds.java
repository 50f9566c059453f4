// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.joint.FastenerChecks;
import tubwright.engine.joint.LineLoad;
import tubwright.engine.joint.ShearPanel;
import tubwright.engine.strength.Check;

/**
 * What the folds of buckled sheet pull on the rivets along its edges in one case: k q square to the row, on top of the shear
 * flow q (Kuhn, Peterson and Levin 1952, NACA TN 2661, whose q (1 + 0.414 k) is a straight line for the sum of both).
 *
 * @param panels of sheet
 * @param stresses mean shear stress of each, Pa, without sign
 * @param panelOf panel of each element; −1 where it is in none
 */
record SheetFolds(List<ShearPanel> panels, double[] stresses, int[] panelOf) {
    /** Rounds of factor and pull; each comes nearer from the other side, the last from below. */
    private static final int ROUNDS = 3;

    /**
     * The reserves of rows of fasteners with the pull of the folds of the sheets they hold. The folds' share k rises with the
     * load, so that a factor is that at which rows give way under the pull there is at that load.
     *
     * @param rows the rows
     * @param load what they carry without folds
     * @param elements next to the row whose folds pull on it
     */
    List<Check> under(FastenerChecks rows, LineLoad load, int... elements) {
        List<Check> checks = rows.under(load);
        if (pull(100, elements) == 0) {
            return checks;
        }
        List<Check> least = new ArrayList<>();
        for (Check check : checks(rows, load, largestPull(elements))) {
            least.add(check instanceof Check.Reserve made ? settle(made, rows, load, elements) : check);
        }
        return least;
    }

    /** @param lowest the row under the pull of complete diagonal tension */
    private Check settle(Check.Reserve lowest, FastenerChecks rows, LineLoad load, int[] elements) {
        Check.Reserve now = lowest;
        for (int i = 1; i < ROUNDS && now.reserveFactor() < Double.POSITIVE_INFINITY; i++) {
            for (Check check : checks(rows, load, pull(now.reserveFactor(), elements))) {
                if (check instanceof Check.Reserve made && made.mode().equals(lowest.mode())) {
                    now = made;
                }
            }
        }
        return now;
    }

    private static List<Check> checks(FastenerChecks rows, LineLoad load, double pull) {
        double across = Math.abs(load.across()) + pull;
        return rows.under(new LineLoad(across, load.along(), load.normal(), load.moment()));
    }

    private double largestPull(int[] elements) {
        double pull = 0;
        for (int e : elements) {
            if (panelOf[e] >= 0) {
                pull = Math.max(
                        pull, stresses[panelOf[e]] * panels.get(panelOf[e]).thickness());
            }
        }
        return pull;
    }

    /** Pull at a multiple of the load, over that multiple, N/m: the larger of the sheets'. */
    private double pull(double factor, int... elements) {
        double pull = 0;
        for (int e : elements) {
            if (panelOf[e] >= 0) {
                ShearPanel panel = panels.get(panelOf[e]);
                double tau = factor * stresses[panelOf[e]];
                if (tau > panel.bucklingStress()) {
                    pull = Math.max(pull, panel.under(tau).foldPull() / factor);
                }
            }
        }
        return pull;
    }
}
