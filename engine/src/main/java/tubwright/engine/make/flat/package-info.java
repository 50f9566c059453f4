// SPDX-License-Identifier: Apache-2.0
/**
 * Flat patterns: surfaces laid into the plane with as little stretch as can be, what stretch is left, outlines for the
 * cutter. Knows surfaces of triangles; knows nothing of plies, designs or how things are shown.
 */
package tubwright.engine.make.flat;
