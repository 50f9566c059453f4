// SPDX-License-Identifier: Apache-2.0
/**
 * The torsion rig and the panel bench: readings as they come from the shop floor, what is wrong with them, and what they
 * say about stiffness, with its uncertainty. Reads and reduces; does not know how a design is computed.
 */
package tubwright.engine.rig;
