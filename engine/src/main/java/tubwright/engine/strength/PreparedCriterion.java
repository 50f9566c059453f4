// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

/** A ply criterion ready for use with one material, or the reason why there is none. */
public sealed interface PreparedCriterion permits PlyCriterion, Check.NotChecked {}
