// SPDX-License-Identifier: Apache-2.0
/**
 * The outside of the tub as geometry: frames, loft, strips, openings and walls, with exact positions, normals, lengths,
 * areas and volumes. Everything is checked when a {@link tubwright.engine.shape.TubShape} is made; what is wrong is said
 * in the designer's words by {@link tubwright.engine.shape.ShapeException}. Knows nothing of meshes or laminates.
 */
package tubwright.engine.shape;
