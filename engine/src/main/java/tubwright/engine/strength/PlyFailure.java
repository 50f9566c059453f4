// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.OptionalDouble;

/** What a criterion says of a ply under a load that can grow. */
public sealed interface PlyFailure {
    /** Factor on the mechanical load at which the ply fails: 0 if it has failed before, infinite if it never does. */
    double reserveFactor();

    /**
     * It fails when the mechanical load is multiplied by the reserve factor (which may be less than one).
     *
     * @param mode how
     * @param reserveFactor on the mechanical load, residual stress held
     * @param stress ply stress at failure (σ1, σ2, τ12), residual included, Pa
     * @param fractureAngle of the fracture plane against the thickness direction, radians, where the criterion knows
     */
    record Reached(FailureMode mode, double reserveFactor, double[] stress, OptionalDouble fractureAngle)
            implements PlyFailure {}

    /**
     * The residual stress alone breaks it.
     *
     * @param mode how
     * @param stress residual stress (σ1, σ2, τ12), Pa
     */
    record ByResidualStress(FailureMode mode, double[] stress) implements PlyFailure {
        @Override
        public double reserveFactor() {
            return 0;
        }
    }

    /** No multiple of this load breaks it. */
    record Never() implements PlyFailure {
        @Override
        public double reserveFactor() {
            return Double.POSITIVE_INFINITY;
        }
    }
}
