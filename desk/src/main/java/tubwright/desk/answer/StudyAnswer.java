// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.fleet.Reading;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.StudyPlan;
import tubwright.fleet.plan.Variation;

/**
 * A study's findings, ready to be told.
 *
 * @param tub its name
 * @param findings of the study
 * @param version of the program
 */
public record StudyAnswer(String tub, Findings findings, String version) {
    /** The plan. */
    public StudyPlan plan() {
        return findings.plan();
    }

    /** A column of numbers for every point: something read, or something that follows from it. */
    public record Column(String name, String unit, List<double[]> byVariant) {
        /** Name with unit. */
        public String heading() {
            return unit.equals("1") || unit.isEmpty() ? name : name + " (" + unit + ")";
        }
    }

    /** What was read in the units it is shown in, then money where prices are given. NaN for what is not there. */
    public List<Column> columns() {
        List<Column> columns = new ArrayList<>();
        for (Reading reading : plan().readings()) {
            List<double[]> each = new ArrayList<>();
            for (Findings.OfVariant variant : findings.variants()) {
                each.add(variant.points().stream()
                        .mapToDouble(p -> reading.shown(p.value(reading.text())))
                        .toArray());
            }
            columns.add(new Column(reading.text(), reading.kind().unit(), each));
        }
        columns.addAll(money());
        return columns;
    }

    /** Of the tub as drawn and of the lightest, as far as plies and mass of each are read. */
    private List<Column> money() {
        List<Column> columns = new ArrayList<>();
        if (plan().text().money().isEmpty()) {
            return columns;
        }
        Map<Reading.Kind, Reading> first = new LinkedHashMap<>();
        plan().readings().forEach(r -> first.putIfAbsent(r.kind(), r));
        column(columns, "material", first.get(Reading.Kind.LAID), first.get(Reading.Kind.MASS));
        column(
                columns,
                "material of the lightest",
                first.get(Reading.Kind.LIGHTEST_LAID),
                first.get(Reading.Kind.LIGHTEST));
        return columns;
    }

    private void column(List<Column> columns, String name, Reading plies, Reading mass) {
        if (plies == null || mass == null) {
            return;
        }
        var money = plan().text().money().orElseThrow();
        List<double[]> each = new ArrayList<>();
        for (Findings.OfVariant variant : findings.variants()) {
            each.add(variant.points().stream()
                    .mapToDouble(p -> money.of(p.value(plies.text()), p.value(mass.text())))
                    .toArray());
        }
        columns.add(new Column(name, money.currency(), each));
    }

    /** A probability as a percentage, with as many digits as it takes to tell it from none and all. */
    public static String chance(double probability) {
        double edge = Math.min(probability, 1 - probability);
        int decimals = edge <= 0 || edge >= 0.01 ? 1 : Math.min(6, (int) Math.ceil(-Math.log10(edge)));
        return String.format(java.util.Locale.ROOT, "%." + decimals + "f %%", 100 * probability);
    }

    /** A variation's name with its unit. */
    public static String heading(Variation variation) {
        return variation.unit().isEmpty() ? variation.name() : variation.name() + " (" + variation.unit() + ")";
    }

    /** Designs that could not be, by their reason, with how many of each; at most so many reasons. */
    public Map<String, Integer> reasons() {
        Map<String, Integer> reasons = new LinkedHashMap<>();
        for (Findings.OfVariant variant : findings.variants()) {
            for (Findings.OfPoint point : variant.points()) {
                point.row()
                        .flatMap(r -> r.reason())
                        .ifPresent(why -> reasons.merge(why.lines().findFirst().orElse(why), 1, Integer::sum));
            }
        }
        return reasons;
    }
}
