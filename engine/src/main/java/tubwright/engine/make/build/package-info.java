// SPDX-License-Identifier: Apache-2.0
/**
 * From pattern to delivery: what is done one after the other, when it can be done in a shop with so many teams and autoclaves,
 * which chain of steps sets the day of delivery, and what it costs. Knows cut pieces and their times; nothing of the design
 * document.
 */
package tubwright.engine.make.build;
