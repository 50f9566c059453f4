// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Optional;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tubwright.desk.answer.RigExplainAnswer;
import tubwright.desk.answer.RigPlanAnswer;
import tubwright.desk.answer.RigPredictAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.WeighedIn;
import tubwright.engine.rig.explain.Explanation;
import tubwright.engine.rig.explain.NextTub;
import tubwright.engine.rig.explain.Segment;
import tubwright.engine.rig.explain.Update;
import tubwright.engine.rig.plan.GaugePair;
import tubwright.engine.rig.plan.TestPlan;

/** Planned and explained torsion tests and predictions as JSON, SI units in the keys; {@code docs/json.md} has every key. */
public final class RigWorkJson {
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private RigWorkJson() {}

    /** A planned test. */
    public static String write(RigPlanAnswer answer) {
        TestPlan plan = answer.plan();
        ObjectNode root = head("rig plan", answer.version(), plan.tub(), answer.variant(), answer.stamp());
        root.put("case", plan.loading().name());
        root.put("meshSize_m", answer.meshSize());
        root.put("greatestTorque_N_m", plan.torque());
        number(root, "safeTorque_N_m", plan.safeTorque());
        root.put("torsionalStiffness_N_m_per_rad", plan.stiffness());
        root.put("twistAtGreatestTorque_rad", plan.twist());
        root.put("expectedExpanded95_N_m_per_rad", plan.expanded());
        root.put("rigStiffnessNeeded_N_m_per_rad", plan.rigNeeded());
        plan.weakest().ifPresent(w -> {
            ObjectNode node = root.putObject("weakest");
            node.put("zone", w.zone());
            node.put("check", w.check());
            node.put("mode", w.mode());
            node.put(
                    "reserveFactorAtGreatestTorque",
                    w.value() * Math.abs(plan.loading().couple()) / plan.torque());
        });
        ArrayNode unchecked = root.putArray("notChecked");
        plan.notChecked().forEach(unchecked::add);
        ObjectNode hold = root.putObject("restraint");
        hold.put("directionsHeld", plan.restraint().held());
        number(hold, "stiffnessJustHeld_N_m_per_rad", plan.restraint().leastStiffness());
        ArrayNode least = hold.putArray("justHeld");
        plan.restraint().least().forEach(least::add);
        ArrayNode pairs = root.putArray("gaugePairs");
        for (GaugePair pair : plan.pairs()) {
            ObjectNode node = pairs.addObject();
            node.put("station_m", pair.station());
            node.put("spacing_m", pair.spacing());
            node.put("height_m", pair.height());
            node.put("angleExpected_rad", pair.angle());
            node.put("standardUncertainty_rad_per_N_m", pair.deviation());
            node.put("gain_bit", pair.gain());
            node.put("stiffnessLogarithmDeviationLeft", pair.spread());
            node.put("reason", pair.reason());
        }
        ArrayNode doubts = root.putArray("factors");
        for (int i = 0; i < plan.doubts().size(); i++) {
            ObjectNode node = doubts.addObject();
            node.put("of", plan.doubts().get(i).name());
            node.put("deviationOfLogarithmBefore", plan.doubts().get(i).spread());
            node.put("shareOfDeviationLeft", plan.left()[i]);
        }
        ArrayNode parts = root.putArray("uncertainty");
        plan.budget().contributions().forEach(c -> {
            ObjectNode node = parts.addObject();
            node.put("source", c.name());
            node.put("standard_N_m_per_rad", c.standard());
            number(node, "degreesOfFreedom", c.degreesOfFreedom());
        });
        return text(root);
    }

