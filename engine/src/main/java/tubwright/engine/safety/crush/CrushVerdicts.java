// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tubwright.engine.strength.Check;

/** A crush structure held against its limits, one by one. What lacks data is not checked: no pass. */
public final class CrushVerdicts {
    private CrushVerdicts() {}

    /** Outcome of one limit. */
    public enum Verdict {
        MET("met"),
        NOT_MET("not met"),
        NOT_CHECKED("not checked");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        /** For a reader. */
        public String words() {
            return words;
        }
    }

    /**
     * One limit.
     *
     * @param limit in words
     * @param found what came out, in words; empty where nothing did
     * @param reserve limit over found; not a number where nothing was found
     * @param verdict what it comes to
     * @param needs what is missing where it was not checked
     */
    public record Line(String limit, String found, double reserve, Verdict verdict, List<String> needs) {
        public Line {
            needs = List.copyOf(needs);
        }
    }

    /** Every limit of a structure, the stroke and what bulkhead and mounts bear. */
    public static List<Line> of(CrushStructure structure) {
        List<String> needs = new ArrayList<>();
        structure.missing().forEach(m -> needs.addAll(m.needs()));
        Optional<CrushRun.Answer> answer = structure.whole();
        answer.ifPresent(a -> a.notChecked().forEach(m -> m.needs().forEach(n -> needs.add(m.mode() + ": " + n))));
        List<Line> lines = new ArrayList<>();
        lines.add(stops(answer, needs));
        for (CrushLimit limit : structure.limits()) {
            if (answer.isEmpty()) {
                lines.add(new Line(limit.words(), "", Double.NaN, Verdict.NOT_CHECKED, needs));
                continue;
            }
            Check.Reserve reserve = answer.get().against(limit);
            boolean solid = answer.get().speedLeft() > 0;
            lines.add(new Line(
                    limit.words(),
                    solid ? "used up" : limit.found(reserve.applied()),
                    reserve.reserveFactor(),
                    verdict(reserve.reserveFactor() >= 1, needs),
                    needs));
        }
        lines.add(born(structure, answer, needs));
        return lines;
    }

    private static Line stops(Optional<CrushRun.Answer> answer, List<String> needs) {
        String limit = "stops within its stroke";
        if (answer.isEmpty()) {
            return new Line(limit, "", Double.NaN, Verdict.NOT_CHECKED, needs);
        }
        double left = answer.get().speedLeft();
        double energy = answer.get().impact().energy();
        return new Line(
                limit,
                left > 0
                        ? String.format(Locale.ROOT, "used up at %.1f m/s", left)
                        : String.format(
                                Locale.ROOT, "%.0f mm", 1e3 * answer.get().stroke()),
                left > 0 ? answer.get().energy() / energy : Double.NaN,
                verdict(!(left > 0), needs),
                needs);
    }

    private static Line born(CrushStructure structure, Optional<CrushRun.Answer> answer, List<String> needs) {
        String limit =
                String.format(Locale.ROOT, "bulkhead and mounts bear %.2f times the highest force", structure.margin());
        List<String> all = new ArrayList<>(needs);
        if (structure.bears().isEmpty()) {
            all.add(
                    structure.onto().isEmpty()
                            ? "what its force goes into (\"onto\" or \"over\"), and a test of that"
                            : "a test of bulkhead and mounts; what the strength run says of case \"" + structure.name()
                                    + " crush\" is no test");
            return new Line(
                    limit,
                    structure.designForce().isPresent()
                            ? kn(structure.designForce().getAsDouble()) + " wanted"
                            : "",
                    Double.NaN,
                    Verdict.NOT_CHECKED,
                    all);
        }
        double bears = structure.bears().getAsDouble();
        double wanted =
                structure.margin() * answer.map(CrushRun.Answer::peakForce).orElse(Double.NaN);
        return new Line(
                limit,
                kn(bears) + " (" + structure.bearsFrom() + ") for " + kn(wanted),
                bears / wanted,
                verdict(bears >= wanted, needs),
                needs);
    }

    private static String kn(double force) {
        return String.format(Locale.ROOT, "%.1f kN", 1e-3 * force);
    }

    private static Verdict verdict(boolean met, List<String> needs) {
        return !needs.isEmpty() ? Verdict.NOT_CHECKED : met ? Verdict.MET : Verdict.NOT_MET;
    }
}
