// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tubwright.desk.answer.DamageAnswer;
import tubwright.desk.answer.ReserveWords;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.response.Reserve;
import tubwright.engine.safety.damage.DamageModel;
import tubwright.engine.safety.damage.Degree;
import tubwright.engine.safety.damage.Patch;
import tubwright.engine.safety.damage.PatchAnswer;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.StructureException;
import tubwright.numerics.solver.Solvers;

/** Patches taken away by hand. The tub is solved at the first one; every other then costs milliseconds. */
final class HitBook {
    private static final double LEAST = 0.005;
    private static final double MOST = 1;

    private final OpenProject project;
    private String solved = "";
    private Optional<DamageModel> model = Optional.empty();

    HitBook(OpenProject project) {
        this.project = project;
    }

    /** Takes one away. */
    synchronized HitView hit(HitView.HitRequest asked) {
        if (asked.place() == null
                || asked.place().length != 3
                || !Arrays.stream(asked.place()).allMatch(Double::isFinite)) {
            throw new UserMistake("a patch lies at a point: three numbers");
        }
        if (!(asked.size() >= LEAST && asked.size() <= MOST)) {
            throw new UserMistake("a patch is 5 mm to 1 m wide");
        }
        Degree degree = Arrays.stream(Degree.values())
                .filter(d -> d.words().equals(asked.degree()))
                .findFirst()
                .orElseThrow(() -> new UserMistake("a hit is barely visible, visible or a hole"));
        Workings workings = project.workings();
        Design.Variant variant = workings.variant(asked.variant());
        try {
            DamageModel of = model(workings, variant);
            Patch patch = of.patches().disc(asked.place(), asked.size());
            return view(variant.name(), workings.revision(), of.answer(patch, degree));
        } catch (StructureException | ShapeException fault) {
            throw workings.design().explain(variant, fault);
        }
    }

    private DamageModel model(Workings workings, Design.Variant variant) {
        String key = workings.revision() + " " + variant.name();
        if (model.isEmpty() || !solved.equals(key)) {
            model = Optional.empty();
            model = Optional.of(DamageModel.of(variant.tub(), workings.meshSize(variant.name()), Solvers.best()));
            solved = key;
        }
        return model.get();
    }

    private static HitView view(String variant, String revision, PatchAnswer answer) {
        List<HitView.StiffnessView> stiffness = answer.stiffness().stream()
                .map(s -> new HitView.StiffnessView(
                        s.name(), Double.isNaN(s.after()) ? Optional.empty() : Optional.of(1 - s.after() / s.before())))
                .toList();
        List<HitView.LoadView> loads = answer.loads().stream()
                .sorted(Comparator.comparingDouble(
                        l -> l.loose() ? 0 : l.after().map(Reserve::value).orElse(Double.POSITIVE_INFINITY)))
                .map(l -> new HitView.LoadView(
                        l.name(),
                        !l.loose(),
                        l.before().map(Reserve::value).filter(Double::isFinite),
                        l.after().map(Reserve::value).filter(Double::isFinite),
                        l.after()
                                .map(r -> r.zone() + ": " + ReserveWords.what(r))
                                .orElse("")))
                .toList();
        return new HitView(
                variant,
                revision,
                answer.patch().place(),
                answer.patch().region(),
                answer.patch().area(),
                answer.degree().words(),
                stiffness,
                loads,
                DamageAnswer.aside(answer),
                DamageAnswer.ASIDE);
    }
}
