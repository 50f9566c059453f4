// SPDX-License-Identifier: Apache-2.0
/**
 * Flat patterns on a roll: pieces turned as their material allows and never mirrored, laid without overlap on a given
 * width, on as little length as can be found. Knows outlines only; nothing of plies and designs.
 */
package tubwright.engine.make.nest;
