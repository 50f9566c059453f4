// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

/**
 * A place on the tub's surface.
 *
 * @param part strip or wall it lies on
 * @param onWall whether the part is a wall
 * @param left whether it lies on the left half of the car
 * @param position 3 coordinates, m
 * @param normal unit outward normal of the skin, or the wall's normal
 */
public record Spot(String part, boolean onWall, boolean left, double[] position, double[] normal) {}
