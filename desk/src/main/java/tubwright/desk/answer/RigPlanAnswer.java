// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import tubwright.engine.rig.plan.TestPlan;

/**
 * A torsion test planned, for the console, the sheet and the JSON document.
 *
 * @param variant of the design
 * @param plan what was planned
 * @param meshSize m
 * @param version of the program
 * @param stamp time, as printed
 */
public record RigPlanAnswer(String variant, TestPlan plan, double meshSize, String version, String stamp) {}
