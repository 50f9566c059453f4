// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

/**
 * One load step.
 *
 * @param cycle number of the load cycle, from the file
 * @param torque N·m, right-handed about +x
 * @param readings one a gauge, m or rad; NaN where nothing was written. Not to be modified
 * @param unloading whether the load's size is falling
 * @param line of the file
 */
public record Step(int cycle, double torque, double[] readings, boolean unloading, int line) {}
