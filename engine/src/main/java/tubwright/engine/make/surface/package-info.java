// SPDX-License-Identifier: Apache-2.0
/**
 * Surfaces of triangles for the shop's geometry: where a point lies, straightest lines over edges, faces at a depth below
 * the mould surface. Knows meshes; knows nothing of plies, cloth or files.
 */
package tubwright.engine.make.surface;
