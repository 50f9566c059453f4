// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.CheckAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.design.Design;
import tubwright.engine.design.Template;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** The workbench with the engine behind it. */
public final class EngineWorkbench implements Workbench {
    /** Mesh sizes of a quick run, as multiples of the finest: one step coarser than usual. */
    private static final List<Double> QUICK_SIZES = List.of(2 * Math.sqrt(2), 2.0);

    @Override
    public Draft read(Path place) {
        return of(Design.read(place));
    }

    /** A design that was read already. */
    public static Draft of(Design design) {
        return new Read(design);
    }

    @Override
    public String schema() {
        return Design.schema();
    }

    @Override
    public List<Material> materials() {
        return MaterialLibrary.shipped().all();
    }

    @Override
    public Map<String, String> starter(String name) {
        return Map.of(Design.FILE_NAME, Template.text(name));
    }

    private record Read(Design design) implements Draft {
        @Override
        public String tub() {
            return design.name();
        }

        @Override
        public List<String> variants() {
            return design.variants().stream().map(Design.Variant::name).toList();
        }

        @Override
        public List<String> cases() {
            return design.variants().stream()
                    .flatMap(v -> v.tub().cases().stream())
                    .map(Case::name)
                    .distinct()
                    .toList();
        }

        @Override
        public List<Path> files() {
            return List.of(design.file());
        }

        @Override
        public CheckAnswer check() {
            for (Design.Variant variant : design.variants()) {
                try {
                    Study.check(variant.tub());
                } catch (StructureException | ShapeException fault) {
                    throw design.explain(variant, fault);
                }
            }
            return InWords.of(design);
        }

        @Override
        public RunAnswer run(Request request, Listener listener) {
            List<String> names = request.variants().isEmpty() ? variants() : request.variants();
            List<Design.Variant> chosen =
                    names.stream().map(n -> design.variant(n).orElseThrow()).toList();
            List<VariantAnswer> answers = new ArrayList<>();
            for (int v = 0; v < chosen.size(); v++) {
                Tub tub = only(AsBuilt.of(chosen.get(v).tub(), request.calibration()), request.cases());
                double factor = request.meshSize().orElse(tub.meshSize()) / tub.meshSize();
                List<Double> sizes = (request.quick() ? QUICK_SIZES : Study.USUAL_SIZES)
                        .stream().map(s -> s * factor).toList();
                int before = v * sizes.size();
                int all = chosen.size() * sizes.size();
                Study study = new Study(
                        Solvers.best(),
                        sizes,
                        (variant, step, size, done, _) -> listener.step(
                                Stages.words(variant, step, size, before + done, all), before + done, all),
                        request.stability()
                                ? chosen.get(v).stability().orUsual()
                                : chosen.get(v).stability());
                try {
                    answers.addAll(study.answer(List.of(tub)));
                } catch (StructureException | ShapeException fault) {
                    throw design.explain(chosen.get(v), fault);
                }
            }
            return Gathering.of(design, chosen, answers, request);
        }

        /** The tub with the wanted cases alone; all where none is named. */
        private static Tub only(Tub tub, List<String> names) {
            if (names.isEmpty()) {
                return tub;
            }
            List<Case> cases =
                    tub.cases().stream().filter(c -> names.contains(c.name())).toList();
            if (cases.isEmpty()) {
                throw new UserMistake("variant \"" + tub.variant() + "\" has none of the cases "
                        + String.join(", ", names) + "\n    leave it out with --variant, or name another case");
            }
            return tub.withCases(cases);
        }
    }
}
