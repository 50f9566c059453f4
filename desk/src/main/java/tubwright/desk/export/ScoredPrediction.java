// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A prediction held against the test that came after it, on record in {@code rig/record.json}.
 *
 * @param name of the prediction
 * @param tub name
 * @param variant of the design
 * @param foretoldOn when it was foretold
 * @param foretold N·m/rad
 * @param spread standard deviation of its logarithm
 * @param measured N·m/rad
 * @param measuredSpread standard deviation of its logarithm
 * @param foretoldMass kg
 * @param weighed kg; NaN where nobody weighed it
 * @param readings file of the test
 * @param stamp when it was scored
 */
public record ScoredPrediction(
        String name,
        String tub,
        String variant,
        String foretoldOn,
        double foretold,
        double spread,
        double measured,
        double measuredSpread,
        double foretoldMass,
        double weighed,
        String readings,
        String stamp) {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    /** How many standard deviations the test lies off, in ln: those of prediction and test together. */
    public double score() {
        return Math.log(measured / foretold) / Math.hypot(spread, measuredSpread);
    }

    /** Whether the test fell into the 95 % interval. */
    public boolean held() {
        return Math.abs(score()) <= 1.96;
    }

    /** The record of a project. */
    public static Path file(Path project) {
        return project.resolve("rig").resolve("record.json");
    }

    /** Whether it speaks of the same prediction and the same readings. */
    private boolean sameAs(ScoredPrediction other) {
        return name.equals(other.name) && tub.equals(other.tub) && readings.equals(other.readings);
    }

    /**
     * Puts scores on record; one of the same prediction and the same readings takes the place of the one before.
     *
     * @throws IOException if the record cannot be read or written; it is then as it was
     */
    public static void keep(Path project, List<ScoredPrediction> scores) throws IOException {
        if (scores.isEmpty()) {
            return;
        }
        List<ScoredPrediction> all = new ArrayList<>(all(project));
        for (ScoredPrediction score : scores) {
            all.removeIf(score::sameAs);
            all.add(score);
        }
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        ArrayNode array = root.putArray("scored");
        all.forEach(s -> write(array.addObject(), s));
        Path file = file(project);
        Files.createDirectories(file.getParent());
        Path beside = Files.createTempFile(file.getParent(), "record", ".json");
        try {
            Files.writeString(beside, MAPPER.writeValueAsString(root) + "\n");
            Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(beside);
        }
    }

    private static void write(ObjectNode node, ScoredPrediction s) {
        node.put("prediction", s.name);
        node.put("design", s.tub);
        node.put("variant", s.variant);
        node.put("foretoldOn", s.foretoldOn);
        node.put("foretold_N_m_per_rad", s.foretold);
        node.put("standardDeviationOfLogarithm", s.spread);
        node.put("measured_N_m_per_rad", s.measured);
        node.put("standardDeviationOfLogarithmMeasured", s.measuredSpread);
        node.put("score", s.score());
        node.put("held", s.held());
        if (Double.isFinite(s.foretoldMass)) {
            node.put("foretoldMass_kg", s.foretoldMass);
        }
        if (Double.isFinite(s.weighed)) {
            node.put("weighed_kg", s.weighed);
        }
        node.put("readings", s.readings);
        node.put("computed", s.stamp);
    }

    /**
     * All scores on record, oldest first.
     *
     * @throws IOException if the record is there and cannot be read
     */
    public static List<ScoredPrediction> all(Path project) throws IOException {
        Path file = file(project);
        if (!Files.exists(file)) {
            return List.of();
        }
        List<ScoredPrediction> result = new ArrayList<>();
        try {
            for (JsonNode node : MAPPER.readTree(Files.readString(file))
                    .path("scored")
                    .valueStream()
                    .toList()) {
                result.add(new ScoredPrediction(
                        node.path("prediction").asString(""),
                        node.path("design").asString(""),
                        node.path("variant").asString(""),
                        node.path("foretoldOn").asString(""),
                        node.path("foretold_N_m_per_rad").asDouble(Double.NaN),
                        node.path("standardDeviationOfLogarithm").asDouble(0),
                        node.path("measured_N_m_per_rad").asDouble(Double.NaN),
                        node.path("standardDeviationOfLogarithmMeasured").asDouble(0),
                        node.path("foretoldMass_kg").asDouble(Double.NaN),
                        node.path("weighed_kg").asDouble(Double.NaN),
                        node.path("readings").asString(""),
                        node.path("computed").asString("")));
            }
        } catch (JacksonException e) {
            throw new IOException(file + ": is no record of predictions that can be read; put it aside, or mend it", e);
        }
        return result;
    }
}
