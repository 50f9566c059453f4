// SPDX-License-Identifier: Apache-2.0
/**
 * How cloth and tape lie on a surface: the pin-jointed net of a cloth ply with its shear, where a start suits it, and how
 * hard tape must be steered. Knows surfaces of triangles; knows nothing of stiffness, designs or files.
 */
package tubwright.engine.make.drape;
