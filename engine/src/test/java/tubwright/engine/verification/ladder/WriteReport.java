// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** Takes over the findings of the last whole run into docs/verification; see CONTRIBUTING.md. */
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
        boolean gone = Files.exists(FINDINGS)
                && LadderRun.read(FINDINGS).findings().values().stream()
                        .anyMatch(f -> !run.tests().contains(f.test()));
        if (gone && !List.of(arguments).contains("--gone")) {
            throw new IOException("Tests that the report knows have not run: run all tests of the engine, or say --gone"
                    + " if they were taken out");
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
}
