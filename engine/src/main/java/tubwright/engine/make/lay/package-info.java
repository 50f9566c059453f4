// SPDX-License-Identifier: Apache-2.0
/**
 * Plies laid on their mould: every cut piece of a tub draped or flattened, with its true fibre directions and its pattern,
 * and what that does to the tub's stiffness. Knows tubs, nets and flats; knows nothing of files or how things are shown.
 */
package tubwright.engine.make.lay;
