// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tubwright.desk.answer.Reading;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.answer.RunAnswer.Landmark;
import tubwright.desk.export.FieldFiles;
import tubwright.engine.design.Design;
import tubwright.engine.design.Targets;
import tubwright.engine.design.text.Limit;
import tubwright.engine.laminate.LayupAdvice;
import tubwright.engine.material.Material;
import tubwright.engine.material.Trust;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshLine;
import tubwright.engine.quantity.Unit;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Stability;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.response.Vibrations;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.Tub;

/** Gathers answers and what the design says about them. */
public final class Gathering {
    private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9][0-9 .,_]*(?:[eE][-+]?[0-9]+)?\\s*(.*)");

    private Gathering() {}

    /** The answers of the chosen variants with layups, joints, targets and warnings of the design. */
    public static RunAnswer of(
            Design design, List<Design.Variant> chosen, List<VariantAnswer> answers, Workbench.Request request) {
        List<RunAnswer.Layup> layups = new ArrayList<>();
        List<RunAnswer.JointCard> joints = new ArrayList<>();
        List<String> files = new ArrayList<>(List.of("answer.json"));
        for (int v = 0; v < chosen.size(); v++) {
            Tub tub = chosen.get(v).tub();
            Mesh mesh = answers.get(v).mesh();
            layups.addAll(Laminates.on(tub, mesh));
            tub.joints().forEach(j -> joint(tub.variant(), j, mesh).ifPresent(joints::add));
            tub.stiffeners().forEach(b -> {
                double length = length(b.line(), mesh);
                if (length > 0) {
                    joints.add(new RunAnswer.JointCard(tub.variant(), b.line(), b.description(), length, 0));
                }
            });
            files.add(FieldFiles.name(tub.variant()));
        }
        files.add("inputs/" + design.file().getFileName());
        List<Material> materials = Laminates.materials(layups);
        return new RunAnswer(
                design.name(),
                about(design),
                request.stamp(),
                request.version(),
                targets(chosen.getFirst().targets(), answers.getFirst()),
                answers,
                landmarks(chosen.getFirst().tub().shape()),
                layups,
                materials,
                joints,
                request.calibration().map(AsBuilt::words),
                warnings(design, materials),
                files);
    }

    /** Warnings of the design, and one about values nobody has looked up. */
    static List<String> warnings(Design design, List<Material> materials) {
        List<String> result = new ArrayList<>();
        design.warnings().stream()
                .filter(w -> w.severity() == LayupAdvice.Severity.WARNING)
                .forEach(w -> result.add(w.toString()));
        List<String> weak = materials.stream()
                .filter(m -> m.properties().values().values().stream()
                        .anyMatch(v -> v.provenance().trust() == Trust.FROM_MEMORY))
                .map(Material::name)
                .toList();
        if (!weak.isEmpty()) {
            result.add("Some values of " + String.join(", ", weak)
                    + " are from memory and have not been checked against their source (tubwright materials NAME"
                    + " shows which). Replace them before you rely on the answer.");
        }
        return result;
    }

    private static String about(Design design) {
        String by = design.by().map(b -> b + ".").orElse("");
        String notes = design.notes().map(String::strip).orElse("");
        return (by + " " + notes).strip();
    }

    private static List<RunAnswer.Target> targets(Targets targets, VariantAnswer answer) {
        List<RunAnswer.Target> result = new ArrayList<>();
        Optional<CaseAnswer> torsion = Reading.torsion(answer);
        Optional<CaseAnswer> bending = Reading.bending(answer);
        if (targets.torsionalStiffness().isPresent() && torsion.isPresent()) {
            result.add(
                    target("torsional stiffness", targets.torsionalStiffness().get(), torsion.get()));
        }
        if (targets.bendingStiffness().isPresent() && bending.isPresent()) {
            result.add(target("bending stiffness", targets.bendingStiffness().get(), bending.get()));
        }
        targets.mass()
                .ifPresent(limit ->
                        result.add(target("mass", limit, answer.mass().whole().mass(), 0)));
        stability(targets, answer.stability(), result);
        return result;
    }

    private static void stability(Targets targets, Stability stability, List<RunAnswer.Target> result) {
        boolean answered = stability.buckling().stream().allMatch(b -> b.note().isEmpty());
        if (targets.bucklingFactor().isPresent() && !stability.buckling().isEmpty()) {
            // Nothing buckles: as far away as can be. No answer: nothing is known.
            double value = stability
                    .first()
                    .flatMap(CaseBuckling::lowest)
                    .map(Buckle::factor)
                    .orElse(Double.POSITIVE_INFINITY);
            double error = stability
                    .first()
                    .map(CaseBuckling::meshError)
                    .filter(Double::isFinite)
                    .orElse(0.0);
            result.add(target(
                    "buckling factor",
                    targets.bucklingFactor().get(),
                    answered ? value : Double.NaN,
                    answered ? error : Double.POSITIVE_INFINITY));
        }
        stability.free().ifPresent(v -> {
            frequency("first torsion frequency", targets.firstTorsionFrequency(), v, Mode.Motion.TORSION, result);
            frequency("first bending frequency", targets.firstBendingFrequency(), v, Mode.Motion.VERTICAL, result);
        });
    }

    private static void frequency(
            String what, Optional<Limit> limit, Vibrations answer, Mode.Motion motion, List<RunAnswer.Target> result) {
        if (limit.isEmpty()) {
            return;
        }
        Optional<Mode> mode = answer.first(motion);
        if (mode.isPresent()) {
            double error = answer.meshErrors().getOrDefault(motion, 0.0);
            result.add(target(what, limit.get(), mode.get().frequency(), error));
        } else {
            // It lies beyond all modes computed: enough for a lower limit below that, not for more.
            double known = answer.known();
            boolean enough = limit.get().atLeast() && known >= limit.get().si();
            result.add(target(
                    what + " (beyond the modes computed)", limit.get(), known, enough ? 0 : Double.POSITIVE_INFINITY));
        }
    }

    private static RunAnswer.Target target(String what, Limit limit, CaseAnswer answer) {
        double error = answer.stiffness().error();
        return target(what, limit, answer.stiffness().value(), Double.isFinite(error) ? error : 0);
    }

    /** In the unit in which the design states the limit. */
    private static RunAnswer.Target target(String what, Limit limit, double value, double error) {
        Matcher number = NUMBER.matcher(limit.text().replaceFirst("^\\s*at (least|most)\\s+", ""));
        boolean named = number.matches() && !number.group(1).isBlank();
        Unit unit = named ? Unit.of(number.group(1).strip()) : Unit.ONE;
        return new RunAnswer.Target(
                what, limit.atLeast(), unit.fromSi(limit.si()), unit.fromSi(value), unit.fromSi(error), unit.text());
    }

    /** Openings and walls along a tub, in order of station. */
    public static List<Landmark> landmarks(TubShape shape) {
        List<Landmark> result = new ArrayList<>();
        for (Opening opening : shape.openings()) {
            double[] bounds = opening.contour().bounds();
            result.add(new Landmark(opening.name(), Landmark.Kind.OPENING, bounds[0], bounds[1]));
        }
        for (Wall wall : shape.walls()) {
            if (wall instanceof Wall.Across across) {
                double low = across.low().x();
                double high = across.high().x();
                result.add(new Landmark(across.name(), Landmark.Kind.WALL, Math.min(low, high), Math.max(low, high)));
            }
        }
        result.sort(Comparator.comparingDouble(m -> m.from() + m.to()));
        return result;
    }

    private static Optional<RunAnswer.JointCard> joint(String variant, Joint joint, Mesh mesh) {
        double length = length(joint.line(), mesh);
        if (!(length > 0)) {
            return Optional.empty();
        }
        int fasteners =
                joint.fastenerPitch() > 0 ? joint.fastenerRows() * (int) Math.round(length / joint.fastenerPitch()) : 0;
        return Optional.of(new RunAnswer.JointCard(variant, joint.line(), joint.description(), length, fasteners));
    }

    /** Length of all mesh lines of a name, m. */
    private static double length(String name, Mesh mesh) {
        return mesh.lines().stream()
                .filter(l -> l.name().equals(name))
                .mapToDouble(l -> length(l, mesh.nodes()))
                .sum();
    }

    private static double length(MeshLine line, double[] x) {
        double sum = 0;
        for (int[] chain : line.chains()) {
            for (int i = 1; i < chain.length; i++) {
                int a = 3 * chain[i - 1];
                int b = 3 * chain[i];
                sum += Math.sqrt(
                        Math.pow(x[b] - x[a], 2) + Math.pow(x[b + 1] - x[a + 1], 2) + Math.pow(x[b + 2] - x[a + 2], 2));
            }
        }
        return sum;
    }
}
