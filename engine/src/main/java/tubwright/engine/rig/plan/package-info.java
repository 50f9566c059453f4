// SPDX-License-Identifier: Apache-2.0
/**
 * A torsion test before it is made: how to hold, how far to load, where to read, and how good the answer will be. Knows
 * the model and the statistics of the rig; nothing of files and pages.
 */
package tubwright.engine.rig.plan;
