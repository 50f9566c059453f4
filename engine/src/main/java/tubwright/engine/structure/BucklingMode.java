// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * One way of buckling. Arrays are not to be modified.
 *
 * @param factor on the case's loads at which it happens by linear theory; negative if the loads must be reversed
 * @param shape displacements, 6 per node, the largest movement 1 m
 * @param part index of the part that holds most of the mode's strain energy
 * @param share of the energy that part holds, 0 to 1
 * @param place of the largest movement, m
 * @param error normwise backward error of the eigenpair
 */
public record BucklingMode(double factor, double[] shape, int part, double share, double[] place, double error) {}
