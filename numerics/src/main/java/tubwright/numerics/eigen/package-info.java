// SPDX-License-Identifier: Apache-2.0
/**
 * Eigenpairs of large sparse symmetric problems: lowest natural frequencies (K x = λ M x) and critical load factors (K x
 * = -λ G x), by block Lanczos on a factorisation, with a count by inertia that none was missed.
 */
package tubwright.numerics.eigen;
