// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

/**
 * A patch that is hit.
 *
 * @param name for a reader
 * @param elements of the mesh, rising; at least one
 * @param place its middle, m, 3 numbers
 * @param area m²
 * @param region zone or wall at its middle
 */
public record Patch(String name, int[] elements, double[] place, double area, String region) {}
