// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.sheet;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.BuildAnswer;
import tubwright.desk.answer.BuildLanes;
import tubwright.desk.answer.PackAnswer;
import tubwright.desk.answer.RunAnswer;
import tubwright.engine.make.build.Activity.Clock;
import tubwright.engine.make.build.BuildPlan;
import tubwright.engine.make.build.Schedule.Placed;

/** When what is done, on paper: time runs down, every place has a line, the longest path is drawn through them. */
public final class BuildSheet {
    private static final float LEFT = 44;
    private static final float HEIGHT = 610;

    private BuildSheet() {}

    /** The sheets as PDF; the same answer gives the same bytes. */
    public static byte[] write(PackAnswer answer) {
        BuildAnswer build = answer.build();
        BuildPlan plan = build.plan();
        try (Paper paper = new Paper(answer.tub() + ": calendar", answer.foot())) {
            paper.title(answer.tub() + ": from pattern to delivery");
            paper.paragraph((plan.tubs() == 1 ? "One tub" : "A run of " + plan.tubs() + " tubs") + ", begun on "
                    + BuildLanes.dayOfYear(plan.schedule().begin()) + ", delivered on "
                    + BuildLanes.dayOfYear(plan.schedule().end()) + ", in a shop that works "
                    + build.works() + ".");
            draw(paper, plan);
            paper.page();
            paper.heading("The longest path: what is late here moves the day of delivery");
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of("from", "to", "what", "takes", "done on", "signed"));
            BuildLanes.path(plan).forEach(r -> rows.add(List.of(r[0], r[1], r[2], r[3], "", "")));
            paper.table(new float[] {0.12f, 0.12f, 0.38f, 0.18f, 0.1f, 0.1f}, rows, 15);
            paper.paragraph(
                    "Times are the designer's guess, rough and without a source until the shop puts its own in their"
                            + " place. calendar.csv and lists.xlsx have every step with the day on which it must be done at the latest.");
            paper.paragraph(RunAnswer.CAUTION);
            return paper.done();
        }
    }

    private static void draw(Paper paper, BuildPlan plan) {
        BuildLanes lanes = BuildLanes.of(plan);
        float low = paper.room(HEIGHT + 44);
        float top = low + HEIGHT;
        float column = (Paper.WIDTH - LEFT) / lanes.lanes().size();
        for (int d : lanes.ruled(12 / HEIGHT)) {
            float y = top - HEIGHT * (float) lanes.down()[d];
            paper.line(Paper.MARGIN + LEFT - 4, y, Paper.MARGIN + Paper.WIDTH, y, 0.3f, 0.85f);
            paper.label(
                    Paper.MARGIN + LEFT / 2 - 4,
                    y - 2.5f,
                    BuildLanes.day(lanes.begin().plusDays(d).toLocalDate()));
        }
        for (int i = 0; i < lanes.lanes().size(); i++) {
            float x = Paper.MARGIN + LEFT + (i + 0.5f) * column;
            // Every other name a row higher: columns are narrow.
            words(paper, x, top + 8 + (i % 2) * 17, lanes.lanes().get(i).name());
            for (Placed p : lanes.lanes().get(i).placed()) {
                float from = top - HEIGHT * (float) lanes.place(p.start());
                float to = Math.min(from - 1, top - HEIGHT * (float) lanes.place(p.finish()));
                Clock clock = p.activity().clock();
                switch (clock) {
                    case HANDS -> paper.line(x, from, x, to, 7, 0.72f);
                    case OVEN -> paper.line(x, from, x, to, 7, 0.45f);
                    case WAITING -> {
                        for (float y = from; y > to; y -= 5) {
                            paper.line(x, y, x, Math.max(to, y - 2), 1.2f, 0.55f);
                        }
                    }
                }
            }
        }
        float[] before = null;
        for (Placed p : plan.schedule().chain()) {
            if (p.activity().seconds() == 0) {
                continue;
            }
            float x = Paper.MARGIN + LEFT + (lanes.lane(p) + 0.5f) * column;
            float from = top - HEIGHT * (float) lanes.place(p.start());
            float to = top - HEIGHT * (float) lanes.place(p.finish());
            if (before != null) {
                paper.line(before[0], before[1], x, from, 1.3f, 0.05f);
            }
            paper.line(x, from, x, to, 1.8f, 0.05f);
            before = new float[] {x, to};
        }
        paper.label(
                Paper.MARGIN + Paper.WIDTH / 2,
                low - 12,
                "light: work of a team · dark: autoclave · dotted: waiting · black line: the longest path; days of waiting are drawn short");
    }

    /** A name over its line, in two rows where it has two words. */
    private static void words(Paper paper, float x, float y, String name) {
        int blank = name.indexOf(' ');
        if (blank < 0) {
            paper.label(x, y, name);
        } else {
            paper.label(x, y + 8, name.substring(0, blank));
            paper.label(x, y, name.substring(blank + 1));
        }
    }
}
