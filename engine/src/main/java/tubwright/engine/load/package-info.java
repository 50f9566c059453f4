// SPDX-License-Identifier: Apache-2.0
/**
 * Loads from the road to the tub by statics: from a car's acceleration to the forces under its tyres, and from there
 * through the links of a suspension corner to the hardpoints. Knows points, forces and the stretch of bars, no mesh.
 */
package tubwright.engine.load;
