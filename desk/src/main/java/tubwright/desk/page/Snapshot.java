// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import tubwright.engine.design.Design;
import tubwright.engine.design.text.DesignError;

/**
 * The design file at one moment.
 *
 * @param revision fingerprint of its text
 * @param text what stands in it
 * @param design what it means; empty where it cannot be read
 * @param trouble why it cannot be read
 */
record Snapshot(String revision, String text, Optional<Design> design, Optional<DesignError> trouble) {
    /** Reads the file as it now is. */
    static Snapshot of(Path file) {
        String text;
        try {
            text = Files.exists(file) ? Files.readString(file) : "";
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String revision = revision(text);
        try {
            Design design = Design.read(file);
            // What was understood is what counts, should the file have changed between the two readings.
            return new Snapshot(revision(design.text()), design.text(), Optional.of(design), Optional.empty());
        } catch (DesignError trouble) {
            return new Snapshot(revision, text, Optional.empty(), Optional.of(trouble));
        }
    }

    /** The first sixteen digits of the text's SHA-256. */
    static String revision(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 8);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
