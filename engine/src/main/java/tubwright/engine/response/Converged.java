// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;

/**
 * A number computed on several mesh sizes and carried to size zero (Richardson 1911; error band after Roache 1994).
 *
 * @param value the estimate at mesh size zero, the number to quote
 * @param error half-width of the band in which the exact answer of the model is expected, same unit
 * @param order observed order of convergence in the mesh size; NaN where the sizes do not allow one
 * @param note how the estimate was made, in words
 * @param samples the computed values, coarsest first
 */
public record Converged(double value, double error, double order, String note, List<Sample> samples) {
    /**
     * One computed value.
     *
     * @param meshSize m
     * @param unknowns number of unknowns solved for
     * @param value the value on that mesh
     */
    public record Sample(double meshSize, int unknowns, double value) {}

    public Converged {
        samples = List.copyOf(samples);
    }
}
