// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.secondopinion;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Asks the three-dimensional model, a script beside the tests. */
final class SolidModel {
    private static final JsonMapper JSON = JsonMapper.builder().build();
    /** The interpreter that finds the library; a system's own, not one of a development environment. */
    private static final String PYTHON = System.getProperty("tubwright.python", "/usr/bin/python3");

    private SolidModel() {}

    /**
     * What came out on one mesh.
     *
     * @param stiffness N·m/rad of one end section against the other
     * @param unknowns of the eighth that is solved
     */
    record Answer(double stiffness, int unknowns) {}

    /** Solves one request. */
    static Answer solve(Map<String, Object> request) {
        Path script = Path.of("src/test/second-opinion/box.py").toAbsolutePath();
        try {
            Path said = Files.createTempFile("second-opinion", ".txt");
            ProcessBuilder builder = new ProcessBuilder(PYTHON, script.toString());
            // Small dense blocks: threads of the dense library only get in each other's way.
            builder.environment().put("OPENBLAS_NUM_THREADS", "1");
            Process process = builder.redirectError(said.toFile()).start();
            try (var out = process.getOutputStream()) {
                out.write(JSON.writeValueAsBytes(List.of(request)));
            }
            String answer = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException("the three-dimensional model failed (exit " + code + "):\n"
                        + Files.readString(said) + "\nIt needs the Debian package python3-getfem.");
            }
            Files.delete(said);
            JsonNode first =
                    JSON.readTree(answer.substring(answer.indexOf('['))).get(0);
            return new Answer(
                    first.get("stiffness").asDouble(), first.get("unknowns").asInt());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
