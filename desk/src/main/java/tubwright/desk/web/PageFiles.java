// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Pattern;

/** The files of the page, as they were built into the program; in their place, where they were not, what is missing. */
final class PageFiles {
    private static final String ROOT = "/tubwright/page";
    private static final Pattern NAME = Pattern.compile("(/[A-Za-z0-9_-]+(\\.[A-Za-z0-9_-]+)*)+");
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html;charset=utf-8",
            "js", "text/javascript;charset=utf-8",
            "css", "text/css;charset=utf-8",
            "svg", "image/svg+xml",
            "woff2", "font/woff2",
            "png", "image/png");

    private PageFiles() {}

    /** Whether the page was built into the program. */
    static boolean built() {
        return PageFiles.class.getResource(ROOT + "/index.html") != null;
    }

    /** A file. */
    static Reply read(String path) {
        String name = path.equals("/") ? "/index.html" : path;
        String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
        if (type == null || !NAME.matcher(name).matches()) {
            return Reply.words(404, "there is no such page");
        }
        try (InputStream stream = PageFiles.class.getResourceAsStream(ROOT + name)) {
            if (stream == null) {
                return name.equals("/index.html") ? missing() : Reply.words(404, "there is no such page");
            }
            // Vite puts a fingerprint of the content into the names below /assets.
            return new Reply(200, type, stream.readAllBytes(), name.startsWith("/assets/"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Reply missing() {
        String html = """
                <!doctype html>
                <html lang="en"><meta charset="utf-8"><title>Tubwright: the page is missing</title>
                <h1>The page was not built</h1>
                <p>Tubwright itself works, but its page needs Node.js 20.19 or newer with npm when it is set up, and that
                was not found then.</p>
                <p>Install Node.js (on Debian and Ubuntu: <code>apt-get install nodejs npm</code>; elsewhere from your
                system's packages), then start <code>./tubwright page</code> again: it builds the page.</p>
                </html>
                """;
        return new Reply(503, "text/html;charset=utf-8", html.getBytes(StandardCharsets.UTF_8), false);
    }
}
