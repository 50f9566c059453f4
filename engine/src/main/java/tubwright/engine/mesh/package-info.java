// SPDX-License-Identifier: Apache-2.0
/**
 * From shape to quadrilaterals and triangles: regions of one laminate, reference directions, seams, edges and a quality
 * report. Knows shapes; knows nothing of stiffness, loads or files.
 */
package tubwright.engine.mesh;
