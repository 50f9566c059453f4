// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import tubwright.engine.material.Elasticity;

/**
 * Each strain against its own limit (Jones 1999, section 2.9.2).
 *
 * <p>The strain is the one that causes stress: a ply that shrinks freely does not come nearer to failure.
 */
public final class MaximumStrain {
    private MaximumStrain() {}

    /**
     * With these limits.
     *
     * @param elasticity the constants by which the stresses were computed
     * @param woven true if failure along 2 is fibre failure
     */
    public static PlyCriterion of(StrainLimits limits, Elasticity elasticity, boolean woven) {
        double f1 = 1 / elasticity.e1();
        double f2 = 1 / elasticity.e2();
        double f12 = -elasticity.nu12() / elasticity.e1();
        double f66 = 1 / elasticity.g12();
        FailureMode tension = woven ? FailureMode.WEFT_TENSION : FailureMode.MATRIX_TENSION;
        FailureMode compression = woven ? FailureMode.WEFT_COMPRESSION : FailureMode.MATRIX_COMPRESSION;
        return new PlyCriterion(
                "maximum strain",
                "Jones 1999, section 2.9.2",
                plane(FailureMode.FIBRE_TENSION, f1, f12, 0, limits.e1t()),
                plane(FailureMode.FIBRE_COMPRESSION, -f1, -f12, 0, limits.e1c()),
                plane(tension, f12, f2, 0, limits.e2t()),
                plane(compression, -f12, -f2, 0, limits.e2c()),
                plane(FailureMode.IN_PLANE_SHEAR, 0, 0, f66, limits.g12()),
                plane(FailureMode.IN_PLANE_SHEAR, 0, 0, -f66, limits.g12()));
    }

    private static FailureSurface plane(FailureMode mode, double c1, double c2, double c12, double limit) {
        return new PlaneSurface(mode, c1 / limit, c2 / limit, c12 / limit);
    }
}
