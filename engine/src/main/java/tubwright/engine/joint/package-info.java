// SPDX-License-Identifier: Apache-2.0
/**
 * What holds pieces together and lets loads in: bond lines, fastener rows, riveted sheet, inserts in sandwich.
 *
 * <p>Closed-form solutions with their sources; loads are per width (N/m) for bond lines and per fastener (N) for rows, both
 * positive in tension. Checks that lack data say so ({@link tubwright.engine.strength.Check.NotChecked}).
 *
 * <p>The package knows materials, laminates and strength, nothing of shape, mesh or structure. Theory:
 * docs/theory/joints.md.
 */
package tubwright.engine.joint;
