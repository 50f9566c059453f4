// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.MissingNode;
import tubwright.desk.answer.EnoughAnswer;
import tubwright.engine.design.Design;

/** What the last run of a design says, read from the answer it left. */
public final class LastRun {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private LastRun() {}

    /**
     * Stiffness between the axles and what the tub as designed has of it.
     *
     * @param folder of the design
     * @param design its file
     * @return empty where there was no run, or none of the tub as designed with a car
     */
    public static Optional<EnoughAnswer.Now> betweenAxles(Path folder, Path design) throws IOException {
        Path latest = folder.resolve("runs").resolve("latest");
        Path answer = latest.resolve(RunFolder.ANSWER);
        if (!Files.exists(answer)) {
            return Optional.empty();
        }
        JsonNode variant;
        try {
            variant = MAPPER.readTree(Files.readString(answer))
                    .path("variants")
                    .valueStream()
                    .filter(v -> v.path("variant").asString("").equals(Design.AS_DESIGNED))
                    .findFirst()
                    .orElse(MissingNode.getInstance());
        } catch (JacksonException e) {
            return Optional.empty(); // not ours, or broken off: as if there were none
        }
        JsonNode hubs = variant.path("installed").path("hubToHub");
        double torsional = variant.path("cases")
                .valueStream()
                .filter(c -> c.path("kind").asString("").equals("torsion"))
                .mapToDouble(c -> c.path("torsionalStiffness_N_m_per_rad").asDouble(Double.NaN))
                .findFirst()
                .orElse(Double.NaN);
        double between = hubs.path("linksRigid_N_m_per_rad").asDouble(Double.NaN);
        double whole = hubs.path("stiffness_N_m_per_rad").asDouble(Double.NaN);
        if (!(between > 0 && whole > 0 && torsional > 0)) {
            return Optional.empty();
        }
        double share = hubs.path("springs")
                .valueStream()
                .filter(s -> s.path("name").asString("").startsWith("tub: "))
                .mapToDouble(s -> s.path("share").asDouble())
                .sum();
        Path used = latest.resolve("inputs").resolve(design.getFileName());
        boolean stale = !Files.exists(used) || !Arrays.equals(Files.readAllBytes(used), Files.readAllBytes(design));
        return Optional.of(new EnoughAnswer.Now(between, share / whole, torsional, stale));
    }
}
