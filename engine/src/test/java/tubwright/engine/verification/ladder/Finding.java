// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

/**
 * One check and how it came out.
 *
 * @param family rung it belongs to
 * @param name what is compared
 * @param mesh elements it was computed on; empty where there is no mesh
 * @param source author, year, place
 * @param mark how far the reference may be trusted
 * @param reference value of the source
 * @param ours value computed; 0 where the reference is 0 and it is within the tolerance, for round-off is no finding
 * @param tolerance allowed deviation, as {@link #deviation()} counts it
 * @param order observed order of convergence; NaN where it was not observed
 * @param test class#method
 */
record Finding(
        Family family,
        String name,
        String mesh,
        String source,
        Mark mark,
        double reference,
        double ours,
        double tolerance,
        double order,
        String test) {
    /** Deviation as a share of the reference, or itself where the reference is zero. */
    double deviation() {
        return Math.abs(ours - reference) / (reference == 0 ? 1 : Math.abs(reference));
    }

    /** What tells this check from every other. */
    String key() {
        return family + " | " + name + " | " + mesh;
    }
}
