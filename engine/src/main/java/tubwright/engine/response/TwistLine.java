// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;

/**
 * Twist of the skin's sections against station: the rotation about x of the rigid motion that fits each section best.
 *
 * @param stations x, m, increasing
 * @param angles rad under the case's couple, right-handed about +x
 * @param slopes rad/m
 * @param rigidities local torsional rigidity GJ = couple/slope, N·m²; NaN outside the loaded length
 * @param jumps steps of angle across joints
 */
public record TwistLine(double[] stations, double[] angles, double[] slopes, double[] rigidities, List<Jump> jumps) {
    /**
     * A step of the twist line.
     *
     * @param station x, m
     * @param angle rad
     * @param joint the joint it belongs to
     */
    public record Jump(double station, double angle, String joint) {}

    public TwistLine {
        jumps = List.copyOf(jumps);
    }
}
