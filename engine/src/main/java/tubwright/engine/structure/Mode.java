// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Map;

/**
 * A natural mode of vibration. Arrays are not to be modified.
 *
 * @param frequency Hz; nearly zero for a rigid motion
 * @param shape displacements, 6 per node, of unit modal mass (1 kg)
 * @param effectiveMass kg along x, y, z and kg·m² about axes through the centre of mass that the mode takes up when the
 *     supports shake; zero for an elastic mode of a free body
 * @param motion what the sections do
 * @param name in words, such as "first torsion", "second sideways bending with torsion" or "local: floor"
 * @param shares of the kinetic energy in each motion of sections and of panels, 0 to 1
 * @param strained the part with the most strain energy; empty words for a rigid motion
 * @param error normwise backward error of the eigenpair
 */
public record Mode(
        double frequency,
        double[] shape,
        double[] effectiveMass,
        Motion motion,
        String name,
        Map<Mode.Motion, Double> shares,
        String strained,
        double error) {
    public Mode {
        shares = Map.copyOf(shares);
    }

    /** Share of a motion in the kinetic energy, 0 to 1. */
    public double share(Motion of) {
        return shares.getOrDefault(of, 0.0);
    }

    /** What the sections of the body do in a mode. */
    public enum Motion {
        RIGID("rigid motion"),
        TORSION("torsion"),
        VERTICAL("vertical bending"),
        SIDEWAYS("sideways bending"),
        LENGTHWISE("stretching"),
        /** Panels move more than sections. */
        LOCAL("local");

        private final String words;

        Motion(String words) {
            this.words = words;
        }

        /** In words for reports. */
        public String words() {
            return words;
        }
    }
}
