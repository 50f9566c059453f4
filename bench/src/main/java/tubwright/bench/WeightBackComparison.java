// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * What-if answers and the ledger of a tub against whole solutions, at growing numbers of unknowns, each size in a process
 * of its own. Writes a Markdown table.
 */
public final class WeightBackComparison {
    private static final List<String> ROWS = List.of(
            "unknowns",
            "whole solution (assemble, order, factorise, solve), s",
            "fields made ready",
            "making ready, s",
            "the same in whole solutions",
            "kept for it, GB",
            "instant answer, median, ms",
            "instant answer, longest, ms",
            "**whole solution over instant answer**, asked ≥ 1000",
            "certified width, 95 of 100, %, asked < 0.3",
            "certified width, widest of 100, %, asked < 0.5",
            "most back-substitutions of an exact answer (to 1e-8)",
            "exact answer, median, s",
            "entries of the ledger",
            "ledger, s",
            "its back-substitutions",
            "**ledger in whole solutions**, asked < 25",
            "**whole solution over exact answer**, asked ≥ 4",
            "memory, peak, GB");

    private WeightBackComparison() {}

    /**
     * @param arguments file to write, folder of the design, then mesh sizes in mm
     * @throws IOException if the file cannot be written
     * @throws InterruptedException if someone stops it
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/weight-back.md");
        String design = arguments.length > 1 ? arguments[1] : "examples/larkspur";
        List<String> sizes =
                new ArrayList<>(List.of(arguments).subList(Math.min(2, arguments.length), arguments.length));
        if (sizes.isEmpty()) {
            sizes.addAll(List.of("70", "25", "12.8"));
        }
        List<String[]> columns = new ArrayList<>();
        for (String size : sizes) {
            columns.add(run(design, size).split(" "));
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out);
            out.println("| mesh, mm | " + String.join(" | ", sizes) + " |");
            out.println("|---|" + "--:|".repeat(sizes.size()));
            for (int r = 0; r < ROWS.size(); r++) {
                StringBuilder row = new StringBuilder("| " + ROWS.get(r) + " |");
                for (String[] column : columns) {
                    row.append(' ').append(r < column.length ? column[r] : "–").append(" |");
                }
                out.println(row);
            }
        }
        System.out.println("Written: " + file);
    }

    private static void head(PrintWriter out) {
        out.println("# Weight back: instant answers, exact answers, the ledger");
        out.println();
        out.println(
                "The Larkspur in torsion. A hundred changes of one or two plies in each of any three zones, no set of");
        out.println(
                "zones asked about before; ten of them solved to 1e-8 as well; then the whole ledger, every entry to a");
        out.println(
                "thousandth of its effect. All of a column comes from one process, so that its ratios hold on a busy");
        out.println("machine too. Made by");
        out.println();
        out.println("```");
        out.println("./mvnw -q -pl bench -am package -DskipTests");
        out.println("java --enable-native-access=ALL-UNNAMED -cp"
                + " \"bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*\" "
                + WeightBackComparison.class.getName());
        out.println("```");
        out.println();
        Child.machine(out);
    }

    private static String run(String design, String size) throws IOException, InterruptedException {
        boolean large = Double.parseDouble(size) < 20;
        return Child.run(
                WeightBackRun.class, List.of("-XX:+UseParallelGC", large ? "-Xmx8g" : "-Xmx4g"), List.of(design, size));
    }
}
