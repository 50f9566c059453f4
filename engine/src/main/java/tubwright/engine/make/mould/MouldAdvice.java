// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.mould;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What would help where a piece does not come out of its mould. */
public final class MouldAdvice {
    /** Share of the face beyond which another direction is told. */
    private static final double BETTER = 0.5;

    private MouldAdvice() {}

    /**
     * One sentence for each place, named, and one for the whole where another pull or a mould in parts helps; none for a
     * piece that comes out.
     */
    public static List<String> of(PieceFace face, Draft draft, List<SplitLines.Edge> edges) {
        if (draft.comesOut()) {
            return List.of();
        }
        List<String> advice = new ArrayList<>();
        double[] best = PullSearch.best(face, draft.wanted());
        Draft other = DraftCheck.of(face, best, draft.wanted(), edges);
        if (other.under() < BETTER * draft.under()) {
            advice.add("pulled along " + words(best) + " "
                    + (other.comesOut() ? "it comes out" : "less of it is undercut: " + squared(other.under())));
        }
        // Right and left in one sentence.
        Map<String, List<String>> byText = new LinkedHashMap<>();
        for (Draft.Undercut each : draft.undercuts()) {
            String text = String.format(
                    Locale.ROOT,
                    " between x = %.0f and %.0f mm is undercut up to %.1f°: the mould reaches %.1f mm over it; %s",
                    1e3 * each.fromX(),
                    1e3 * each.toX(),
                    Math.toDegrees(-each.worst()),
                    1e3 * each.hook(),
                    help(each));
            byText.computeIfAbsent(text, t -> new ArrayList<>()).add(each.part());
        }
        byText.forEach((text, parts) ->
                advice.add(String.join(" and ", parts.stream().sorted().toList()) + text));
        List<PullSearch.Part> parts = PullSearch.parts(face, draft.pull());
        if (parts.size() > 1) {
            advice.add("or make the mould in " + parts.size() + " parts, taken off along "
                    + String.join(
                            ", ",
                            parts.stream()
                                    .map(p -> String.format(
                                            Locale.ROOT, "%s (%.0f %% of the face)", words(p.pull()), 100 * p.share()))
                                    .toList()));
        }
        return advice;
    }

    private static String help(Draft.Undercut each) {
        String height = String.format(Locale.ROOT, "%.0f mm", 1e3 * each.height());
        return switch (each.beside()) {
            case "" -> "draw this place with draft, or make it a loose part of the mould";
            case "front end", "rear end", "opening" ->
                "trim the edge beside it " + height + " lower in the mould, or make its rim a loose part";
            default ->
                "move the split line to " + each.beside() + " by " + height
                        + " along the pull, to where the face stands upright, or make the mould's rim a loose part";
        };
    }

    private static String squared(double area) {
        return String.format(Locale.ROOT, "%.0f cm²", 1e4 * area);
    }

    /** A direction in words: an axis by its name, or three numbers. */
    public static String words(double[] d) {
        String[] names = {"aft", "forward", "right", "left", "up", "down"};
        for (int i = 0; i < 6; i++) {
            if (d[i / 2] * (i % 2 == 0 ? 1 : -1) > 0.999999) {
                return names[i];
            }
        }
        return String.format(Locale.ROOT, "(%.2f, %.2f, %.2f)", d[0], d[1], d[2]);
    }
}
