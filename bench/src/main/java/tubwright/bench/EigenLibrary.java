// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * A general-purpose eigenvalue library on the same matrices: ARPACK with SuperLU as SciPy has them, in a process of its own.
 * Needs a {@code python3} with SciPy. It proves no count.
 */
final class EigenLibrary {
    /** Longer than this nobody waits. */
    private static final long MINUTES = 15;

    private EigenLibrary() {}

    /**
     * What it took, and what came out.
     *
     * @param factor seconds
     * @param modes seconds of the modes, the factorisation not counted
     * @param buckling seconds of the factors, likewise
     * @param values squares of circular frequencies, then factors, each rising
     */
    record Answer(double factor, double modes, double buckling, double[] values) {
        /** Not there, or not done in time. */
        static final Answer NONE = new Answer(Double.NaN, Double.NaN, Double.NaN, new double[0]);
    }

    static Answer run(SymmetricMatrix k, SymmetricMatrix m, SymmetricMatrix g, int count)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("eigen");
        try {
            indices(k.pattern(), folder);
            doubles(k.values(), folder.resolve("k"));
            doubles(m.values(), folder.resolve("m"));
            doubles(g.values(), folder.resolve("g"));
            Path script = folder.resolve("eigen_reference.py");
            try (InputStream in = EigenLibrary.class.getResourceAsStream("eigen_reference.py")) {
                Files.copy(in, script);
            }
            Path out = folder.resolve("out");
            Process process = new ProcessBuilder(
                            "python3", script.toString(), folder.toString(), Integer.toString(count))
                    .redirectOutput(out.toFile())
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                return Answer.NONE;
            }
            double[] seconds = numbers(out, "SECONDS");
            return seconds.length < 3
                    ? Answer.NONE
                    : new Answer(seconds[0], seconds[1], seconds[2], numbers(out, "VALUES"));
        } finally {
            try (var files = Files.list(folder)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
            Files.delete(folder);
        }
    }

    private static double[] numbers(Path out, String head) throws IOException {
        return Files.readAllLines(out).stream()
                .filter(l -> l.startsWith(head + " "))
                .flatMap(l -> Arrays.stream(l.substring(head.length() + 1).split(" ")))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static void indices(SymmetricPattern pattern, Path folder) throws IOException {
        int b = pattern.blockSize();
        int[] start = new int[pattern.order() + 1];
        int[] columns = new int[pattern.entries()];
        int k = 0;
        for (int node = 0; node < pattern.nodes(); node++) {
            for (int r = 0; r < b; r++) {
                for (int p = pattern.nodeStart()[node]; p < pattern.nodeStart()[node + 1]; p++) {
                    int column = pattern.nodeColumns()[p] * b;
                    for (int s = p == pattern.nodeStart()[node] ? r : 0; s < b; s++) {
                        columns[k++] = column + s;
                    }
                }
                start[node * b + r + 1] = k;
            }
        }
        ints(start, folder.resolve("start"));
        ints(columns, folder.resolve("columns"));
    }

    private static void ints(int[] values, Path file) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asIntBuffer().put(values);
        write(bytes, file);
    }

    private static void doubles(double[] values, Path file) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(8 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asDoubleBuffer().put(values);
        write(bytes, file);
    }

    private static void write(ByteBuffer bytes, Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            while (bytes.hasRemaining()) {
                channel.write(bytes);
            }
        }
    }
}
