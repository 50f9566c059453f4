// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/**
 * What the suspension does to the tub at one point.
 *
 * @param at the link, rocker or damper it comes from
 * @param position m
 * @param force on the tub, N
 * @param moment on the tub about the position, N·m; nothing but at a rocker's pivot
 */
public record PointLoad(String at, double[] position, double[] force, double[] moment) {}