    /** An explained test. */
    public static String write(RigExplainAnswer answer) {
        Explanation told = answer.explanation();
        Update update = told.update();
        ObjectNode root = head("rig explain", answer.version(), answer.tub(), answer.variant(), answer.stamp());
        root.put("file", answer.reading().readings().source());
        root.put("case", told.loading().name());
        root.put("meshSize_m", answer.meshSize());
        root.put("measured_N_m_per_rad", answer.reading().best().stiffness());
        root.put("measuredExpanded95_N_m_per_rad", answer.reading().best().expanded());
        root.put("asDesigned_N_m_per_rad", told.predicted());
        root.put("asBuilt_N_m_per_rad", told.calibrated());
        root.put("asBuiltExpanded95_N_m_per_rad", told.expanded());
        weighed(root, answer.weighed());
        root.put("settled", update.converged());
        root.put("leftOver_standardUncertainties", told.leftOver());
        root.put("solutions", told.solutions());
        ArrayNode segments = root.putArray("segments");
        for (Segment each : told.segments()) {
            ObjectNode node = segments.addObject();
            node.put("from_m", each.from());
            node.put("to_m", each.to());
            node.put("measured_rad_per_N_m", each.measured());
            node.put("asDesigned_rad_per_N_m", each.predicted());
            node.put("asBuilt_rad_per_N_m", each.explained());
            node.put("standardUncertainty_rad_per_N_m", each.deviation());
            node.put("standsOut", each.standsOut());
            each.guilty().ifPresent(d -> node.put("explainedBy", d.name()));
        }
        ArrayNode factors = root.putArray("factors");
        for (int i = 0; i < update.doubts().size(); i++) {
            ObjectNode node = factors.addObject();
            node.put("of", update.doubts().get(i).name());
            node.put("ofTheTest", update.doubts().get(i).ofTheTest());
            node.put("deviationOfLogarithmBefore", update.doubts().get(i).spread());
            node.put("meanOfLogarithm", update.mean()[i]);
            node.put("deviationOfLogarithm", update.deviation(i));
            node.put("learntShare", update.learnt(i));
        }
        ArrayNode alike = root.putArray("notToldApart");
        told.likeness().forEach(pair -> {
            ObjectNode node = alike.addObject();
            node.put("first", update.doubts().get(pair.first()).name());
            node.put("second", update.doubts().get(pair.second()).name());
            node.put("correlation", pair.correlation());
        });
        ArrayNode foretold = root.putArray("foretold");
        answer.foretold().forEach(f -> {
            ObjectNode node = foretold.addObject();
            node.put("name", f.name());
            node.put("computed", f.stamp());
            node.put("torsionalStiffness_N_m_per_rad", f.stiffness());
            node.put("standardDeviationOfLogarithm", f.spread());
            node.put("score_standardDeviations", f.score());
            node.put("held", f.held());
        });
        return text(root);
    }

    /** A prediction. */
    public static String write(RigPredictAnswer answer) {
        NextTub next = answer.prediction();
        ObjectNode root = head("rig predict", answer.version(), answer.tub(), answer.variant(), answer.stamp());
        root.put("designFingerprint", answer.fingerprint());
        root.put("meshSize_m", answer.meshSize());
        root.put("torsionalStiffness_N_m_per_rad", next.stiffness());
        root.put("expanded95_N_m_per_rad", next.expanded());
        root.put("withoutTest_N_m_per_rad", next.uncalibrated());
        root.put("withoutTestExpanded95_N_m_per_rad", next.uncalibratedExpanded());
        root.put("mass_kg", answer.mass());
        number(root, "testedMass_kg", answer.testedMass());
        weighed(root, answer.weighed());
        answer.calibration().ifPresent(c -> {
            ObjectNode node = root.putObject("calibration");
            node.put("testedTub", c.tested());
            node.put("readings", c.source());
            node.put("computed", c.stamp());
        });
        answer.weakest().ifPresent(w -> {
            ObjectNode node = root.putObject("weakest");
            node.put("case", w.load());
            node.put("zone", w.zone());
            node.put("check", w.check());
            node.put("reserveFactor", w.value());
        });
        return text(root);
    }

    private static ObjectNode head(String what, String version, String tub, String variant, String stamp) {
        ObjectNode root = MAPPER.createObjectNode();
        root.put("schemaVersion", 1);
        root.put("program", "tubwright");
        root.put("programVersion", version);
        root.put("answer", what);
        root.put("computed", stamp);
        root.put("caution", RunAnswer.CAUTION);
        root.put("design", tub);
        root.put("variant", variant);
        return root;
    }

    private static void weighed(ObjectNode root, Optional<WeighedIn> weighed) {
        weighed.ifPresent(w -> {
            ObjectNode node = root.putObject("weighed");
            node.put("number", w.number());
            node.put("massFactor", w.mass());
            ArrayNode factors = node.putArray("factors");
            w.known().forEach(k -> {
                ObjectNode factor = factors.addObject();
                factor.put("of", k.doubt().name());
                factor.put("factor", k.factor());
                factor.put("shareWeighed", k.share());
            });
        });
    }

    private static void number(ObjectNode node, String key, double value) {
        if (Double.isFinite(value)) {
            node.put(key, value);
        } else {
            node.putNull(key);
        }
    }

    private static String text(ObjectNode root) {
        return MAPPER.writeValueAsString(root) + "\n";
    }
}
