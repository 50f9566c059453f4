// SPDX-License-Identifier: Apache-2.0
/**
 * Stacks of layers: their stiffness as a shell, their strains and stresses, and the code by which a stack is written.
 *
 * <p>Sign conventions, used by everything downstream: layers are listed from the outer (tool) surface inward. The axes
 * e1 (reference direction), e2, n are right-handed, n being the outward normal; z is measured along n from the chosen
 * reference surface. Layer angles turn from e1 towards e2. Strains are ε(z) = ε0 + z κ, order (εx, εy, γxy) with
 * engineering shear; resultants N = ∫σ dz, M = ∫σ z dz, so N = A ε0 + B κ and M = B ε0 + D κ (Jones 1999, ch. 4, apart
 * from the direction in which layers are counted).
 *
 * <p>The package must know nothing of shape, mesh or the design document.
 */
package tubwright.engine.laminate;
