// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import java.util.Optional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tubwright.desk.answer.RigAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.rig.Estimate;
import tubwright.engine.rig.Finding;
import tubwright.engine.rig.Loop;
import tubwright.engine.rig.TorsionReading;
import tubwright.engine.rig.TorsionReading.StationAngle;

/** A reduced torsion test as one JSON document, SI units in the keys; and the twist line of a run read back from its own. */
public final class RigJson {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private RigJson() {}

    /** The document, ending in a line feed. */
    public static String write(RigAnswer answer) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        root.put("program", "tubwright");
        root.put("programVersion", answer.version());
        root.put("answer", "rig read");
        root.put("caution", RunAnswer.CAUTION);
        root.put("design", answer.title());
        ArrayNode tests = root.putArray("tests");
        answer.tests().forEach(t -> test(tests.addObject(), t));
        answer.split().ifPresent(s -> {
            ObjectNode node = root.putObject("hubToHubSplit");
            node.put("suspensionStiffness_N_m_per_rad", s.suspension());
            node.put("suspensionStiffnessExpanded95_N_m_per_rad", s.expanded());
            node.put("tubShareOfFlexibility", s.tubShare());
        });
        answer.notSplit().ifPresent(words -> root.put("hubToHubNotSplit", words));
        answer.predicted().ifPresent(p -> {
            ObjectNode node = root.putObject("predicted");
            node.put("variant", p.variant());
            node.put("torsionalStiffness_N_m_per_rad", p.stiffness());
        });
        return MAPPER.writeValueAsString(root) + "\n";
    }

    private static void test(ObjectNode node, TorsionReading test) {
        node.put("file", test.readings().source());
        node.put("test", test.readings().setup().test());
        node.put("angle", test.span());
        node.put("steps", test.readings().steps().size());
        node.put("bedInStepsDropped", test.dropped());
        estimate(node.putObject("all"), test.all());
        test.loading().ifPresent(e -> estimate(node.putObject("loading"), e));
        test.unloading().ifPresent(e -> estimate(node.putObject("unloading"), e));
        test.withoutRig().ifPresent(e -> estimate(node.putObject("rigTakenOut"), e));
        test.withoutOutliers().ifPresent(e -> estimate(node.putObject("outliersLeftOut"), e));
        ArrayNode loops = node.putArray("loops");
        for (Loop loop : test.loops()) {
            ObjectNode each = loops.addObject();
            each.put("cycle", loop.cycle());
            number(each, "area_J", loop.area());
            number(each, "width_rad", loop.width());
            number(each, "shareOfRange", loop.share());
            number(each, "residual_rad", loop.residual());
        }
        number(node, "slop_rad", test.straightness().slop());
        number(node, "slopStandardUncertainty_rad", test.straightness().slopError());
        number(node, "curvatureShareOfRange", test.straightness().curvature());
        number(node, "curvatureOverItsUncertainty", test.straightness().curvatureSignificance());
        ArrayNode twist = node.putArray("twistLine");
        for (StationAngle station : test.twist()) {
            ObjectNode each = twist.addObject();
            number(each, "station_m", station.station());
            number(each, "anglePerTorque_rad_per_N_m", station.perTorque());
            number(each, "anglePerTorqueExpanded95_rad_per_N_m", station.expanded());
            number(each, "bodilyMotionRemoved_m", station.bodily());
            ArrayNode gauges = each.putArray("gauges");
            station.gauges().forEach(gauges::add);
        }
        ArrayNode findings = node.putArray("findings");
        for (Finding finding : test.findings()) {
            ObjectNode each = findings.addObject();
            each.put(
                    "kind",
                    finding.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
            each.put("place", finding.place());
            each.put("words", finding.words());
        }
    }

    private static void estimate(ObjectNode node, Estimate estimate) {
        number(node, "torsionalStiffness_N_m_per_rad", estimate.stiffness());
        number(node, "expanded95_N_m_per_rad", estimate.expanded());
        number(node, "standardErrorOfLine_N_m_per_rad", estimate.standardError());
        number(node, "rSquared", estimate.rSquared());
        node.put("steps", estimate.steps());
        ArrayNode parts = node.putArray("uncertainty");
        estimate.uncertainty().contributions().forEach(c -> {
            ObjectNode each = parts.addObject();
            each.put("source", c.name());
            number(each, "standard_N_m_per_rad", c.standard());
            number(each, "degreesOfFreedom", c.degreesOfFreedom());
        });
    }

    /** JSON has no words for NaN and infinity; they become null. */
    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }

    /** The leading variant's twist line in a run's answer, if it has a torsion case. */
    public static Optional<RigAnswer.Predicted> predicted(String answerJson) {
        JsonNode root = MAPPER.readTree(answerJson);
        for (JsonNode variant : list(root.path("variants"))) {
            for (JsonNode each : list(variant.path("cases"))) {
                JsonNode line = each.path("twistLine");
                double couple = each.path("couple_N_m").asDouble(0);
                if (line.isObject() && couple != 0) {
                    double[] angles = numbers(line.path("angles_rad"));
                    for (int i = 0; i < angles.length; i++) {
                        angles[i] /= couple;
                    }
                    return Optional.of(new RigAnswer.Predicted(
                            variant.path("variant")
                                    .asString(variant.path("name").asString("as designed")),
                            each.path("torsionalStiffness_N_m_per_rad").asDouble(Double.NaN),
                            numbers(line.path("stations_m")),
                            angles));
                }
            }
        }
        return Optional.empty();
    }

    private static List<JsonNode> list(JsonNode array) {
        return array.valueStream().toList();
    }

    private static double[] numbers(JsonNode array) {
        return array.valueStream().mapToDouble(n -> n.asDouble(Double.NaN)).toArray();
    }
}
