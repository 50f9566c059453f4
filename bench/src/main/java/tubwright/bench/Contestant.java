// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import tubwright.numerics.SymmetricMatrix;

/** One way of solving a system once. */
@FunctionalInterface
interface Contestant {
    /** Orders, factorises and solves, overwriting {@code load} by the solution. */
    Times run(SymmetricMatrix matrix, double[] load);

    /**
     * Seconds of each step, and the size of the factor.
     *
     * @param entries entries of the factor as the contestant counts them
     */
    record Times(double order, double factor, double solve, long entries) {
        double total() {
            return order + factor + solve;
        }
    }
}
