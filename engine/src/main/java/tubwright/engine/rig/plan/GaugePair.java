// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

/**
 * Two vertical gauges, one on either side of the tub.
 *
 * @param station x, m
 * @param spacing from gauge to gauge, m
 * @param height of the section's middle, m
 * @param angle expected at the greatest torque against the held pair, rad
 * @param deviation standard uncertainty of angle over torque, rad/(N·m)
 * @param gain what this pair adds to those before it: information about the doubts, bits
 * @param spread standard deviation of ln(stiffness of the tub) that is left with this pair and those before it
 * @param reason why it stands there
 */
public record GaugePair(
        double station,
        double spacing,
        double height,
        double angle,
        double deviation,
        double gain,
        double spread,
        String reason) {

    /** What each gauge is expected to move by the turning alone at the greatest torque, m. */
    public double movement() {
        return Math.abs(angle) * spacing / 2;
    }
}
