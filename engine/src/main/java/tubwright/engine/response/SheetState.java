// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

/**
 * Thin metal sheet under the load of a stiffness case: whether it buckles in shear, and what stiffness that leaves.
 *
 * @param panels panels looked at
 * @param buckled how many of them buckle under the load of the case
 * @param firstPanel the one that buckles first
 * @param firstFactor factor on the load of the case at which it does
 * @param stiffnessLeft stiffness under the load with the buckled sheet's own shear modulus (secant), over that of flat sheet
 */
public record SheetState(int panels, int buckled, String firstPanel, double firstFactor, double stiffnessLeft) {}
