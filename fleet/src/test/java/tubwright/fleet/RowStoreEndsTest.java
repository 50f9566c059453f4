// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How a store comes through the end of the process that writes it: killed, or out of room. */
class RowStoreEndsTest {
    private static final List<String> MASS = List.of("mass");

    @TempDir
    private Path folder;

    /** Writes rows until it is stopped, one after the other, and says the number of each once it is kept. */
    static final class Writer {
        private Writer() {}

        /** @param arguments the store's folder */
        public static void main(String[] arguments) {
            try (RowStore store = RowStore.open(Path.of(arguments[0]))) {
                for (int i = 0; i < 1_000_000; i++) {
                    store.add(Row.done("k" + i, MASS, new double[] {1.0 / (i + 1)}));
                    System.out.println(i);
                }
            } catch (FleetException told) {
                System.out.println(
                        "told: " + told.getMessage().lines().findFirst().orElseThrow());
                System.exit(3);
            }
        }
    }

    private Process writer(String limit) throws IOException {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")));
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return new ProcessBuilder(
                        "sh",
                        "-c",
                        limit + "exec \"$0\" -Xshare:auto -XX:-UsePerfData -XX:+UseSerialGC -cp \"$1\" \"$2\" \"$3\"",
                        java,
                        System.getProperty("java.class.path"),
                        Writer.class.getName(),
                        folder.toString())
                .redirectErrorStream(true)
                .start();
    }

    private void keptUpTo(int last) {
        try (RowStore store = RowStore.open(folder)) {
            assertTrue(store.size() > last, store.size() + " rows, " + last + " was told of");
            for (int i = 0; i < store.size(); i++) {
                assertEquals(
                        1.0 / (i + 1), store.find("k" + i, MASS).orElseThrow().value("mass"));
            }
            store.add(Row.done("after", MASS, new double[] {1}));
        }
        try (RowStore store = RowStore.open(folder)) {
            assertTrue(store.find("after", MASS).isPresent(), "and it takes more");
        }
    }

    @Test
    void aKilledProcessLosesNoRowThatWasTold() throws IOException, InterruptedException {
        Process process = writer("");
        int last = -1;
        try (BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            while (last < 200) {
                last = Integer.parseInt(out.readLine());
            }
            process.destroyForcibly();
            assertTrue(process.waitFor(60, TimeUnit.SECONDS));
            assertNotEquals(0, process.exitValue());
        }
        keptUpTo(last);
    }

    /** No room for a file beyond some KB: what a full disk does, in the middle of a row. */
    @Test
    void whereRoomRunsOutTheRowsBeforeAreKeptAndTheUserIsTold() throws IOException, InterruptedException {
        Process process = writer("ulimit -f 8; ");
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor(60, TimeUnit.SECONDS));
        assertEquals(3, process.exitValue(), said);
        List<String> lines = said.lines().toList();
        assertTrue(lines.getLast().contains("a finished row cannot be written"), said);
        int last = Integer.parseInt(lines.get(lines.size() - 2));
        assertTrue(last > 10, said);
        byte[] kept = Files.readAllBytes(folder.resolve(RowStore.FILE_NAME));
        assertEquals('\n', kept[kept.length - 1], "no half row stays");
        keptUpTo(last);
    }
}
