// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.spark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import tubwright.engine.design.Design;
import tubwright.fleet.Job;
import tubwright.numerics.Parallel;

/**
 * A digest of the part of the program that computes. A cluster that was given the program before it was last changed would
 * answer with rows of the old one under keys of the new.
 */
final class ProgramPrint {
    /** Where the program does not run from its jars there is none, and nothing is compared. */
    static final String UNKNOWN = "";

    private ProgramPrint() {}

    /** Of the program that runs here, 64 hexadecimal digits or {@link #UNKNOWN}. The build makes equal jars of equal sources. */
    static String here() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Class<?> of : List.of(Parallel.class, Design.class, Job.class)) {
                CodeSource source = of.getProtectionDomain().getCodeSource();
                Path jar = source == null
                        ? Path.of("")
                        : Path.of(source.getLocation().toURI());
                if (!Files.isRegularFile(jar)) {
                    return UNKNOWN;
                }
                digest.update(Files.readAllBytes(jar));
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException | URISyntaxException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether two programs are known to differ. */
    static boolean differ(String one, String other) {
        return !one.equals(UNKNOWN) && !other.equals(UNKNOWN) && !one.equals(other);
    }
}
