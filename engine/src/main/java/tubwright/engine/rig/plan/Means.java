// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.plan;

import java.util.OptionalDouble;

/**
 * What the test is made with.
 *
 * @param greatestTorque N·m; empty to have one proposed
 * @param steps load steps up to the greatest torque in each cycle
 * @param cycles up and down again, the bed-in cycle not counted
 * @param pairs gauge pairs at most, those at the two ends counted
 * @param resolution least step a gauge shows, m
 * @param repeat standard deviation of a reading taken again, m
 * @param overhang how far gauges stand outside the widest point of the section, m, on either side
 * @param placeUncertainty standard uncertainty of a gauge's place, m
 * @param arm lever of the load, m
 * @param armUncertainty its standard uncertainty, m
 * @param scaleUncertainty standard uncertainty of scale or load cell, as a share
 * @param cycleScatter standard deviation of the stiffness from cycle to cycle, as a share
 */
public record Means(
        OptionalDouble greatestTorque,
        int steps,
        int cycles,
        int pairs,
        double resolution,
        double repeat,
        double overhang,
        double placeUncertainty,
        double arm,
        double armUncertainty,
        double scaleUncertainty,
        double cycleScatter) {

    /** A workshop's means: dial gauges of a hundredth, a bathroom of a rig. Common practice, no source. */
    public static final Means USUAL =
            new Means(OptionalDouble.empty(), 8, 3, 6, 1e-5, 5e-6, 0.15, 1e-3, 1.0, 1e-3, 5e-3, 5e-3);

    public Means {
        if (steps < 4) {
            throw new IllegalArgumentException(
                    "a line through " + steps + " load steps tells nothing of its scatter; take 4 or more");
        }
        if (cycles < 1 || pairs < 2) {
            throw new IllegalArgumentException("a test has at least one cycle, and a gauge pair at each end");
        }
    }

    /** Readings a gauge gives in all: up and down again in each cycle. */
    public int readings() {
        return cycles * (2 * steps + 1);
    }

    /** Standard deviation of one angle read by a pair, rad. */
    double angleDeviation(double spacing) {
        return Math.sqrt(2 * (resolution * resolution / 12 + repeat * repeat)) / spacing;
    }

    /** Root of the sum of (T − mean T)² over all readings, N·m. */
    double torqueLength(double greatest) {
        double sum = 0;
        double square = 0;
        for (int i = 0; i <= 2 * steps; i++) {
            double t = greatest * (i <= steps ? i : 2 * steps - i) / steps;
            sum += t;
            square += t * t;
        }
        int n = 2 * steps + 1;
        return Math.sqrt(cycles * (square - sum * sum / n));
    }

    /** The same with another greatest torque. */
    public Means upTo(double torque) {
        return new Means(
                OptionalDouble.of(torque),
                steps,
                cycles,
                pairs,
                resolution,
                repeat,
                overhang,
                placeUncertainty,
                arm,
                armUncertainty,
                scaleUncertainty,
                cycleScatter);
    }
}
