// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Modes, buckling factors and many load cases of a tub at growing numbers of unknowns, against the time of one
 * factorisation and beside a general-purpose eigenvalue library. Each size has a process of its own. Writes Markdown tables.
 */
public final class StabilityComparison {
    private StabilityComparison() {}

    /**
     * @param arguments file to write, folder of the design, then mesh sizes in mm
     * @throws IOException if the file cannot be written
     * @throws InterruptedException if someone stops it
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/stability.md");
        String design = arguments.length > 1 ? arguments[1] : "examples/larkspur";
        List<String> sizes =
                new ArrayList<>(List.of(arguments).subList(Math.min(2, arguments.length), arguments.length));
        if (sizes.isEmpty()) {
            sizes.addAll(List.of("70", "25", "12.8"));
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out);
            for (String size : sizes) {
                row(out, size, Child.run(StabilityRun.class, options(), List.of(design, size, "3", "10")));
            }
            out.println();
            out.println("## Twenty load cases");
            out.println();
            out.println(
                    "Twenty cases on one factorisation, and their reserve factors: 20 plies everywhere (the tub's own,"
                            + " repeated), every criterion, both surfaces, every strain point, and the sandwich checks. \"added\" is"
                            + " what nineteen more cases cost over one, in factorisations. Memory: peak of the process.");
            out.println();
            out.println("| mesh, mm | unknowns | elements | factorise | one case | twenty cases | added | reserves |"
                    + " memory, GB |");
            out.println("|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
            for (String size : sizes) {
                row(out, size, Child.run(ManyCasesRun.class, options(), List.of(design, size, "3")));
            }
        }
        System.out.println("Written: " + file);
    }

    private static List<String> options() {
        return List.of("-XX:+UseParallelGC", "-Xmx5g");
    }

    private static void row(PrintWriter out, String size, String result) {
        out.println("| " + size + " | " + String.join(" | ", result.split(" ")) + " |");
        out.flush();
    }

    private static void head(PrintWriter out) {
        out.println("# Modes and buckling");
        out.println();
        out.println("The Larkspur as designed: its ten lowest modes free in space and held, and its ten lowest buckling"
                + " factors in each of three cases (torsion, a push down, a push aft, on the supports of the torsion case),"
                + " by `tubwright.bench.StabilityComparison`. Seconds, best of three rounds; assembly, ordering,"
                + " factorisations, iteration, count and backward errors are all in. \"×\" is that time over one"
                + " factorisation of the stiffness; for buckling, for each case. \"work\" is factorisations and solved"
                + " vectors of the three cases together.");
        out.println();
        out.println(
                "ARPACK with SuperLU, as SciPy has them, has the same matrices (held modes, factors in torsion) and the same"
                        + " tolerance, and factorises for itself; it proves no count. \"apart\": largest relative difference between"
                        + " its frequencies and factors and ours.");
        out.println();
        Child.machine(out);
        out.println(
                "| mesh, mm | unknowns | factorise | free modes | × | held modes | × | buckling, 3 cases | × each | work"
                        + " | SciPy factorise | its held modes | its factors | apart |");
        out.println("|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
    }
}
