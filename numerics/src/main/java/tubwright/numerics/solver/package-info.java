// SPDX-License-Identifier: Apache-2.0

/** Where to get a solver: the one door to the backends. */
package tubwright.numerics.solver;
