// SPDX-License-Identifier: Apache-2.0

/**
 * Sparse symmetric systems: patterns from element connectivities, deterministic parallel assembly, elimination of
 * prescribed unknowns, and direct factorisation behind one interface with two backends (a native library where there is
 * one, pure Java everywhere). Nothing here knows what the unknowns mean.
 */
package tubwright.numerics;
