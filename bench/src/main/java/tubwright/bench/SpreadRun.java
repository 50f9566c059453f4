// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
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
    private static final String HEAD = """
            # Spread: a sandwich panel pushed until little is left

            A square panel, 400 mm, of 45/0/45 cloth on both sides of 15 mm of aluminium honeycomb, held at all edges and pushed by a
            pad of 100 mm until it bears a fifth of its peak. Fracture energies are assumed: fibres 60, matrix 1, core 5 kJ/m². A
            solution is one factorisation. The clock says little on a busy machine: processor time is that of the whole process, on
            all its threads. Asked: 40 x 40 elements in less than a minute on two processors. Made by

            ```
            ./mvnw -q -pl bench -am package -DskipTests
            java --enable-native-access=ALL-UNNAMED -cp "bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*" \\
                tubwright.bench.SpreadRun
            ```
            """;
    private static final String COLUMNS = """
            | elements | unknowns | steps | of them unsettled | solutions | peak, kN | energy taken, by the laws, J | by the work of the \
            load, J | load at the end, % of peak | clock, s | processor, s | load of the machine |
            |--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|""";

    private SpreadRun() {}

    /**
     * @param arguments file to write, then elements along each side
     * @throws IOException if the file cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/spread.md");
        int[] sides = arguments.length > 1
                ? Arrays.stream(arguments).skip(1).mapToInt(Integer::parseInt).toArray()
                : new int[] {20, 30, 40};
        List<String> rows = new ArrayList<>();
        for (int side : sides) {
            rows.add(row(side));
            System.out.println(rows.getLast());
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            out.println(HEAD);
            Child.machine(out);
            out.println(COLUMNS);
            rows.forEach(out::println);
        }
        System.out.println("Written: " + file);
    }

    private static String row(int side) {
        MaterialLibrary library = MaterialLibrary.shipped();
        List<Layer> layers = new ArrayList<>();
        for (double angle : new double[] {45, 0, 45}) {
            layers.add(Layer.ofDegrees(library.get("pw-t650-976"), angle));
        }
        layers.add(new Layer(library.get("al-honeycomb-6.1"), 0.015, 0));
        for (double angle : new double[] {45, 0, 45}) {
            layers.add(Layer.ofDegrees(library.get("pw-t650-976"), angle));
        }
        Panel panel = new Panel(new Laminate(layers, Reference.MIDDLE), 0.4, 0.4, 0.4, true, 0.1, side, side);
        Energies assumed = new Energies(
                OptionalDouble.of(60e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.empty());
        long clock = System.nanoTime();
        double busy = processor();
        SpreadModel model = panel.model(StrengthBasis.USUAL, assumed);
        SpreadAnswer answer = LoadPath.of(model, LoadPath.Manner.USUAL, Solvers.best(), n -> {}, () -> false);
        SpreadAnswer.Step end = answer.steps().getLast();
        return String.format(
                Locale.ROOT,
                "| %d x %d | %d | %d | %d | %d | %.2f | %.1f | %.1f | %.0f | %.1f | %.1f | %.1f |",
                side,
                side,
                model.unknowns(),
                answer.steps().size() - 1,
                answer.steps().stream().filter(s -> !s.settled()).count(),
                answer.steps().stream().mapToInt(SpreadAnswer.Step::rounds).sum(),
                1e-3 * answer.peak().factor(),
                end.taken(),
                end.released(),
                100 * end.factor() / answer.peak().factor(),
                1e-9 * (System.nanoTime() - clock),
                processor() - busy,
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    private static double processor() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os
                ? 1e-9 * os.getProcessCpuTime()
                : Double.NaN;
    }
}
