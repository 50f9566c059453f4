// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import tubwright.desk.answer.StabilityWords;
import tubwright.desk.text.Figures;
import tubwright.desk.work.UserMistake;
import tubwright.engine.design.Design;
import tubwright.engine.response.Buckle;
import tubwright.engine.response.CaseBuckling;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Stability;
import tubwright.engine.response.StabilityAsk;
import tubwright.engine.response.Study;
import tubwright.engine.response.VariantAnswer;
import tubwright.engine.response.Vibrations;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.structure.Mode;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** The buckling and vibration shapes that were found last. */
final class ModesBook {
    private final OpenProject project;
    private final Errand errand;
    private ModesView view = ModesView.NONE;
    private List<double[]> movements = List.of();

    ModesBook(OpenProject project, Queue queue, Consumer<Happening> hear) {
        this.project = project;
        errand = new Errand("a search for shapes", Happening.What.MODES, queue, hear);
    }

    RunView work() {
        return errand.view();
    }

    RunView stop() {
        return errand.stop();
    }

    synchronized ModesView view() {
        return view;
    }

    /** Begins to look for them. */
    RunView start(String variant) {
        return errand.start(steps -> find(variant, steps));
    }

    private String find(String name, Errand.Steps steps) {
        Workings workings = project.workings();
        Design.Variant variant = workings.variant(name);
        Tub tub = variant.tub();
        StabilityAsk ask = variant.stability().orUsual();
        // Mesh and solution, the answers, buckling of every case, frequencies free and held.
        int all = 3 + tub.cases().size() + (ask.hold().isEmpty() ? 0 : 1);
        Progress progress = new Progress() {
            private int made;

            @Override
            public void step(String variant, String step, double meshSize, int done, int of) {
                steps.step(step, Math.min(0.98, (double) made++ / all));
            }

            @Override
            public boolean cancelled() {
                return steps.stopping();
            }
        };
        Study study = new Study(Solvers.best(), List.of(workings.meshSize(name) / tub.meshSize()), progress, ask);
        VariantAnswer answer;
        try {
            answer = study.answer(List.of(tub)).getFirst();
        } catch (StructureException | ShapeException fault) {
            throw workings.design().explain(variant, fault);
        }
        steps.check();
        new Gathered(name, workings.revision(), answer).keep();
        return view().shapes().isEmpty()
                ? "nothing buckles, and no vibration was asked for"
                : "found; choose one to see it move";
    }

    /** One shape with its movement. */
    synchronized byte[] shape(String variant, int number) {
        if (!view.variant().equals(variant) || number < 0 || number >= movements.size()) {
            throw new UserMistake("there is no shape " + number + " of \"" + variant + "\"; find them again");
        }
        return new BinaryDocument(view.shapes().get(number))
                .floats("displacements", movements.get(number))
                .bytes();
    }

    private final class Gathered {
        private final String variant;
        private final String revision;
        private final VariantAnswer answer;
        private final List<ModesView.ShapeView> shapes = new ArrayList<>();
        private final List<double[]> moved = new ArrayList<>();
        private final List<String> notes = new ArrayList<>();

        Gathered(String variant, String revision, VariantAnswer answer) {
            this.variant = variant;
            this.revision = revision;
            this.answer = answer;
        }

        void keep() {
            Stability stability = answer.stability();
            stability.buckling().forEach(this::take);
            stability.free().ifPresent(v -> take(ModesView.ShapeKind.FREE, v));
            stability.held().ifPresent(v -> take(ModesView.ShapeKind.HELD, v));
            ModesView found =
                    new ModesView(variant, revision, shapes, notes, StabilityWords.FACTOR, StabilityWords.FREQUENCY);
            synchronized (ModesBook.this) {
                view = found;
                movements = moved;
            }
        }

        private void take(CaseBuckling buckling) {
            if (buckling.modes().isEmpty()) {
                notes.add(buckling.load() + ": " + StabilityWords.factor(buckling, Figures.NARROW_SPACE));
            }
            for (Buckle mode : buckling.modes()) {
                add(
                        mode.shape(),
                        ModesView.ShapeKind.BUCKLING,
                        buckling.load(),
                        "",
                        mode.factor(),
                        mode.zone(),
                        mode.panel(),
                        Optional.of(mode.share()));
            }
        }

        private void take(ModesView.ShapeKind what, Vibrations vibrations) {
            for (Mode mode : vibrations.modes().elastic()) {
                add(mode.shape(), what, "", mode.name(), mode.frequency(), mode.strained(), "", Optional.empty());
            }
        }

        private void add(
                double[] shape,
                ModesView.ShapeKind what,
                String loading,
                String name,
                double value,
                String part,
                String panel,
                Optional<Double> share) {
            int nodes = answer.mesh().nodeCount();
            double[] u = new double[3 * nodes];
            int most = 0;
            double largest = 0;
            for (int n = 0; n < nodes; n++) {
                System.arraycopy(shape, 6 * n, u, 3 * n, 3);
                double size =
                        Math.sqrt(u[3 * n] * u[3 * n] + u[3 * n + 1] * u[3 * n + 1] + u[3 * n + 2] * u[3 * n + 2]);
                if (size > largest) {
                    largest = size;
                    most = n;
                }
            }
            for (int i = 0; i < u.length; i++) {
                u[i] /= largest;
            }
            double[] x = answer.mesh().nodes();
            double[] place = {x[3 * most], x[3 * most + 1], x[3 * most + 2]};
            shapes.add(new ModesView.ShapeView(
                    variant, revision, shapes.size(), what, loading, name, value, part, panel, share, place));
            moved.add(u);
        }
    }
}
