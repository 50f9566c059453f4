// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * A tub from its design file to its report at growing numbers of unknowns, step by step, beside the bare library on the
 * same linear system. Each size has a process of its own. Writes a Markdown table.
 */
public final class TubComparison {
    private TubComparison() {}

    /**
     * @param arguments file to write, folder of the design, then mesh sizes in mm
     * @throws IOException if the file cannot be written
     * @throws InterruptedException if someone stops it
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/larkspur.md");
        String design = arguments.length > 1 ? arguments[1] : "examples/larkspur";
        List<String> sizes =
                new ArrayList<>(List.of(arguments).subList(Math.min(2, arguments.length), arguments.length));
        if (sizes.isEmpty()) {
            sizes.addAll(List.of("70", "25", "12.8", "7"));
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out);
            for (String size : sizes) {
                out.println("| " + size + " | "
                        + String.join(" | ", run(design, size).split(" ")) + " |");
                out.flush();
            }
        }
        System.out.println("Written: " + file);
    }

    private static void head(PrintWriter out) {
        out.println("# A whole tub, step by step");
        out.println();
        out.println(
                "The Larkspur as designed, both cases, one mesh size, from reading the file to the written report, by");
        out.println(
                "`tubwright.bench.TubComparison`; each row in a process of its own. Seconds, best round after warming up.");
        out.println(
                "\"ours\" is everything but factorisation and solution; \"ratio\" is ours over factorisation. The last");
        out.println("columns hand the same linear system straight to the native library, bare, with its own defaults.");
        out.println("Memory: peak of the process, with the bare library's not counted.");
        out.println();
        Child.machine(out);
        out.println(
                "| mesh, mm | unknowns | read | mesh | ties | assemble | order | factorise | solve | answers | report"
                        + " | ours | ratio | bare order | bare factorise | bare solve | factor entries, 10⁶ | memory, GB |");
        out.println("|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|");
    }

    private static String run(String design, String size) throws IOException, InterruptedException {
        boolean large = Double.parseDouble(size) < 10;
        return Child.run(
                TubRun.class,
                List.of("-XX:+UseParallelGC", large ? "-Xmx12g" : "-Xmx3g"),
                List.of(design, size, large ? "2" : "5"));
    }
}
