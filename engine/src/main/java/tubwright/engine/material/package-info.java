// SPDX-License-Identifier: Apache-2.0
/**
 * Plies, cores, adhesives and metals, each value with its provenance, and the shipped library of them.
 *
 * <p>A material is a name, a description and a {@link tubwright.engine.material.PropertyTable}; what a calculation needs
 * and the source does not give is estimated by a stated rule and marked so. The package must know nothing of laminates
 * or of the design document's layout.
 */
package tubwright.engine.material;
