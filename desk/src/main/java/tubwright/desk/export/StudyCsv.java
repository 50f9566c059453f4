// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.ArrayList;
import java.util.List;
import tubwright.desk.answer.StudyAnswer;
import tubwright.fleet.findings.Findings;
import tubwright.fleet.plan.Variation;

/** A study's rows as comma-separated values (RFC 4180), units in the headings. */
public final class StudyCsv {
    private StudyCsv() {}

    /** The table: a line for every point of every variant. */
    public static String write(StudyAnswer answer) {
        StringBuilder out = new StringBuilder();
        List<Variation> variations = answer.plan().variations();
        List<StudyAnswer.Column> columns = answer.columns();
        List<String> head = new ArrayList<>(List.of("point", "variant"));
        variations.forEach(v -> head.add(StudyAnswer.heading(v)));
        columns.forEach(c -> head.add(c.heading()));
        head.add("why not");
        line(out, head);
        for (int v = 0; v < answer.findings().variants().size(); v++) {
            Findings.OfVariant variant = answer.findings().variants().get(v);
            for (int p = 0; p < variant.points().size(); p++) {
                Findings.OfPoint point = variant.points().get(p);
                List<String> cells = new ArrayList<>(List.of(Integer.toString(p + 1), variant.variant()));
                for (int d = 0; d < variations.size(); d++) {
                    Variation each = variations.get(d);
                    double share = point.shares()[d];
                    cells.add(each.words().isPresent() ? each.text(share) : number(each.number(share)));
                }
                for (StudyAnswer.Column column : columns) {
                    cells.add(number(column.byVariant().get(v)[p]));
                }
                cells.add(point.row().map(r -> r.reason().orElse("")).orElse("not computed yet"));
                line(out, cells);
            }
        }
        return out.toString();
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }

    private static void line(StringBuilder out, List<String> cells) {
        for (int c = 0; c < cells.size(); c++) {
            String cell = cells.get(c);
            boolean quoted = cell.matches("(?s).*[\",\r\n].*");
            out.append(c == 0 ? "" : ",").append(quoted ? "\"" + cell.replace("\"", "\"\"") + "\"" : cell);
        }
        out.append("\r\n");
    }
}
