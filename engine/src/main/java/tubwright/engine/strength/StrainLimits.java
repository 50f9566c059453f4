// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.OptionalDouble;
import tubwright.engine.material.Elasticity;

/**
 * Strains a ply bears, positive, in its own axes; shear as engineering strain.
 *
 * @param e1t tension along 1
 * @param e1c compression along 1
 * @param e2t tension along 2
 * @param e2c compression along 2
 * @param g12 in-plane shear
 */
public record StrainLimits(double e1t, double e1c, double e2t, double e2c, double g12) {
    /**
     * Strengths over moduli, the limits of a ply that is linear up to failure.
     *
     * @param e1c compression modulus along 1, Pa; where it is not known the tension modulus, which makes the limit some
     *     ten per cent too low for carbon
     * @param e2c compression modulus along 2, Pa
     */
    public static StrainLimits linear(PlyStrengths s, Elasticity e, OptionalDouble e1c, OptionalDouble e2c) {
        return new StrainLimits(
                s.xt() / e.e1(),
                s.xc() / e1c.orElse(e.e1()),
                s.yt() / e.e2(),
                s.yc() / e2c.orElse(e.e2()),
                s.s12() / e.g12());
    }
}
