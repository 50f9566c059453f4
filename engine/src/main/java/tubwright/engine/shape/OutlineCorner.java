// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * One corner of a frame's outline before it is rounded.
 *
 * @param y distance to the right of the centreline, m
 * @param z height, m
 * @param radius radius of the fillet at this corner, m; 0 leaves it sharp
 */
public record OutlineCorner(double y, double z, double radius) {}
