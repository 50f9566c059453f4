// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** Each stress against its own strength, no interaction (Jenkin 1920; Jones 1999, section 2.9.1). */
public final class MaximumStress {
    private MaximumStress() {}

    /** With these strengths. */
    public static PlyCriterion of(PlyStrengths s) {
        return new PlyCriterion(
                "maximum stress",
                "Jones 1999, section 2.9.1",
                new PlaneSurface(FailureMode.FIBRE_TENSION, 1 / s.xt(), 0, 0),
                new PlaneSurface(FailureMode.FIBRE_COMPRESSION, -1 / s.xc(), 0, 0),
                new PlaneSurface(s.across(1), 0, 1 / s.yt(), 0),
                new PlaneSurface(s.across(-1), 0, -1 / s.yc(), 0),
                new PlaneSurface(FailureMode.IN_PLANE_SHEAR, 0, 0, 1 / s.s12()),
                new PlaneSurface(FailureMode.IN_PLANE_SHEAR, 0, 0, -1 / s.s12()));
    }
}
