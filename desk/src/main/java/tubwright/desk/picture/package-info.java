// SPDX-License-Identifier: Apache-2.0
/**
 * Pictures of tubs without a graphics library: views, a depth-buffered rasteriser, colour scales in a perceptual colour
 * space, PNG. Knows meshes and values on them; knows nothing of reports or files.
 */
package tubwright.desk.picture;
