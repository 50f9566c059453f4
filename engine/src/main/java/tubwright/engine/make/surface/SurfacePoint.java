// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.surface;

/**
 * A point of a {@link TriangleSurface}.
 *
 * @param triangle which one
 * @param x in that triangle's plane, m
 * @param y in that triangle's plane, m
 */
public record SurfacePoint(int triangle, double x, double y) {}
