// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * One beam element of a stiffener, its stiffness carried to the two mesh nodes it rides on.
 *
 * @param owner part index
 * @param nodes two node indices
 * @param matrix 12 × 12, row-major
 */
record Bar(int owner, int[] nodes, double[] matrix) implements Member {}
