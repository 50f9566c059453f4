// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * Σ coefficients · λ ≥ least: something every choice (or every choice worth having) keeps to.
 *
 * @param coefficients one for each candidate, sites one after another
 * @param least right-hand side
 */
record Row(double[] coefficients, double least) {
    /** The same with a right-hand side of about one: rows of like size suit the solver. */
    Row scaled() {
        double size = Math.abs(least);
        for (double c : coefficients) {
            size = Math.max(size, 0.1 * Math.abs(c));
        }
        if (!(size > 0)) {
            return this;
        }
        double[] c = coefficients.clone();
        for (int j = 0; j < c.length; j++) {
            c[j] /= size;
        }
        return new Row(c, least / size);
    }

    /** By how much a mixture misses the row; negative where it keeps to it. */
    double missedBy(double[] mixture) {
        double sum = least;
        for (int j = 0; j < mixture.length; j++) {
            if (mixture[j] != 0) {
                sum -= coefficients[j] * mixture[j];
            }
        }
        return sum;
    }
}
