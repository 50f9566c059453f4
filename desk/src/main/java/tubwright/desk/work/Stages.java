// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import tubwright.desk.text.Figures;

/** Stages of a computation in words. */
final class Stages {
    private Stages() {}

    /** {@code as designed: mesh and solution, 24 mm (2 of 6)}. */
    static String words(String variant, String step, double meshSize, int done, int all) {
        return variant + ": " + step + ", " + Figures.significant(1000 * meshSize, 3, " ") + " mm ("
                + Math.min(done + 1, all) + " of " + all + ")";
    }
}
