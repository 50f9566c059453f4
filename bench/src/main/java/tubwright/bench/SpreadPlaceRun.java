// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import tubwright.engine.design.Design;
import tubwright.engine.response.Study;
import tubwright.engine.safety.damage.Patch;
import tubwright.engine.safety.damage.Patches;
import tubwright.engine.safety.spread.Energies;
import tubwright.engine.safety.spread.LoadPath;
import tubwright.engine.safety.spread.Neighbourhood;
import tubwright.engine.safety.spread.SpreadAnswer;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * Places on a tub whose load grows until they bear a fifth of their peak, timed: clock, processor time of the whole process, and
 * the load of the machine. Energies are assumed.
 */
public final class SpreadPlaceRun {
    private static final String HEAD = """
            # Spread: places on the Larkspur

            A case's load grows until it bears a fifth of its peak; shells within half the size of a hardpoint may fail, the rest of the
            tub is elastic and condensed onto them. Fracture energies are assumed: fibres 60, matrix 1, core 5, bonds 1 kJ/m². Made by

            ```
            ./mvnw -q -pl bench -am package -DskipTests
            java --enable-native-access=ALL-UNNAMED -cp "bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*" \\
                tubwright.bench.SpreadPlaceRun examples/larkspur bench/results/spread-place.md
            ```
            """;
    private static final String COLUMNS = """
            | place | case | size, mm | mesh, mm | shells | unknowns | steps | of them unsettled | solutions | first failure | peak | energy \
            taken, by the laws, J | by the work of the load, J | it ends | ready, clock s | processor, s | path, clock s | processor, s | \
            load of the machine |
            |---|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|---|--:|--:|--:|--:|--:|""";

    private SpreadPlaceRun() {}

    /**
     * @param arguments folder of a design, file to write, then hardpoint, case, size in mm and mesh in mm (0: the design's own) of
     *     each place
     * @throws IOException if the design cannot be read or the file not be written
     */
    public static void main(String[] arguments) throws IOException {
        Tub tub = Design.read(Path.of(arguments[0])).asDesigned().tub();
        List<String> asked = arguments.length > 2
                ? List.of(arguments).subList(2, arguments.length)
                : List.of("upper front leg R", "kerb", "300", "0", "upper front leg R", "kerb", "300", "50");
        List<String> rows = new ArrayList<>();
        for (int k = 0; k + 3 < asked.size(); k += 4) {
            rows.add(row(
                    tub,
                    asked.get(k),
                    asked.get(k + 1),
                    1e-3 * Double.parseDouble(asked.get(k + 2)),
                    1e-3 * Double.parseDouble(asked.get(k + 3))));
            System.out.println(rows.getLast());
        }
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(Path.of(arguments[1])))) {
            out.println(HEAD);
            Child.machine(out);
            out.println(COLUMNS);
            rows.forEach(out::println);
        }
    }

    private static String row(Tub tub, String at, String loading, double size, double asked) {
        double mesh = asked > 0 ? asked : tub.meshSize();
        Energies assumed = new Energies(
                OptionalDouble.of(60e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.of(1e3));
        Case wanted = tub.cases().stream()
                .filter(c -> c.name().equals(loading))
                .findFirst()
                .orElseThrow();
        Structure bare = Structure.of(tub, Study.mesh(tub, mesh));
        Structure structure = wanted instanceof Case.Loads ? bare.with(tub.fittings()) : bare;
        Patch middle = new Patches(bare).at(at, size);
        int[] near = IntStream.concat(
                        IntStream.of(Neighbourhood.within(bare.mesh(), middle.place(), 0.5 * size)),
                        IntStream.of(middle.elements()))
                .sorted()
                .distinct()
                .toArray();
        double[] begun = now();
        Neighbourhood place = Neighbourhood.of(tub, structure, near, new int[0], wanted, assumed, Solvers.best());
        double[] ready = now();
        SpreadAnswer answer = LoadPath.of(
                place.model(),
                LoadPath.Manner.USUAL,
                Solvers.best(),
                n -> System.out.printf(
                        Locale.ROOT, "step %d, %.3f, %.1f s%n", n.step(), n.factor(), now()[1] - ready[1]),
                () -> false);
        double[] end = now();
        SpreadAnswer.Step last = answer.steps().getLast();
        return String.format(
                Locale.ROOT,
                "| %s | %s | %.0f | %.0f | %d | %d | %d | %d | %d | %.2f | %.2f | %.1f | %.1f | %s | %.1f | %.1f | %.1f | %.1f | %.1f |",
                at,
                loading,
                1e3 * size,
                1e3 * mesh,
                near.length,
                place.model().unknowns(),
                answer.steps().size() - 1,
                answer.steps().stream().filter(s -> !s.settled()).count(),
                answer.steps().stream().mapToInt(SpreadAnswer.Step::rounds).sum(),
                answer.first(),
                answer.peak().factor(),
                last.taken(),
                last.released(),
                answer.ended(),
                ready[0] - begun[0],
                ready[1] - begun[1],
                end[0] - ready[0],
                end[1] - ready[1],
                ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    }

    /** Clock and processor time, s. */
    private static double[] now() {
        return new double[] {
            1e-9 * System.nanoTime(),
            ManagementFactory.getOperatingSystemMXBean() instanceof com.sun.management.OperatingSystemMXBean os
                    ? 1e-9 * os.getProcessCpuTime()
                    : Double.NaN
        };
    }
}
