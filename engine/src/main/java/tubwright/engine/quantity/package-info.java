// SPDX-License-Identifier: Apache-2.0
/**
 * Units at the border: text such as {@code 18 kN·m/deg} becomes an SI number with a known
 * {@link tubwright.engine.quantity.Dimension}, and goes back to readable text.
 *
 * <p>Inside the engine every number is SI and angles are radians; only readers and writers use this package. It also
 * holds the one helper that finds the nearest valid word for a misspelt one, because every reader of text needs it.
 * It must know nothing of materials, laminates or tubs.
 */
package tubwright.engine.quantity;
