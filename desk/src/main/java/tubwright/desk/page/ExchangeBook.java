// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Consumer;
import tubwright.desk.answer.ExchangeAnswer;
import tubwright.desk.answer.StiffnessUnit;
import tubwright.desk.work.ExchangeWork;
import tubwright.desk.work.TrimWork;
import tubwright.desk.work.UserMistake;
import tubwright.desk.work.Workbench;
import tubwright.engine.trim.ExchangeCurve;
import tubwright.engine.trim.Layup;

/** The curve of mass against stiffness that was drawn last. Stays on show when the file changes, until it is drawn anew. */
final class ExchangeBook {
    private final OpenProject project;
    private final String version;
    private final Errand errand;
    private ExchangeView view = ExchangeView.NONE;
    private List<Layup> layups = List.of();

    ExchangeBook(OpenProject project, Queue queue, String version, Consumer<Happening> hear) {
        this.project = project;
        this.version = version;
        errand = new Errand("a curve", Happening.What.EXCHANGE, queue, hear);
    }

    RunView work() {
        return errand.view();
    }

    RunView stop() {
        return errand.stop();
    }

    synchronized ExchangeView view() {
        return view;
    }

    /** Begins to draw. */
    RunView start(ExchangeView.ExchangeRequest asked) {
        if (!(asked.from() >= 0.05 && asked.from() < asked.to() && asked.to() <= 1.5)) {
            throw new UserMistake("ask for shares of the present stiffness between 5 % and 150 %, the smaller first");
        }
        if (asked.points() < 2 || asked.points() > 40) {
            throw new UserMistake("a curve has 2 to 40 points, not " + asked.points());
        }
        if (!(asked.seconds() >= 1 && asked.seconds() <= 3600)) {
            throw new UserMistake("give the curve between a second and an hour");
        }
        return errand.start(steps -> draw(asked, steps));
    }

    private String draw(ExchangeView.ExchangeRequest asked, Errand.Steps steps) {
        Workings workings = project.workings();
        OptionalDouble mesh = OptionalDouble.of(workings.meshSize(asked.variant()));
        ExchangeAnswer answer = ExchangeWork.exchange(
                workings.design(),
                new ExchangeWork.Request(
                        new TrimWork.Request(Optional.of(asked.variant()), Optional.empty(), mesh, false),
                        asked.from(),
                        asked.to(),
                        asked.points(),
                        Optional.empty(),
                        OptionalInt.empty(),
                        asked.seconds(),
                        Optional.empty()),
                Instant.now().truncatedTo(ChronoUnit.SECONDS).toString(),
                version,
                new Workbench.Listener() {
                    @Override
                    public void stage(String words) {
                        steps.stage(words);
                    }

                    @Override
                    public void step(String words, int done, int all) {
                        steps.step(words, (double) done / all);
                    }
                },
                steps::stopping);
        List<ExchangeCurve.Point> points = answer.curve().points();
        synchronized (this) {
            view = of(answer, workings.revision());
            layups = points.stream().map(p -> p.found().layup()).toList();
        }
        return points.size() < asked.points() && steps.stopping()
                ? "stopped; the points that were found stand"
                : points.size() < asked.points()
                        ? "the stiffest targets are out of reach of the layups that may be chosen"
                        : "drawn; choose a point to lay it on the tub";
    }

    private static ExchangeView of(ExchangeAnswer answer, String revision) {
        return new ExchangeView(
                answer.variant(),
                revision,
                answer.loading(),
                answer.unit() == StiffnessUnit.TORSION ? AnswerView.Kind.TORSION : AnswerView.Kind.BENDING,
                answer.curve().points().stream()
                        .map(p -> new ExchangeView.PointView(
                                p.asked(),
                                new LedgerView.BoundsView(
                                        p.reached().low(), p.reached().high()),
                                p.found().mass(),
                                p.found().bound()))
                        .toList(),
                answer.marks().stream()
                        .map(m -> new ExchangeView.MarkView(m.name(), m.mass(), m.stiffness()))
                        .toList());
    }

    /**
     * The layup of a point.
     *
     * @param variant and
     * @param revision of the draft it is to be laid into
     */
    synchronized Layup layup(int point, String variant, String revision) {
        if (point < 0 || point >= layups.size()) {
            throw new UserMistake("the curve has " + layups.size() + " points");
        }
        if (!view.variant().equals(variant)) {
            throw new UserMistake("the curve is of \"" + view.variant() + "\", the draft of \"" + variant + "\"");
        }
        if (!view.revision().equals(revision)) {
            throw new UserMistake("the design file has changed since the curve was drawn; draw it again");
        }
        return layups.get(point);
    }
}
