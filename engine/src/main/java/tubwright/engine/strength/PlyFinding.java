// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import tubwright.engine.laminate.Layer;

/**
 * Where in a laminate something fails.
 *
 * @param index place of the layer, 0 at the outer surface
 * @param layer the layer
 * @param atOuterSurface true if at the layer's outer surface, false if at its inner
 * @param failure how and when
 */
public record PlyFinding(int index, Layer layer, boolean atOuterSurface, PlyFailure failure) {}
