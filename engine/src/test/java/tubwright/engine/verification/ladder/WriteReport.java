// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Takes over the findings of the last run into docs/verification; see CONTRIBUTING.md. Test classes that were not part of
 * the run keep what the report has of them, so that a new check needs only its own class to be run.
 */
final class WriteReport {
    /** Where the report lives. */
    static final Path FOLDER = Checkouts.ROOT.resolve("docs/verification");

    /** The findings the report was written from. */
    static final Path FINDINGS = FOLDER.resolve("findings.tsv");

    private WriteReport() {}

    public static void main(String[] arguments) throws IOException {
        if (!Files.exists(LadderRun.FILE)) {
            throw new IOException("No findings at " + LadderRun.FILE + ": run the tests of the engine first");
        }
        LadderRun run = LadderRun.read(LadderRun.FILE);
        if (Files.exists(FINDINGS)) {
            run = run.over(LadderRun.read(FINDINGS), WriteReport::exists);
        }
        run.withoutTests().write(FINDINGS);
        Map<String, String> pages = ReportPages.of(LadderRun.read(FINDINGS));
        try (Stream<Path> old = Files.list(FOLDER)) {
            for (Path file : old.toList()) {
                String name = file.getFileName().toString();
                if (name.endsWith(".svg") && !pages.containsKey(name)) {
                    Files.delete(file);
                }
            }
        }
        for (Map.Entry<String, String> page : pages.entrySet()) {
            Files.writeString(FOLDER.resolve(page.getKey()), page.getValue());
        }
        System.out.println(run.findings().size() + " checks, " + pages.size() + " pages and plots in " + FOLDER);
    }

    private static boolean exists(String className) {
        return WriteReport.class.getResource("/" + className.replace('.', '/') + ".class") != null;
    }
}
