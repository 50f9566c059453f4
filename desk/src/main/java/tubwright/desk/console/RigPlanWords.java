// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.percent;
import static tubwright.desk.text.Figures.significant;

import tubwright.engine.rig.plan.Restraint;
import tubwright.engine.rig.plan.TestPlan;
import tubwright.engine.rig.plan.TestPlanner;

/** Sentences about a planned test, the same on the console and on the sheet. */
public final class RigPlanWords {
    /** What to heed when a structure is loaded. */
    public static final String CAUTION =
            "Loading a structure held by bolts and pulled by a jack can hurt people: secure the load against falling, stand"
                    + " clear of it, go up step by step, read at every step, and stop when a reading no longer follows or"
                    + " anything cracks.";

    private static final String GAP = " ";

    private RigPlanWords() {}

    /** How far the test may go and why. */
    public static String strength(TestPlan plan) {
        if (plan.weakest().isEmpty()) {
            return "How far it may be loaded is not known: " + String.join("; ", plan.notChecked()) + ".";
        }
        var weakest = plan.weakest().get();
        double factor = weakest.value() * Math.abs(plan.loading().couple()) / plan.torque();
        return "At that torque the lowest reserve factor is " + significant(factor, 2, GAP) + " (" + weakest.zone()
                + ", "
                + weakest.check() + (weakest.mode().isEmpty() ? "" : ", " + weakest.mode()) + "); " + TestPlanner.MARGIN
                + " is left at " + significant(plan.safeTorque(), 3, GAP) + " N·m."
                + (factor < TestPlanner.MARGIN ? " That is less than a test should leave: load less far." : "")
                + (plan.notChecked().isEmpty()
                        ? ""
                        : " Not everything could be checked, for want of strengths:"
                                + " \"tubwright run\" with the test as a load case lists what.");
    }

    /** Whether the tub is held too much. */
    public static String restraint(Restraint restraint) {
        if (restraint.held() <= 6) {
            return "It is held in " + restraint.held() + " directions: enough, and not more.";
        }
        if (restraint.least().isEmpty()) {
            return "It is held in " + restraint.held() + " directions; which six of them would do could not be found.";
        }
        return "It is held in " + restraint.held() + " directions where six would do, which makes it read "
                + percent(restraint.excess()) + " stiffer. Just held is: " + String.join("; ", restraint.least()) + ".";
    }
}
