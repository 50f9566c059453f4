// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Mass that is not a surface's: of a joint, a stiffener or an insert.
 *
 * @param owner index of the part it belongs to
 * @param piece the piece it is counted with
 * @param mass kg
 * @param centre m, 3 numbers
 */
public record LumpedMass(int owner, String piece, double mass, double[] centre) {}
