// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

/**
 * Deviations over a sequence of meshes.
 *
 * @param family rung it belongs to
 * @param plot title of the plot it is drawn in
 * @param label name of the line: element and kind of mesh
 * @param sizes elements a side
 * @param deviations share of the reference at each size
 * @param test class#method
 */
record Curve(Family family, String plot, String label, int[] sizes, double[] deviations, String test) {
    /** What tells this line from every other. */
    String key() {
        return family + " | " + plot + " | " + label;
    }
}
