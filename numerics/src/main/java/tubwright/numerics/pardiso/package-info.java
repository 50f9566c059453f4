// SPDX-License-Identifier: Apache-2.0

/**
 * The native backend: the PARDISO routine of the oneMKL redistributable, called through {@code java.lang.foreign}. Its
 * shared libraries come from a jar on the class path and are unpacked once into a per-user cache; nothing is loaded until
 * the solver is asked for.
 */
package tubwright.numerics.pardiso;
