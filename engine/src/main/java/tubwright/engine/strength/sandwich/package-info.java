// SPDX-License-Identifier: Apache-2.0
/**
 * How a sandwich fails besides its plies: wrinkling, dimpling and crimping of faces, shear, crushing and indentation of the
 * core, opening of corners.
 *
 * <p>The formula classes are pure functions of numbers and show every constant with its source;
 * {@link tubwright.engine.strength.sandwich.SandwichChecks} applies them to a laminate under load. Where tests lie far
 * below theory both values are given; the design value decides.
 */
package tubwright.engine.strength.sandwich;
