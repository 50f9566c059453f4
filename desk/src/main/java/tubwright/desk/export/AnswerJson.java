// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import java.util.Locale;
import tools.jackson.core.JsonGenerator;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.mesh.MeshQuality;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.Converged;
import tubwright.engine.response.EnergyShare;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.SheetState;
import tubwright.engine.response.TwistLine;
import tubwright.engine.response.VariantAnswer;

/**
 * The answer as one JSON document in SI units, each named in its key. {@code docs/json.md} explains every key; later
 * versions add keys and never change or drop one.
 */
public final class AnswerJson {
    /** Raised when keys are added. */
    public static final int SCHEMA_VERSION = 1;

    private final JsonGenerator json;

    private AnswerJson(JsonGenerator json) {
        this.json = json;
    }

    /** The document, ending in a line feed. */
    public static String write(RunAnswer input) {
        return JsonText.of(json -> new AnswerJson(json).document(input));
    }

    private void document(RunAnswer input) {
        json.writeStartObject();
        json.writeNumberProperty("schemaVersion", SCHEMA_VERSION);
        json.writeStringProperty("program", "tubwright");
        json.writeStringProperty("programVersion", input.version());
        json.writeStringProperty("computedAt", input.stamp());
        json.writeStringProperty("tub", input.tub());
        json.writeStringProperty("about", input.about());
        json.writeArrayPropertyStart("targets");
        for (RunAnswer.Target target : input.targets()) {
            json.writeStartObject();
            json.writeStringProperty("what", target.what());
            json.writeStringProperty("bound", target.atLeast() ? "at least" : "at most");
            number("limit", target.limit());
            number("value", target.value());
            number("error", target.error());
            json.writeStringProperty("unit", target.unit());
            json.writeStringProperty("standing", words(target.standing()));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("variants");
        for (VariantAnswer variant : input.variants()) {
            variant(variant);
        }
        json.writeEndArray();
        calibrated(input);
        strings("warnings", input.warnings());
        json.writeStringProperty("caution", RunAnswer.CAUTION);
        json.writeEndObject();
    }

    private void calibrated(RunAnswer input) {
        if (input.calibrated().isEmpty()) {
            json.writeNullProperty("calibration");
            return;
        }
        RunAnswer.Calibrated calibrated = input.calibrated().get();
        json.writeObjectPropertyStart("calibration");
        json.writeStringProperty("testedTub", calibrated.tested());
        json.writeStringProperty("readings", calibrated.source());
        json.writeStringProperty("computed", calibrated.stamp());
        json.writeArrayPropertyStart("factors");
        for (RunAnswer.Calibrated.Factor factor : calibrated.factors()) {
            json.writeStartObject();
            json.writeStringProperty("name", factor.name());
            json.writeNumberProperty("factor", factor.factor());
            json.writeNumberProperty("deviationOfLogarithm", factor.spread());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void variant(VariantAnswer variant) {
        json.writeStartObject();
        json.writeStringProperty("variant", variant.variant());
        json.writeStringProperty("construction", variant.construction());
        json.writeNumberProperty("pieceCount", variant.pieceCount());
        json.writeNumberProperty("partCount", variant.partCount());
        json.writeNumberProperty("fastenerCount", variant.fastenerCount());
        number("seamLength_m", variant.seamLength());
        json.writeNumberProperty("meshNodes", variant.mesh().nodeCount());
        json.writeNumberProperty("meshElements", variant.mesh().elementCount());
        quality(variant.quality());
        MassAnswer mass = variant.mass();
        json.writeObjectPropertyStart("mass");
        body(mass.whole());
        json.writeArrayPropertyStart("pieces");
        for (MassAnswer.Body piece : mass.pieces()) {
            json.writeStartObject();
            json.writeStringProperty("name", piece.name());
            body(piece);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayPropertyStart("items");
        for (MassAnswer.Item item : mass.items()) {
            json.writeStartObject();
            json.writeStringProperty("kind", words(item.kind()));
            json.writeStringProperty("name", item.name());
            json.writeStringProperty("piece", item.piece());
            number("area_m2", item.area());
            number("mass_kg", item.mass());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeArrayPropertyStart("cases");
        for (CaseAnswer answer : variant.cases()) {
            answer(answer);
        }
        json.writeEndArray();
        ReserveJson.write(json, variant.reserves());
        StabilityJson.write(json, variant.stability());
        variant.installed().ifPresent(i -> InstalledJson.write(json, i));
        json.writeEndObject();
    }

    private void quality(MeshQuality quality) {
        json.writeObjectPropertyStart("meshQuality");
        json.writeNumberProperty("quadrilaterals", quality.quads());
        json.writeNumberProperty("triangles", quality.triangles());
        spread("aspect", quality.aspect());
        spread("skew_deg", quality.skew());
        spread("warp_deg", quality.warp());
        spread("corner_deg", quality.corner());
        json.writeArrayPropertyStart("areas");
        for (MeshQuality.PartArea area : quality.areas()) {
            json.writeStartObject();
            json.writeStringProperty("part", area.part());
            number("mesh_m2", area.mesh());
            number("exact_m2", area.exact());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void spread(String key, MeshQuality.Spread spread) {
        json.writeObjectPropertyStart(key);
        number("least", spread.least());
        number("mean", spread.mean());
        number("most", spread.most());
        numbers("worstAt_m", spread.worstAt());
        json.writeEndObject();
    }

    private void body(MassAnswer.Body body) {
        number("mass_kg", body.mass());
        numbers("centreOfMass_m", body.centre());
        numbers("inertia_kg_m2", body.inertia());
    }

    private void answer(CaseAnswer answer) {
        boolean torsion = answer.kind() == CaseAnswer.Kind.TORSION;
        json.writeStartObject();
        json.writeStringProperty("case", answer.name());
        json.writeStringProperty("kind", torsion ? "torsion" : "bending");
        converged(torsion ? "torsionalStiffness" : "bendingStiffness", torsion ? "_N_m_per_rad" : "_N_per_m", answer);
        number(
                torsion ? "stiffnessAtHardpoints_N_m_per_rad" : "stiffnessAtHardpoints_N_per_m",
                answer.stiffnessAtHardpoints());
        number("frontStation_m", answer.frontStation());
        number("rearStation_m", answer.rearStation());
        json.writeStringProperty("includes", answer.includes());
        sheet(answer);
        number(torsion ? "couple_N_m" : "force_N", answer.load());
        answer.twistLine().ifPresent(this::twistLine);
        json.writeArrayPropertyStart("energy");
        for (EnergyShare share : answer.energy()) {
            json.writeStartObject();
            json.writeStringProperty("kind", words(share.kind()));
            json.writeStringProperty("name", share.name());
            number("energy_J", share.energy());
            number("share", share.share());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void sheet(CaseAnswer answer) {
        if (answer.sheet().isEmpty()) {
            json.writeNullProperty("sheet");
            return;
        }
        SheetState sheet = answer.sheet().get();
        json.writeObjectPropertyStart("sheet");
        json.writeNumberProperty("panels", sheet.panels());
        json.writeNumberProperty("buckled", sheet.buckled());
        json.writeStringProperty("firstPanel", sheet.firstPanel());
        number("firstFactor", sheet.firstFactor());
        number("stiffnessLeft", sheet.stiffnessLeft());
        json.writeEndObject();
    }

    private void converged(String name, String unit, CaseAnswer answer) {
        Converged stiffness = answer.stiffness();
        number(name + unit, stiffness.value());
        number(name + "Error" + unit, stiffness.error());
        json.writeObjectPropertyStart("convergence");
        number("observedOrder", stiffness.order());
        json.writeStringProperty("note", stiffness.note());
        json.writeArrayPropertyStart("samples");
        for (Converged.Sample sample : stiffness.samples()) {
            json.writeStartObject();
            number("meshSize_m", sample.meshSize());
            json.writeNumberProperty("unknowns", sample.unknowns());
            number("value" + unit, sample.value());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void twistLine(TwistLine line) {
        json.writeObjectPropertyStart("twistLine");
        numbers("stations_m", line.stations());
        numbers("angles_rad", line.angles());
        numbers("slopes_rad_per_m", line.slopes());
        numbers("rigidities_N_m2", line.rigidities());
        json.writeArrayPropertyStart("jumps");
        for (TwistLine.Jump jump : line.jumps()) {
            json.writeStartObject();
            json.writeStringProperty("joint", jump.joint());
            number("station_m", jump.station());
            number("angle_rad", jump.angle());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private void numbers(String name, double[] values) {
        json.writeArrayPropertyStart(name);
        for (double value : values) {
            if (Double.isFinite(value)) {
                json.writeNumber(tidy(value));
            } else {
                json.writeNull();
            }
        }
        json.writeEndArray();
    }

    private void strings(String name, List<String> values) {
        json.writeArrayPropertyStart(name);
        values.forEach(json::writeString);
        json.writeEndArray();
    }

    /** JSON has no words for NaN and infinity; they become null. */
    private void number(String name, double value) {
        if (Double.isFinite(value)) {
            json.writeNumberProperty(name, tidy(value));
        } else {
            json.writeNullProperty(name);
        }
    }

    /** Ten significant digits: beyond them, sums made in another order differ. */
    static double tidy(double value) {
        return value == 0 ? 0.0 : Double.parseDouble(String.format(Locale.ROOT, "%.9e", value));
    }

    private static String words(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
