// SPDX-License-Identifier: Apache-2.0
/**
 * When layers break: criteria for plies, first crack and last ply of laminates, holes, in-situ strengths and knock-downs.
 *
 * <p>Stresses are in the axes of the ply: 1 along the fibres, 2 across, 12 in-plane shear; tension is positive, strengths
 * are positive numbers, all in Pa. A reserve factor is the number by which the mechanical load has to be multiplied until
 * the criterion is met, while residual stress (from cure, moisture) stays as it is; it is found on the failure surface
 * itself and not by taking a failure index upside down. A check that lacks data says what it needs
 * ({@link tubwright.engine.strength.Check.NotChecked}) and never passes in silence.
 *
 * <p>The package knows materials and laminates, nothing of shape, mesh or structure. Theory: docs/theory/strength.md.
 */
package tubwright.engine.strength;
