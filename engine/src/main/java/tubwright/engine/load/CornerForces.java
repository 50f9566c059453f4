// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.List;
import java.util.Optional;

/**
 * The forces in a corner under one load.
 *
 * @param tensions force along each of the five legs and the rod, tension positive, N
 * @param damper tension in the spring and damper unit where the rod ends on a rocker, N
 * @param onTub one for each leg, then the rod where it ends at the tub, or the rocker's pivot and the damper's end
 */
public record CornerForces(double[] tensions, Optional<Double> damper, List<PointLoad> onTub) {
    public CornerForces {
        onTub = List.copyOf(onTub);
    }
}
