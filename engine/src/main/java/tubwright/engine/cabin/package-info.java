// SPDX-License-Identifier: Apache-2.0
/**
 * Who and what has to go into the tub: a driver by percentile, a tank, volumes kept free, and the room they leave to the
 * inner skin. Knows shapes; nothing of laminates or stiffness, whose thickness it is told.
 */
package tubwright.engine.cabin;
