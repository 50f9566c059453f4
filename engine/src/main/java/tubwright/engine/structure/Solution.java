// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * What a case does to a structure.
 *
 * @param solved the case
 * @param displacements 6 per node: m and rad
 * @param reactions forces on held unknowns, N and N·m, zero elsewhere
 * @param work of the loads, ½ fᵀu, J: equal to the strain energy
 * @param residual backward error of the solve, about 1e-14 when all is well
 */
public record Solution(Case solved, double[] displacements, double[] reactions, double work, double residual) {}
