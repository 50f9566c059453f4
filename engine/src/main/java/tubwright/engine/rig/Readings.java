// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.List;

/**
 * A torsion test as it was written down, in SI units.
 *
 * @param source name of the file
 * @param setup how it was set up
 * @param gauges in the order of the table's columns
 * @param steps in the order of the file
 */
public record Readings(String source, Setup setup, List<Gauge> gauges, List<Step> steps) {
    public Readings {
        gauges = List.copyOf(gauges);
        steps = List.copyOf(steps);
    }

    /** Largest torque by size, N·m. */
    public double greatestTorque() {
        return steps.stream().mapToDouble(s -> Math.abs(s.torque())).max().orElse(0);
    }

    /** The cycle numbers in order. */
    public List<Integer> cycles() {
        return steps.stream().map(Step::cycle).distinct().sorted().toList();
    }

    /** The same without the steps of its first cycle, the bed-in. */
    public Readings withoutBedIn() {
        int first = cycles().getFirst();
        return new Readings(
                source,
                setup,
                gauges,
                steps.stream().filter(s -> s.cycle() != first).toList());
    }
}
