// SPDX-License-Identifier: Apache-2.0
/**
 * What every ply is worth, what any change of layup does, and how little a tub may weigh. Lives on one property of the
 * shells: stiffness is linear in the laminates. From the solution of one case follow exact derivatives, bounds that
 * hold without a new solution, reduced models with a guaranteed error, and re-solutions on the factor at hand.
 */
package tubwright.engine.trim;
