// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import tubwright.numerics.Factorisation;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * One contestant on one size, in a process of its own so that memory is its own: prints one line of figures. The first
 * round is what a fresh program pays, the best of the others what a running one pays.
 */
final class SolverRun {
    private SolverRun() {}

    /** @param arguments name of the contestant, number of unknowns, number of rounds */
    public static void main(String[] arguments) throws IOException {
        Contestant contestant = Contestants.named(arguments[0]);
        ShellGrid grid = new ShellGrid(ShellGrid.sideFor(Integer.parseInt(arguments[1])));
        int rounds = Integer.parseInt(arguments[2]);
        double pattern = Double.MAX_VALUE;
        double assembly = Double.MAX_VALUE;
        double first = 0;
        Contestant.Times best = new Contestant.Times(1e9, 1e9, 1e9, 0);
        double processor = 0;
        double residual = 0;
        int unknowns = 0;
        for (int round = 0; round < rounds; round++) {
            long t0 = System.nanoTime();
            SymmetricPattern structure = grid.pattern();
            long t1 = System.nanoTime();
            SymmetricMatrix matrix = grid.assemble(structure);
            long t2 = System.nanoTime();
            pattern = Math.min(pattern, (t1 - t0) / 1e9);
            assembly = Math.min(assembly, (t2 - t1) / 1e9);
            unknowns = matrix.order();
            double[] load = new double[unknowns];
            for (int i = 0; i < unknowns; i++) {
                load[i] = Math.sin(i);
            }
            double[] x = load.clone();
            long before = processorNanos();
            Contestant.Times times = contestant.run(matrix, x);
            double spent = (processorNanos() - before) / 1e9;
            residual = Factorisation.residual(matrix, x, load);
            first = round == 0 ? times.total() : first;
            if (times.total() < best.total()) {
                best = times;
                processor = spent;
            }
        }
        System.out.printf(
                Locale.ROOT,
                "RESULT %s %d %.3f %.3f %.3f %.3f %.3f %.3f %.2f %.1f %.1e %.2f%n",
                arguments[0],
                unknowns,
                pattern,
                assembly,
                best.order(),
                best.factor(),
                best.solve(),
                first,
                processor,
                best.entries() / 1e6,
                residual,
                peakGigabytes());
    }

    /** Processor time of all threads so far, the collector's and the compiler's too. */
    private static long processorNanos() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
    }

    /** The most memory the process ever held, from the kernel where it tells; 0 elsewhere. */
    static double peakGigabytes() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) {
            return 0;
        }
        try (var lines = Files.lines(status)) {
            return lines.filter(line -> line.startsWith("VmHWM:"))
                    .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")) / 1e6)
                    .findFirst()
                    .orElse(0);
        }
    }
}
