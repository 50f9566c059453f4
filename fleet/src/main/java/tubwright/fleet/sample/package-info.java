// SPDX-License-Identifier: Apache-2.0
/** Points that fill the unit cube: grids, Latin hypercubes, Sobol sequences. Knows nothing of designs. */
package tubwright.fleet.sample;
