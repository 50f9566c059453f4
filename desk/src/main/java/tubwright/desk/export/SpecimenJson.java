// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.SpecimenAnswer;
import tubwright.engine.rig.specimen.CouponReport;
import tubwright.engine.rig.specimen.PanelReport;
import tubwright.engine.rig.statistics.Sample;

/** Tested specimens as one JSON document, SI units in the keys. */
public final class SpecimenJson {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private SpecimenJson() {}

    /** The document, ending in a line feed. */
    public static String write(SpecimenAnswer answer) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        root.put("program", "tubwright");
        root.put("programVersion", answer.version());
        root.put("answer", "rig specimens");
        root.put("caution", RunAnswer.CAUTION);
        root.put("file", answer.test().source());
        root.put("test", answer.test().kind().word());
        ArrayNode specimens = root.putArray("specimens");
        answer.panels().ifPresent(report -> {
            for (PanelReport.Panel each : report.panels()) {
                ObjectNode node = specimens.addObject();
                node.put("name", each.name());
                number(node, "span_m", each.span());
                number(node, "width_m", each.width());
                number(node, "stiffness_N_per_m", each.stiffness().stiffness());
                number(node, "stiffnessAsRead_N_per_m", each.stiffness().asRead());
                number(
                        node,
                        "expanded95_N_per_m",
                        each.stiffness().uncertainty().expanded(0.95));
                number(node, "greatestLoad_N", each.greatestLoad());
                number(node, "predicted_N_per_m", each.predicted());
                number(node, "predictedShareOfShear", each.shearShare());
                number(node, "skinStressAtGreatestLoad_Pa", each.skinStress());
                number(node, "coreShearAtGreatestLoad_Pa", each.coreStress());
            }
            report.split().ifPresent(s -> {
                ObjectNode node = root.putObject("perWidth");
                number(node, "bendingStiffness_N_m", s.bending());
                number(node, "bendingStandardError_N_m", s.bendingError());
                number(node, "shearStiffness_N_per_m", s.shear());
                number(node, "shearStandardError_N_per_m", s.shearError());
            });
            if (report.split().isEmpty()) {
                root.put("notToldApart", report.whyNoSplit());
            }
        });
        answer.coupons().ifPresent(report -> {
            for (CouponReport.Coupon each : report.coupons()) {
                ObjectNode node = specimens.addObject();
                node.put("name", each.name());
                number(node, "modulus_Pa", each.modulus());
                number(node, "strength_Pa", each.strength());
                number(node, "stressAtGreatestLoad_Pa", each.last());
            }
            report.modulus().ifPresent(s -> sample(root.putObject("modulus"), s));
            report.strength().ifPresent(s -> sample(root.putObject("strength"), s));
        });
        return MAPPER.writeValueAsString(root) + "\n";
    }

    private static void sample(ObjectNode node, Sample sample) {
        number(node, "mean_Pa", sample.mean());
        number(node, "standardDeviation_Pa", sample.deviation());
        number(node, "bBasis_Pa", sample.bBasis());
        node.put("specimens", sample.values().length);
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }
}
