// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What studies were found to cost, and what follows.
 *
 * @param design its name
 * @param size of the mesh, m; 0 for the design's own
 * @param bare a design's run on one thread, read already, s
 * @param layout to lay out a point on one core, s
 * @param keep to keep a row, s
 * @param lines one for each number of workers, one worker first
 * @param draws of layups, where measured
 */
record StudyReport(
        String design, double size, double bare, double layout, double keep, List<Line> lines, Optional<Draws> draws) {
    /** Designs of the study foretold. */
    private static final double GREAT = 1e5;

    private static final double MACHINES = 100;

    StudyReport {
        lines = List.copyOf(lines);
    }

    /**
     * @param where in words
     * @param workers at a time
     * @param designs computed
     * @param seconds all of them took
     */
    record Line(String where, int workers, int designs, double seconds) {
        /** Core time of a design, s. */
        double each() {
            return seconds * workers / designs;
        }
    }

    /**
     * @param count of layups
     * @param seconds all of them took
     * @param widest gap between the bounds of one, relative
     */
    record Draws(int count, double seconds, double widest) {}

    void write(PrintWriter out) {
        Runtime.Version java = Runtime.version();
        out.println("# Studies: growth and cost");
        out.println();
        out.printf(
                Locale.ROOT,
                "%s, %s, shapes that differ by the station of one wall, torsional stiffness and mass read. Made by%n%n",
                design,
                size > 0 ? String.format(Locale.ROOT, "mesh %.0f mm", 1000 * size) : "default mesh");
        out.println("```");
        out.println("./mvnw -q -DskipTests -pl bench,fleet-spark -am package");
        out.println("java @fleet-spark/target/cluster/java-flags -Dslf4j.provider=org.slf4j.nop.NOPServiceProvider \\");
        out.println(
                "  -cp \"bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*:fleet-spark/target/cluster/jars/*\" \\");
        out.println(
                "  tubwright.bench.StudyComparison bench/results/studies.md examples/larkspur 200 0 fleet-spark/target/cluster");
        out.println("```");
        out.println();
        out.printf(
                Locale.ROOT,
                "Java %s, %s %s, %d processors.%n%n",
                java,
                System.getProperty("os.name"),
                System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors());
        out.println(
                "| where | workers | designs | s | s of a core for each | times one thread here | over a bare run |");
        out.println("|---|--:|--:|--:|--:|--:|--:|");
        for (Line line : lines) {
            out.printf(
                    Locale.ROOT,
                    "| %s | %d | %d | %.1f | %.3f | %.2f | %+.1f %% |%n",
                    line.where,
                    line.workers,
                    line.designs,
                    line.seconds,
                    line.each(),
                    lines.getFirst().seconds / line.seconds,
                    100 * (line.each() / bare - 1));
        }
        out.println();
        out.println(
                "The last column counts what more than one worker loses to shared memory and to whatever else ran.");
        draws.ifPresent(d -> out.printf(
                Locale.ROOT,
                "%n%d layups drawn and bounded in %.1f s, bounds at most %.2f %% apart.%n",
                d.count,
                d.seconds,
                100 * d.widest));
        out.println();
        model(out);
    }

    /** The slowest way of all that was measured, so as not to promise too much. */
    private double each() {
        return lines.stream().mapToDouble(Line::each).max().orElseThrow();
    }

    private void model(PrintWriter out) {
        out.println("## A model of cost");
        out.println();
        out.println("Designs do not wait for each other. With n designs on M machines of c cores:");
        out.println();
        out.println("    time  = T0 + n l / k + max(n t / (M c), n a) + t g");
        out.println("    cost  = price of a core hour × n t / 3600");
        out.println();
        out.println("| | | |");
        out.println("|---|---|--:|");
        out.printf(Locale.ROOT, "| t | core time of a design, the worst line above, s | %.3f |%n", each());
        out.printf(
                Locale.ROOT,
                "| l | to lay out a point and find its key on one of this machine's k cores, ms | %.2f |%n",
                1e3 * layout);
        out.printf(
                Locale.ROOT,
                "| a | to keep a row in the store, which one process does alone, ms | %.3f |%n",
                1e3 * keep);
        out.println(
                "| g | designs in one parcel, ⌈n / 20 000⌉: the last parcel ends that much later than the others | |");
        out.println("| T0 | start of workers and their warming up, taken, not measured, s | 30 |");
        out.println();
        out.printf(Locale.ROOT, "For n = %.0f on M = %.0f machines, k = 2:%n%n", GREAT, MACHINES);
        out.println("| cores each, c | time, min | core hours | the store alone would take, min |");
        out.println("|--:|--:|--:|--:|");
        for (int cores : new int[] {2, 8, 16, 64}) {
            double parcel = Math.ceil(GREAT / 20_000);
            double time = 30
                    + GREAT * layout / 2
                    + Math.max(GREAT * each() / (MACHINES * cores), GREAT * keep)
                    + parcel * each();
            out.printf(
                    Locale.ROOT,
                    "| %d | %.1f | %.0f | %.1f |%n",
                    cores,
                    time / 60,
                    GREAT * each() / 3600,
                    GREAT * keep / 60);
        }
        out.println();
        out.println(
                "Other processors than this one scale t; more readings (reserve factors, buckling, searches for layups) raise it.");
        out.println(
                "What the driver spends on handing a parcel out and taking it back is part of the cluster's lines above.");
    }
}
