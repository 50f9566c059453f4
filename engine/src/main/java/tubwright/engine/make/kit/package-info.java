// SPDX-License-Identifier: Apache-2.0
/**
 * What a tub takes to make, ply by ply: mass, material bought against used, hours by step. Knows the plies as they are cut
 * and the nest; nothing of cure and of the design document.
 */
package tubwright.engine.make.kit;
