// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.List;

/**
 * A joint as it came out on a mesh.
 *
 * @param joint what it is
 * @param piece the piece whose edge it runs along
 * @param length over which it holds, m
 * @param points at which it holds, for the forces it carries
 */
public record JointRun(Joint joint, String piece, double length, List<JointPoint> points) {
    public JointRun {
        points = List.copyOf(points);
    }

    /** Number of fasteners at its pitch. */
    public int fasteners() {
        return joint.fastenerPitch() > 0 ? joint.fastenerRows() * (int) Math.round(length / joint.fastenerPitch()) : 0;
    }
}
