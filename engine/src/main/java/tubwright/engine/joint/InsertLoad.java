// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

/**
 * What pushes at an insert.
 *
 * @param pull along its axis, N, positive out of the panel on the side where the load enters
 * @param inPlane amount of the force in the plane of the skin, N
 * @param torque about its axis, N·m, amount
 * @param moment about an axis in the skin, the arm of a bracket included, N·m, amount
 */
public record InsertLoad(double pull, double inPlane, double torque, double moment) {}
