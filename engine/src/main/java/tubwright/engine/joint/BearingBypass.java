// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.joint;

import java.util.List;
import java.util.OptionalDouble;
import tubwright.engine.strength.Check;

/**
 * Strength of a laminate at a bolt hole that takes some load by bearing and lets the rest go by (Hart-Smith 1976, NASA
 * CR-144899; formulas from memory).
 *
 * <p>Elastic concentrations on the net section, loaded hole kte = 2 + (W/d − 1) − 1.5 (W/d − 1)/(W/d + 1) Θ with Θ = 1.5 −
 * 0.5/(e/W) for e ≤ W and 1 beyond; open hole kte = 2 + (1 − d/W)³. In the laminate they are relieved to ktc = 1 + C (kte −
 * 1), C about 0.25 for quasi-isotropic carbon.
 *
 * @param diameter d, m
 * @param width W of laminate that goes with one bolt, m
 * @param edge distance e from the hole's centre to the end, m
 * @param relief C
 */
public record BearingBypass(double diameter, double width, double edge, double relief) {
    /** C of quasi-isotropic carbon laminates. */
    public static final double QUASI_ISOTROPIC = 0.25;

    public BearingBypass {
        if (!(width > diameter && diameter > 0 && edge > 0)) {
            throw new IllegalArgumentException("the strip of laminate must be wider than its hole: width " + width
                    + " m, hole " + diameter + " m");
        }
    }

    /** Concentration at a loaded hole in the laminate, on the net section. */
    public double loadedConcentration() {
        double ratio = width / diameter;
        double theta = edge <= width ? 1.5 - 0.5 * width / edge : 1;
        double kte = 2 + (ratio - 1) - 1.5 * (ratio - 1) / (ratio + 1) * theta;
        return 1 + relief * (kte - 1);
    }

    /** Concentration at an empty hole in the laminate, on the net section. */
    public double openConcentration() {
        double net = 1 - diameter / width;
        return 1 + relief * (1 + net * net * net);
    }

    /** Load of a single row over that of the whole strip without hole. */
    public double loadedEfficiency() {
        return (1 - diameter / width) / loadedConcentration();
    }

    /** Load past an open hole over that of the whole strip without hole. */
    public double openEfficiency() {
        return (1 - diameter / width) / openConcentration();
    }

    /**
     * Tension on the net section (bearing and bypass add linearly) and bearing.
     *
     * @param thickness t of the laminate, m
     * @param bearing load the bolt takes, N
     * @param bypass load that goes on to other bolts, N, tension
     * @param tension unnotched strength of the laminate, Pa, after knock-downs
     * @param bearingStrength Pa, after knock-downs; empty if not known
     */
    public List<Check> checks(
            double thickness, double bearing, double bypass, double tension, OptionalDouble bearingStrength) {
        double strip = tension * width * thickness;
        double used = bearing / (loadedEfficiency() * strip) + bypass / (openEfficiency() * strip);
        Check net = Check.proportional("net section at a bolt hole", used, 1, "Hart-Smith 1976, C = " + relief);
        double stress = bearing / (diameter * thickness);
        Check bear = bearingStrength.isPresent()
                ? Check.proportional("bearing", stress, bearingStrength.getAsDouble(), "load over diameter x thickness")
                : new Check.NotChecked("bearing", List.of("bearing strength of the laminate"));
        return List.of(net, bear);
    }
}
