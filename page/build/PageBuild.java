// SPDX-License-Identifier: Apache-2.0

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Builds the page with the Node.js and npm of the machine, when something it is made of has changed since it was built.
 * Without them it says what to install and leaves the page out: everything else works without it.
 *
 * <p>Run by Maven in the folder {@code page} as {@code java build/PageBuild.java now|later}; {@code later} leaves a note
 * in {@code target/page.pending} instead of building, for whoever does not want the page yet.
 */
public final class PageBuild {
    private static final List<String> SOURCES = List.of(
            "src/main", "package.json", "package-lock.json", ".npmrc", "openapi.json", "tsconfig.json", "vite.config.ts");
    private static final Path TARGET = Path.of("target");
    private static final Path BUILT = TARGET.resolve("page.built");
    private static final Path PENDING = TARGET.resolve("page.pending");
    private static final Path INDEX = TARGET.resolve("classes/tubwright/page/index.html");
    private static final Path LOCK = Path.of("package-lock.json");
    private static final Path INSTALLED = Path.of("node_modules/.tubwright-lock");

    /** Oldest Node.js that the tools run on. */
    private static final int[] OLDEST = {20, 19};

    private PageBuild() {}

    public static void main(String[] arguments) throws IOException, InterruptedException {
        Files.createDirectories(TARGET);
        String now = fingerprint(SOURCES);
        if (Files.exists(INDEX) && Files.exists(BUILT) && Files.readString(BUILT).equals(now)) {
            Files.deleteIfExists(PENDING);
            return;
        }
        if (arguments.length > 0 && arguments[0].equals("later")) {
            Files.writeString(PENDING, "not built yet\n");
            return;
        }
        Optional<String> missing = missing();
        if (missing.isPresent()) {
            Files.writeString(PENDING, missing.get() + "\n");
            System.out.println("[WARNING] The page is left out: " + missing.get() + ".");
            System.out.println("[WARNING] Install Node.js 20.19 or newer with npm (Debian, Ubuntu: apt-get install nodejs npm)"
                    + " and build again; everything else works without it.");
            return;
        }
        String lock = fingerprint(List.of(LOCK.toString()));
        if (!Files.exists(INSTALLED) || !Files.readString(INSTALLED).equals(lock)) {
            run("npm", "ci", "--no-audit", "--no-fund", "--loglevel=error");
            Files.writeString(INSTALLED, lock);
        }
        run("npm", "run", "--silent", "build");
        Files.writeString(BUILT, now);
        Files.deleteIfExists(PENDING);
    }

    /** What is missing on the machine, in words. */
    private static Optional<String> missing() throws InterruptedException {
        Optional<String> node = said("node", "--version");
        if (node.isEmpty()) {
            return Optional.of("Node.js was not found");
        }
        String[] parts = node.get().strip().replaceFirst("^v", "").split("\\.");
        int major = Integer.parseInt(parts[0]);
        int minor = Integer.parseInt(parts[1]);
        if (major < OLDEST[0] || major == OLDEST[0] && minor < OLDEST[1]) {
            return Optional.of("Node.js " + node.get().strip() + " is too old");
        }
        return said("npm", "--version").isEmpty() ? Optional.of("npm was not found") : Optional.empty();
    }

    private static Optional<String> said(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(asTheSystemStarts(command)).redirectErrorStream(true).start();
            String text;
            try (InputStream stream = process.getInputStream()) {
                text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
            }
            return process.waitFor() == 0 ? Optional.of(text) : Optional.empty();
        } catch (IOException notThere) {
            return Optional.empty();
        }
    }

    private static void run(String... command) throws IOException, InterruptedException {
        System.out.println("page: " + String.join(" ", command));
        int code = new ProcessBuilder(asTheSystemStarts(command)).inheritIO().start().waitFor();
        if (code != 0) {
            System.out.println("[ERROR] page: " + String.join(" ", command) + " failed");
            System.exit(code);
        }
    }

    /** On Windows npm is a script that only the shell can start. */
    private static List<String> asTheSystemStarts(String... command) {
        List<String> result = new ArrayList<>();
        if (File.separatorChar == '\\') {
            result.addAll(List.of("cmd", "/c"));
        }
        result.addAll(List.of(command));
        return result;
    }

    private static String fingerprint(List<String> places) throws IOException {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String place : places) {
                try (Stream<Path> files = Files.walk(Path.of(place))) {
                    for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
                        digest.update(file.toString().replace('\\', '/').getBytes(StandardCharsets.UTF_8));
                        digest.update(Files.readAllBytes(file));
                    }
                }
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (java.security.NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
