// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a torsion test was set up.
 *
 * @param test what was tested, in the file's words, for instance {@code tub only} or {@code hub to hub}
 * @param heldStation x of the held end, m
 * @param loadedStation x of the loaded end, m
 * @param torqueUncertainty standard uncertainty of the scale of the torque, as a share
 * @param spacingUncertainty standard uncertainty of a gauge's place, m
 * @param resolution least step a displacement gauge shows, m
 * @param rig flexibility to take out
 * @param wheels stiffness in torsion that the wheel rates make, N·m/rad
 * @param mass of the tub as weighed, kg
 * @param share of an intended shift of roll stiffness wanted to arrive
 */
public record Setup(
        String test,
        OptionalDouble heldStation,
        OptionalDouble loadedStation,
        double torqueUncertainty,
        double spacingUncertainty,
        double resolution,
        Optional<RigStiffness> rig,
        OptionalDouble mass,
        OptionalDouble wheels,
        OptionalDouble share) {

    /** Whether the readings go from hub to hub, suspension and all. */
    public boolean hubToHub() {
        return test.toLowerCase(java.util.Locale.ROOT).contains("hub");
    }
}
