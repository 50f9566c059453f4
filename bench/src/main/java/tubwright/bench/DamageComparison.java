// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A moving hole scanned over a tub against whole solutions, at growing numbers of unknowns. Writes a Markdown table. */
public final class DamageComparison {
    private static final List<String> ROWS = List.of(
            "unknowns",
            "cases",
            "elements torn out, mean",
            "whole solution of all cases (assemble, order, factorise, solve), s",
            "making ready, s",
            "positions",
            "scan, stiffness and margins in all cases, s",
            "one position, ms",
            "**scan in whole solutions**, asked < 60",
            "stiffness lost, scan against each patch by itself, 24 positions, largest difference",
            "torsional stiffness lost, median, %",
            "torsional stiffness lost, most, %",
            "positions that leave something loose",
            "memory, peak, GB");

    private DamageComparison() {}

    /**
     * @param arguments file to write, folder of the design, patch in mm, positions, then mesh sizes in mm
     * @throws IOException if the file cannot be written
     * @throws InterruptedException if someone stops it
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/damage.md");
        String design = arguments.length > 1 ? arguments[1] : "examples/larkspur";
        String patch = arguments.length > 2 ? arguments[2] : "100";
        String positions = arguments.length > 3 ? arguments[3] : "2000";
        List<String> sizes =
                new ArrayList<>(List.of(arguments).subList(Math.min(4, arguments.length), arguments.length));
        if (sizes.isEmpty()) {
            sizes.addAll(List.of("50", "25"));
        }
        List<String[]> columns = new ArrayList<>();
        for (String size : sizes) {
            List<String> asked = List.of(design, size, patch, positions);
            columns.add(Child.run(DamageRun.class, List.of("-XX:+UseParallelGC", "-Xmx4g"), asked)
                    .split(" "));
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out, patch);
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

    private static void head(PrintWriter out, String patch) {
        out.println("# Damage: a moving hole over the whole tub");
        out.println();
        out.println("The Larkspur with a hole of " + patch
                + " mm torn at every position: torsional and bending stiffness left, and");
        out.println(
                "the lowest reserve factor beside the hole in every load case. Nothing is solved anew. All of a column comes");
        out.println(
                "from one process, whole solutions before and after the scan, so that ratios hold on a busy machine too.");
        out.println("Making ready solves the tub, factorises it for the scan and prepares strengths. Made by");
        out.println();
        out.println("```");
        out.println("./mvnw -q -pl bench -am package -DskipTests");
        out.println("java --enable-native-access=ALL-UNNAMED -cp"
                + " \"bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*\" "
                + DamageComparison.class.getName());
        out.println("```");
        out.println();
        Child.machine(out);
    }
}
