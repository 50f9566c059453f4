// SPDX-License-Identifier: Apache-2.0
package tubwright.bench;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Runs a measurement in a process of its own, so that its memory and its warming up are its own. */
final class Child {
    private Child() {}

    /**
     * Runs a main class of this class path.
     *
     * @param options for the virtual machine
     * @return what it printed after "RESULT ", or "failed"
     */
    static String run(Class<?> main, List<String> options, List<String> arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.add("--enable-native-access=ALL-UNNAMED");
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
        command.addAll(arguments);
        System.out.println(String.join(" ", arguments) + " ...");
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String result = "failed";
        try (var lines = process.inputReader()) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                if (line.startsWith("RESULT ")) {
                    result = line.substring("RESULT ".length());
                }
            }
        }
        process.waitFor();
        System.out.println("  " + result);
        return result;
    }

    /** One line that says what it was measured on. */
    static void machine(PrintWriter out) {
        out.printf(
                "Java %s, %s %s, %d processors.%n%n",
                Runtime.version(),
                System.getProperty("os.name"),
                System.getProperty("os.arch"),
                Runtime.getRuntime().availableProcessors());
    }
}
