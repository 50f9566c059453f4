// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The pages of the report: the same findings always make the same text. */
final class ReportPages {
    private static final int WORST = 25;

    private ReportPages() {}

    /** Content by file name. */
    static Map<String, String> of(LadderRun run) {
        Map<String, String> pages = new LinkedHashMap<>();
        pages.put("README.md", overview(run));
        for (Family family : Family.values()) {
            List<Finding> findings = run.of(family);
            if (findings.isEmpty()) {
                continue;
            }
            StringBuilder page = new StringBuilder();
            page.append("# ").append(family.title).append("\n\n");
            page.append(family.purpose).append(" Columns are explained in the [overview](README.md).\n\n");
            page.append(table(findings));
            int number = 0;
            for (Map.Entry<String, List<Curve>> plot : run.plots(family).entrySet()) {
                String file = family.slug() + "-" + ++number + ".svg";
                page.append("\n![Convergence of ")
                        .append(plot.getKey())
                        .append("](")
                        .append(file)
                        .append(")\n");
                pages.put(file, ConvergencePlot.of(plot.getKey(), plot.getValue()));
            }
            pages.put(family.slug() + ".md", page.toString());
        }
        return pages;
    }

    private static String overview(LadderRun run) {
        List<Finding> all = new ArrayList<>(run.findings().values());
        long families = all.stream().map(Finding::family).distinct().count();
        StringBuilder page = new StringBuilder("# Verification report\n\n");
        page.append("What Tubwright computes, held against ").append(all.size());
        page.append(" values from outside, in ")
                .append(families)
                .append(" families. Written by the test run itself;\n");
        page.append(
                "the build fails when this report and the run disagree. What all this does and does not show is told\n");
        page.append("in plain words in [scope.md](scope.md), and whether the checks can fail at all in\n");
        page.append(
                "[checks-that-can-fail.md](checks-that-can-fail.md). A box solved a second time, as a solid by a library for\n");
        page.append("partial differential equations, is in [second-opinion.md](second-opinion.md).\n\n");
        page.append(
                "*Deviation* is |ours − reference| / |reference|, or |ours| where the reference is zero (round-off is\n");
        page.append(
                "shown as 0). *Allowed* is the tolerance of the check. *Order* is the order of convergence seen on the\n");
        page.append("last three meshes, each twice as fine as the one before.\n\n");
        page.append("## Worst deviations first\n\n");
        all.sort(Comparator.comparingDouble(Finding::deviation).reversed().thenComparing(Finding::key));
        page.append(
                "| family | case | mesh | source | trust | reference | ours | deviation | allowed | order |\n|---|---|---|---|---|---|---|---|---|---|\n");
        for (Finding f : all.subList(0, Math.min(WORST, all.size()))) {
            page.append("| ").append(link(f.family())).append(' ').append(row(f));
        }
        page.append(
                "\n## Families\n\n| family | checks | worst deviation | its case | nearest to its tolerance |\n|---|---|---|---|---|\n");
        for (Family family : Family.values()) {
            List<Finding> findings = run.of(family);
            if (findings.isEmpty()) {
                continue;
            }
            Finding worst = findings.stream()
                    .max(Comparator.comparingDouble(Finding::deviation))
                    .orElseThrow();
            Finding nearest = findings.stream()
                    .max(Comparator.comparingDouble(f -> f.deviation() / f.tolerance()))
                    .orElseThrow();
            page.append(String.format(
                    Locale.ROOT,
                    "| %s | %d | %s | %s | %s (%.0f %%) |%n",
                    link(family),
                    findings.size(),
                    percent(worst.deviation()),
                    cell(worst.name()),
                    cell(nearest.name()),
                    100 * nearest.deviation() / nearest.tolerance()));
        }
        page.append("\n## How far a reference may be trusted\n\n| mark | meaning | checks |\n|---|---|---|\n");
        for (Mark mark : Mark.values()) {
            long count = all.stream().filter(f -> f.mark() == mark).count();
            page.append("| ").append(mark.title).append(" | ").append(mark.meaning);
            page.append(" | ").append(count).append(" |\n");
        }
        return page.toString().replace("\r\n", "\n");
    }

    private static String link(Family family) {
        return "[" + family.title + "](" + family.slug() + ".md)";
    }

    private static String table(List<Finding> findings) {
        StringBuilder table = new StringBuilder(
                "| case | mesh | source | trust | reference | ours | deviation | allowed | order |\n|---|---|---|---|---|---|---|---|---|\n");
        findings.forEach(f -> table.append(row(f)));
        return table.toString();
    }

    private static String row(Finding f) {
        return "| " + cell(f.name()) + " | " + cell(f.mesh()) + " | " + cell(f.source()) + " | " + f.mark().title
                + " | "
                + number(f.reference()) + " | " + number(f.ours()) + " | " + percent(f.deviation()) + " | "
                + percent(f.tolerance()) + " | "
                + (Double.isNaN(f.order()) ? "" : String.format(Locale.ROOT, "%.2f", f.order())) + " |\n";
    }

    private static String cell(String text) {
        return text.replace("|", "¦");
    }

    private static String number(double v) {
        if (v == 0) {
            return "0";
        }
        int digits = 5 - (int) Math.floor(Math.log10(Math.abs(v)));
        return digits < 0 || digits > 10
                ? String.format(Locale.ROOT, "%.5e", v)
                : String.format(Locale.ROOT, "%." + digits + "f", v);
    }

    private static String percent(double share) {
        if (share == 0) {
            return "0";
        }
        return share < 1e-4
                ? String.format(Locale.ROOT, "%.1e", share)
                : String.format(Locale.ROOT, share < .01 ? "%.3f %%" : "%.2f %%", 100 * share);
    }
}
