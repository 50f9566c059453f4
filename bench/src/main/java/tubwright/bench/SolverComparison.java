// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Side by side: our two backends, the native library called bare, and a general-purpose Java library, on shell-like grids
 * of growing size. Each run has a process of its own. Writes a Markdown table.
 */
public final class SolverComparison {
    private static final int LARGEST_FOR_REFERENCE = 100_000;

    private SolverComparison() {}

    /**
     * @param arguments file to write, then numbers of unknowns (20000 60000 300000 1000000 if none are given)
     * @throws IOException if the file cannot be written
     * @throws InterruptedException if someone stops it
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/solvers.md");
        List<Integer> sizes = new ArrayList<>();
        for (int k = 1; k < arguments.length; k++) {
            sizes.add(Integer.parseInt(arguments[k]));
        }
        if (sizes.isEmpty()) {
            sizes.addAll(List.of(20_000, 60_000, 300_000, 1_000_000));
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out);
            for (int size : sizes) {
                for (String name : List.of("java", "native", "bare", "ejml")) {
                    if (!name.equals("ejml") || size <= LARGEST_FOR_REFERENCE) {
                        out.println(row(run(name, size, size > 500_000 ? 1 : 3)));
                        out.flush();
                    }
                }
            }
        }
        System.out.println("Written: " + file);
    }

    private static void head(PrintWriter out) {
        out.println("# Solvers side by side");
        out.println();
        out.println("Square grids of quads with six unknowns a node, made-up positive definite element matrices, one");
        out.println(
                "right-hand side. Written by `tubwright.bench.SolverComparison`, each row in a process of its own.");
        out.println(
                "Seconds, best of three rounds (above 500 000 unknowns one round); \"first\" is ordering, factorisation and solution");
        out.println(
                "in a fresh process. Residual: backward error after Oettli and Prager. Memory: peak of the process.");
        out.println();
        Child.machine(out);
        Contestants.WHAT.entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(entry -> out.println("- **" + entry.getKey() + "**: " + entry.getValue()));
        out.println();
        out.println(
                "| solver | unknowns | pattern | assembly | order | factorise | solve | first | processor | factor entries, 10⁶"
                        + " | residual | memory, GB |");
        out.println("|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
    }

    private static String row(String result) {
        return "| " + String.join(" | ", result.split(" ")) + " |";
    }

    private static String run(String name, int size, int rounds) throws IOException, InterruptedException {
        String result = Child.run(
                SolverRun.class,
                List.of("-XX:MaxRAMPercentage=60"),
                List.of(name, Integer.toString(size), Integer.toString(rounds)));
        return result.equals("failed") ? name + " " + size + " failed - - - - - - - - -" : result;
    }
}
