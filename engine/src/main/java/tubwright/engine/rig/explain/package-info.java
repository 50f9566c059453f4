// SPDX-License-Identifier: Apache-2.0
/**
 * Why a tub on the rig twists otherwise than predicted: which stiffnesses of the model the readings speak about, what
 * they say, how surely, and what follows for the next tub. Knows the model and reduced readings; nothing of files.
 */
package tubwright.engine.rig.explain;
