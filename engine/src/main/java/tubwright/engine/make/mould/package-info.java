// SPDX-License-Identifier: Apache-2.0
/**
 * Pieces and the moulds they come out of: draft along a pull direction, where a face hooks over and how far, where a piece
 * is split from its neighbours. Knows meshes; knows nothing of plies, cures or how things are shown.
 */
package tubwright.engine.make.mould;
