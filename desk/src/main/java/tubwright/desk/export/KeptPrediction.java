// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * A prediction put on record before its tub was tested.
 *
 * @param name under which it is kept
 * @param tub name
 * @param variant of the design
 * @param stiffness N·m/rad
 * @param spread standard deviation of its logarithm
 * @param mass kg
 * @param fingerprint of the design's text
 * @param stamp when
 */
public record KeptPrediction(
        String name,
        String tub,
        String variant,
        double stiffness,
        double spread,
        double mass,
        String fingerprint,
        String stamp) {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(tools.jackson.databind.SerializationFeature.INDENT_OUTPUT)
            .build();

    /** The folder of predictions below a design's own. */
    public static Path folder(Path design) {
        return design.resolve("rig").resolve("predictions");
    }

    /**
     * Puts it on record. A prediction is never replaced: it would not be one.
     *
     * @throws java.nio.file.FileAlreadyExistsException if one of that name is there
     */
    public Path keep(Path design) throws IOException {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        root.put("name", name);
        root.put("design", tub);
        root.put("variant", variant);
        root.put("torsionalStiffness_N_m_per_rad", stiffness);
        root.put("standardDeviationOfLogarithm", spread);
        root.put("mass_kg", mass);
        root.put("designFingerprint", fingerprint);
        root.put("computed", stamp);
        Path file = folder(design).resolve(name + ".json");
        Files.createDirectories(file.getParent());
        Files.writeString(file, MAPPER.writeValueAsString(root) + "\n", java.nio.file.StandardOpenOption.CREATE_NEW);
        return file;
    }

    /** All that are on record, by name; a file that cannot be read as one is passed over. */
    public static List<KeptPrediction> all(Path design) throws IOException {
        Path folder = folder(design);
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        List<KeptPrediction> result = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
                try {
                    JsonNode root = MAPPER.readTree(Files.readString(file));
                    if (root.path("torsionalStiffness_N_m_per_rad").asDouble(0) > 0) {
                        result.add(new KeptPrediction(
                                root.path("name").asString(""),
                                root.path("design").asString(""),
                                root.path("variant").asString(""),
                                root.path("torsionalStiffness_N_m_per_rad").asDouble(),
                                root.path("standardDeviationOfLogarithm").asDouble(0),
                                root.path("mass_kg").asDouble(Double.NaN),
                                root.path("designFingerprint").asString(""),
                                root.path("computed").asString("")));
                    }
                } catch (JacksonException e) {
                    // Somebody else's file.
                }
            }
        }
        return result;
    }
}
