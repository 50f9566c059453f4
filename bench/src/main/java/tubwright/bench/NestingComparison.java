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
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.nest.Nester;
import tubwright.engine.make.nest.Outline;
import tubwright.engine.make.nest.Piece;
import tubwright.engine.make.nest.Roll;

/**
 * Nests of the open benchmark set of irregular strip packing: search against plain bottom-left and against the best
 * published, one minute an instance on one core. Writes a Markdown table.
 */
public final class NestingComparison {
    /** Best published utilisation, %, from the records of Gardeyn, Vanden Berghe and Wauters 2025. */
    private enum Instance {
        ALBANO(89.82),
        BLAZ1(86.22),
        DAGLI(90.17),
        FU(92.39),
        JAKOBS1(89.24),
        MARQUES(92.01),
        SHAPES0(69.98),
        SHAPES1(76.72),
        SHIRTS(90.92),
        TROUSERS(92.61);

        private final double published;

        Instance(double published) {
            this.published = published;
        }

        private String file() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private static final Path FOLDER = Path.of("engine/src/test/resources/tubwright/nest");

    private NestingComparison() {}

    /**
     * @param arguments file to write, seconds for each instance, then instances; all of them if none is named
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "bench/results/nesting.md");
        double seconds = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 60;
        List<String> asked = List.of(arguments).subList(Math.min(2, arguments.length), arguments.length);
        List<String> rows = new ArrayList<>();
        for (Instance instance : Instance.values()) {
            if (asked.isEmpty() || asked.contains(instance.file())) {
                rows.add(row(instance, seconds));
                System.out.println(rows.getLast());
            }
        }
        try (PrintWriter out = new PrintWriter(Files.newBufferedWriter(file))) {
            head(out, seconds);
            rows.forEach(out::println);
        }
        System.out.println("Written: " + file);
    }

    private static String row(Instance instance, double seconds) throws IOException {
        List<Piece> pieces = new ArrayList<>();
        double width = read(instance.file(), pieces);
        Roll roll = new Roll(width, 0);
        Nest plain = Nester.bottomLeft(pieces, roll);
        long start = processor();
        long[] moves = {0};
        double[] last = {0};
        Nest found = Nester.search(pieces, roll, 1, Long.MAX_VALUE, new Nester.Listener() {
            @Override
            public void shorter(double length, double utilisation, long done, long most) {
                moves[0] = done;
                last[0] = (processor() - start) * 1e-9;
            }

            @Override
            public boolean cancelled() {
                return (processor() - start) * 1e-9 > seconds;
            }
        });
        int copies = pieces.stream().mapToInt(Piece::count).sum();
        double ours = 100 * found.utilisation();
        return String.format(
                Locale.ROOT,
                "| %s | %d | %.4g | %.1f | %.1f | %.2f | %.1f | %.0f | %d |",
                instance.file(),
                copies,
                found.length(),
                100 * plain.utilisation(),
                ours,
                instance.published,
                instance.published - ours,
                last[0],
                moves[0]);
    }

    /** Processor time of this thread, ns: what a quiet machine would need. */
    private static long processor() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static double read(String name, List<Piece> pieces) throws IOException {
        double width = 0;
        Piece.Turns turns = Piece.Turns.FIXED;
        for (String line : Files.readAllLines(FOLDER.resolve(name + ".txt"))) {
            if (line.startsWith("width ")) {
                width = Double.parseDouble(line.substring(6));
            } else if (line.startsWith("turns ")) {
                turns = switch (line.substring(6)) {
                    case "0" -> Piece.Turns.FIXED;
                    case "0 180" -> Piece.Turns.HALF;
                    default -> Piece.Turns.QUARTERS;
                };
            } else if (!line.startsWith("#") && !line.isBlank()) {
                String[] words = line.split("[:, ]+");
                double[] corners = new double[words.length - 1];
                for (int i = 0; i < corners.length; i++) {
                    corners[i] = Double.parseDouble(words[i + 1]);
                }
                pieces.add(new Piece(
                        name + " " + (pieces.size() + 1), Outline.of(corners), Integer.parseInt(words[0]), turns));
            }
        }
        return width;
    }

    private static void head(PrintWriter out, double seconds) {
        out.println("# Nesting: utilisation of the roll on the open benchmark set");
        out.println();
        out.println(
                "Irregular strip packing, the set kept by the working group on cutting and packing (ESICUP); shapes and");
        out.println(
                "widths as in engine/src/test/resources/tubwright/nest. Bottom-left: the largest first, holes filled. Best");
        out.println(
                "published: records of Gardeyn, Vanden Berghe and Wauters 2025 (many cores, twenty minutes and more");
        out.println("on the same widths). Asked: within five points of it. Made by");
        out.println();
        out.println("```");
        out.println("./mvnw -q -pl bench -am package -DskipTests");
        out.println(
                "java -cp \"bench/target/tubwright-bench-0.1.0.jar:bench/target/lib/*\" tubwright.bench.NestingComparison");
        out.println("```");
        out.println();
        out.printf(
                Locale.ROOT,
                "Java %s, %s %s, one core of %d, %.0f s of processor time an instance, seed 1.%n%n",
                Runtime.version(),
                System.getProperty("os.name"),
                System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors(),
                seconds);
        out.println(
                "| instance | pieces | length | bottom-left, % | **search, %** | best published, % | short of it, points"
                        + " | last found after, s | moves |");
        out.println("|---|--:|--:|--:|--:|--:|--:|--:|--:|");
    }
}
