// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Map;

/** Files of the project's folder, and of nowhere else. */
final class ProjectFiles {
    /** By what a file's name ends in. */
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html;charset=utf-8",
            "json", "application/json",
            "yaml", "text/plain;charset=utf-8",
            "csv", "text/csv;charset=utf-8",
            "png", "image/png",
            "vtu", "application/octet-stream");

    private ProjectFiles() {}

    /**
     * Reads a file.
     *
     * @param folder the project's
     * @param path below it, as asked for
     */
    static Reply read(Path folder, String path) {
        try {
            Path root = folder.toRealPath();
            Path asked = root.resolve(path).normalize();
            if (!asked.startsWith(root)) {
                return outside(path);
            }
            if (!Files.isRegularFile(asked)) {
                return Reply.refused(404, "there is no file " + path);
            }
            // What a link points at counts, not where the link lies.
            Path real = asked.toRealPath();
            if (!real.startsWith(root)) {
                return outside(path);
            }
            String name = real.getFileName().toString();
            String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
            return type == null
                    ? Reply.refused(403, "files such as " + name + " are not handed out")
                    : new Reply(200, type, Files.readAllBytes(real), false);
        } catch (InvalidPathException e) {
            return outside(path);
        } catch (IOException e) {
            return Reply.refused(404, path + " cannot be read");
        }
    }

    private static Reply outside(String path) {
        return Reply.refused(403, path + " is outside the project's folder");
    }
}
