// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import static tubwright.desk.text.Figures.fixed;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import tubwright.desk.answer.CureAnswer;
import tubwright.desk.answer.CureWords;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.cure.CureCheck;
import tubwright.engine.make.cure.CureHistory;
import tubwright.engine.make.cure.CureHistory.Moment;
import tubwright.engine.make.cure.Cycle;
import tubwright.engine.make.cure.LaminateCure.Stage;

/** The cycles of the pack on paper: step by step, and what each laminate goes through, drawn and checked. */
public final class CureSheets {
    private static final String GAP = " ";
    private static final float HEIGHT = 150;
    private static final float LEFT = 26;
    /** Curves are drawn with at most so many points. */
    private static final int POINTS = 240;

    private final Paper paper;

    private CureSheets(Paper paper) {
        this.paper = paper;
    }

    /**
     * The sheets as PDF; the same answer gives the same bytes.
     *
     * @param foot of every page: issue, date, units, fingerprint
     */
    public static byte[] write(CureAnswer answer, String foot) {
        try (Paper paper = new Paper(answer.tub() + ": cures", foot)) {
            new CureSheets(paper).write(answer);
            return paper.done();
        }
    }

    private void write(CureAnswer answer) {
        paper.title(answer.tub() + ": cures");
        paper.paragraph(CureWords.shop(answer.shop()) + ".");
        Set<Cycle> cycles = new LinkedHashSet<>();
        answer.places().forEach(p -> p.cure().stages().forEach(s -> cycles.add(s.cycle())));
        if (cycles.isEmpty()) {
            paper.paragraph("No cycle is given here: cure data are missing for every laminate, as said below.");
        }
        cycles.forEach(this::cycle);
        paper.paragraph("A cycle is proposed, not ordered: the resin's maker has the last word. Heat goes through the"
                + " thickness only. Not checked: another resin stands in, or a limit is missing.");
        paper.paragraph(RunAnswer.CAUTION);
        for (CureAnswer.Place place : answer.places()) {
            paper.page();
            paper.heading(String.join(", ", place.where()));
            paper.paragraph(place.code() + ", " + fixed(1e3 * place.cure().thickness(), 1, GAP) + " mm.");
            place.cure().missing().forEach(m -> paper.paragraph("Not checked: needs " + m + "."));
            place.cure().stages().forEach(this::stage);
        }
    }

    private void cycle(Cycle cycle) {
        paper.heading("Cycle " + cycle.name());
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "step", "air to, °C", "at, K/min", "hold, min", "from when", "pressure, bar", "in the bag, bar"));
        int number = 1;
        for (Cycle.Step s : cycle.steps()) {
            rows.add(List.of(
                    Integer.toString(number++),
                    fixed(s.to() - 273.15, 0, GAP),
                    fixed(60 * s.rate(), 1, GAP),
                    fixed(s.hold() / 60, 0, GAP),
                    s.hold() == 0
                            ? ""
                            : s.from() == Cycle.HoldFrom.AIR ? "air is there" : "last place of the part is there",
                    fixed(s.pressure() / 1e5, 2, GAP),
                    fixed(s.bag() / 1e5, 2, GAP)));
        }
        paper.table(new float[] {0.07f, 0.13f, 0.12f, 0.12f, 0.28f, 0.13f, 0.15f}, rows, 14);
        paper.paragraph("Pressure above the room's, in the bag absolute. Source: " + cycle.provenance() + ".");
    }

    private void stage(Stage stage) {
        // Heading and chart stay together.
        if (stage.history().isPresent() && paper.place() < HEIGHT + 170) {
            paper.page();
        }
        paper.heading(stage.title() + ": " + stage.cycle().name());
        stage.history().ifPresent(this::draw);
        for (CureCheck check : stage.checks()) {
            String limit = check.limit().isPresent() ? ", " + CureWords.limit(check) : "";
            String amounts = CureWords.value(check) + limit;
            paper.paragraph(check.verdict().word() + ": " + check.subject().title()
                    + (amounts.isEmpty() ? "" : " " + amounts)
                    + (check.words().isEmpty() ? "" : "; " + check.words()));
        }
    }

    /** Air, leading and lagging place, and the least degree of cure, against time. */
    private void draw(CureHistory history) {
        double hottest = history.moments().stream()
                .mapToDouble(m -> Math.max(m.air(), history.leading(m)) - 273.15)
                .max()
                .orElse(20);
        double top = 50 * Math.ceil(hottest / 50);
        double hours = history.stoppedAt() / 3600;
        float low = paper.room(HEIGHT + 54) + 30;
        float left = Paper.MARGIN + LEFT;
        float width = Paper.WIDTH - 2 * LEFT;
        for (int t = 0; t <= top; t += 50) {
            float y = low + (float) (HEIGHT * t / top);
            paper.line(left, y, left + width, y, 0.3f, 0.8f);
            paper.label(left - 14, y - 3, t + (t == top ? " °C" : ""));
            paper.label(left + width + 12, y - 3, fixed(t / top, 2, ""));
        }
        double step = hours > 10 ? 2 : hours > 4 ? 1 : 0.5;
        for (double h = 0; h <= hours; h += step) {
            float x = left + (float) (width * h / hours);
            paper.line(x, low, x, low - 3, 0.5f, 0.5f);
            paper.label(x, low - 12, fixed(h, step < 1 ? 1 : 0, "") + (h == 0 ? " h" : ""));
        }
        curve(history, left, low, width, m -> (m.air() - 273.15) / top, 0.5f, 0.65f, false);
        curve(history, left, low, width, m -> (history.leading(m) - 273.15) / top, 1.3f, 0.1f, false);
        curve(history, left, low, width, m -> (history.lagging(m) - 273.15) / top, 0.8f, 0.35f, false);
        curve(history, left, low, width, history::leastDegree, 0.9f, 0.1f, true);
        paper.label(
                Paper.MARGIN + Paper.WIDTH / 2,
                low - 26,
                "pale: air · thick: leading place · middle: lagging place · dotted, right-hand scale: least degree of cure");
    }

    private void curve(
            CureHistory history,
            float left,
            float low,
            float width,
            ToDoubleFunction<Moment> share,
            float stroke,
            float grey,
            boolean dotted) {
        List<Moment> all = history.moments();
        int every = Math.max(1, all.size() / POINTS);
        float[] before = null;
        for (int i = 0; i < all.size(); i += every) {
            float x = left + (float) (width * all.get(i).time() / history.stoppedAt());
            float y = low + (float) (HEIGHT * share.applyAsDouble(all.get(i)));
            if (before != null && (!dotted || i / every % 3 == 0)) {
                paper.line(before[0], before[1], x, y, stroke, grey);
            }
            before = new float[] {x, y};
        }
    }
}
