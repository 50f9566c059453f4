// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Mass bolted on at a node.
 *
 * @param node index
 * @param mass kg
 */
record NodeMass(int node, double mass) {}
