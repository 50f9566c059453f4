// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tubwright.engine.rig.ReadingsException;
import tubwright.engine.rig.explain.Calibration;
import tubwright.engine.rig.explain.Doubt;

/** What a test has taught, kept in the project as {@code rig/calibration.json}. */
public final class CalibrationFile {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    /** Words for the kinds of doubt that outlive a test. */
    private static final Map<String, Doubt.Kind> KINDS = Map.of(
            "laminate stiffness", Doubt.Kind.LAMINATE,
            "core shear", Doubt.Kind.CORE_SHEAR,
            "zone", Doubt.Kind.ZONE,
            "joint", Doubt.Kind.JOINT,
            "held hardpoints", Doubt.Kind.HELD_HARDPOINTS);

    private CalibrationFile() {}

    /** Where a design's calibration lies. */
    public static Path of(Path design) {
        return design.resolve("rig").resolve("calibration.json");
    }

    /** Keeps it, in place of the one before. */
    public static void write(Path file, Calibration calibration) throws IOException {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        root.put("program", "tubwright");
        root.put("testedTub", calibration.tested());
        root.put("testedMass_kg", calibration.mass());
        root.put("readings", calibration.source());
        root.put("computed", calibration.stamp());
        root.put(
                "meaning",
                "each factor multiplies a modelled stiffness; ln(factor) is normal with this mean and covariance");
        ArrayNode doubts = root.putArray("factors");
        for (int i = 0; i < calibration.doubts().size(); i++) {
            Doubt doubt = calibration.doubts().get(i);
            ObjectNode node = doubts.addObject();
            node.put("of", kind(doubt));
            node.put("name", subject(doubt));
            node.put("factor", Math.exp(calibration.mean()[i]));
            node.put("meanOfLogarithm", calibration.mean()[i]);
            node.put("deviationOfLogarithmBefore", doubt.spread());
            ArrayNode row = node.putArray("covarianceOfLogarithm");
            for (double c : calibration.covariance()[i]) {
                row.add(c);
            }
        }
        Files.createDirectories(file.toAbsolutePath().getParent());
        Path draft =
                file.resolveSibling(".calibration-" + ProcessHandle.current().pid());
        Files.writeString(draft, MAPPER.writeValueAsString(root) + "\n");
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
    }

    /**
     * The one that is kept, if any.
     *
     * @throws ReadingsException if the file is there and is no calibration
     */
    public static Optional<Calibration> read(Path file) throws IOException {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            JsonNode root = MAPPER.readTree(Files.readString(file));
            List<JsonNode> nodes = root.path("factors").valueStream().toList();
            List<Doubt> doubts = new ArrayList<>();
            double[] mean = new double[nodes.size()];
            double[][] covariance = new double[nodes.size()][];
            for (int i = 0; i < nodes.size(); i++) {
                JsonNode node = nodes.get(i);
                doubts.add(doubt(
                        node.path("of").asString(""),
                        node.path("name").asString(""),
                        node.path("deviationOfLogarithmBefore").asDouble()));
                mean[i] = node.path("meanOfLogarithm").asDouble();
                covariance[i] = node.path("covarianceOfLogarithm")
                        .valueStream()
                        .mapToDouble(JsonNode::asDouble)
                        .toArray();
                if (covariance[i].length != nodes.size()) {
                    throw new IllegalArgumentException("factor " + (i + 1) + " has " + covariance[i].length
                            + " covariances, there are " + nodes.size() + " factors");
                }
            }
            if (nodes.isEmpty()) {
                throw new IllegalArgumentException("it has no factors");
            }
            return Optional.of(new Calibration(
                    doubts,
                    mean,
                    covariance,
                    root.path("testedTub").asString(""),
                    root.path("testedMass_kg").asDouble(Double.NaN),
                    root.path("readings").asString(""),
                    root.path("computed").asString("")));
        } catch (JacksonException | IllegalArgumentException e) {
            String why = e.getMessage() == null
                    ? ""
                    : e.getMessage().lines().findFirst().orElse("");
            throw new ReadingsException(file + ": is no calibration that can be read (" + why
                    + "); write it again with: tubwright rig explain DIR READINGS --keep");
        }
    }

    private static String kind(Doubt doubt) {
        return KINDS.entrySet().stream()
                .filter(k -> doubt.is(k.getValue()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(doubt.name() + " belongs to the test"));
    }

    private static String subject(Doubt doubt) {
        return doubt.of().isEmpty() ? doubt.name() : doubt.of();
    }

    private static Doubt doubt(String kind, String name, double spread) {
        Doubt.Kind known = KINDS.get(kind);
        if (known == null) {
            throw new IllegalArgumentException("it speaks of \"" + kind + "\"");
        }
        return known == Doubt.Kind.HELD_HARDPOINTS ? Doubt.of(known, spread) : new Doubt(known, name, spread);
    }
}
