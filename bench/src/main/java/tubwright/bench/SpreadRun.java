// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.safety.spread.Energies;
import tubwright.engine.safety.spread.LoadPath;
import tubwright.engine.safety.spread.Panel;
import tubwright.engine.safety.spread.SpreadAnswer;
import tubwright.engine.safety.spread.SpreadModel;
import tubwright.engine.strength.StrengthBasis;
import tubwright.numerics.solver.Solvers;

/**
 * A sandwich panel of 40 x 40 elements pushed by a pad until it bears a fifth of its peak, timed: clock, processor time of the
 * whole process, and the load of the machine, since on a busy one the clock says little. Energies are assumed.
 */
public final class SpreadRun {
    private static final int SIDE = 40;

    private SpreadRun() {}

    /** Prints a table. */
    public static void main(String[] arguments) {
        MaterialLibrary library = MaterialLibrary.shipped();
        List<Layer> layers = new ArrayList<>();
        for (double angle : new double[] {45, 0, 45}) {
            layers.add(Layer.ofDegrees(library.get("pw-t650-976"), angle));
        }
        layers.add(new Layer(library.get("al-honeycomb-6.1"), 0.015, 0));
        for (double angle : new double[] {45, 0, 45}) {
            layers.add(Layer.ofDegrees(library.get("pw-t650-976"), angle));
        }
        Panel panel = new Panel(new Laminate(layers, Reference.MIDDLE), 0.4, 0.4, 0.4, true, 0.1, SIDE, SIDE);
        Energies assumed = new Energies(
                OptionalDouble.of(60e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.empty());
        long clock = System.nanoTime();
        double busy = processor();
        SpreadModel model = panel.model(StrengthBasis.USUAL, assumed);
        SpreadAnswer answer = LoadPath.of(model, LoadPath.Manner.USUAL, Solvers.best(), n -> {}, () -> false);
        System.out.printf(
                Locale.ROOT,
                "| elements | unknowns | steps | unsettled | solutions | peak, kN | clock, s | processor, s | load of the"
                        + " machine |%n|--:|--:|--:|--:|--:|--:|--:|--:|--:|%n| %d | %d | %d | %d | %d | %.2f | %.1f | %.1f |"
                        + " %.1f |%n",
                SIDE * SIDE,
                model.unknowns(),
                answer.steps().size() - 1,
                answer.steps().stream().filter(s -> !s.settled()).count(),
                answer.steps().stream().mapToInt(SpreadAnswer.Step::rounds).sum(),
                1e-3 * answer.peak().factor(),
                1e-9 * (System.nanoTime() - clock),
                processor() - busy,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        System.out.println("It ends: " + answer.ended() + ".");
    }

    private static double processor() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os
                ? 1e-9 * os.getProcessCpuTime()
                : Double.NaN;
    }
}
