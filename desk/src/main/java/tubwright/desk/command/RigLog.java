// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import tubwright.desk.console.Terminal;
import tubwright.desk.logbook.Logbook;

/** Writes what happened at the rig into the project's logbook, the one that the page shows. */
final class RigLog {
    /** Letters of a fingerprint that the logbook keeps. */
    private static final int SHORT = 16;

    private RigLog() {}

    /** Adds lines; where the logbook cannot be written to, says so and goes on: the answer itself is kept elsewhere. */
    static void add(Terminal terminal, Path project, String revision, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        try (Logbook book = Logbook.open(project.resolve("runs"))) {
            if (book.trouble().isPresent()) {
                terminal.say("No line was written into the logbook, "
                        + project.resolve("runs").resolve("logbook")
                        + ".mv.db: it cannot be opened (is a page open on this folder?)");
                return;
            }
            List<String> there = book.entries().stream()
                    .filter(e -> e.revision().equals(revision))
                    .map(Logbook.Entry::words)
                    .toList();
            // A command given twice is one happening.
            lines.stream()
                    .filter(line -> !there.contains(line))
                    .forEach(line -> book.add(Logbook.Kind.TEST, line, revision));
        }
    }

    /** SHA-256 of a design's text, in full. */
    static String fingerprint(Path file) throws IOException {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(file)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** As the logbook keeps it. */
    static String revision(Path file) throws IOException {
        return fingerprint(file).substring(0, SHORT);
    }
}
