// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.console;

import static tubwright.desk.text.Figures.fixed;
import static tubwright.desk.text.Figures.significant;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tubwright.desk.answer.RunAnswer.Landmark;
import tubwright.engine.response.CaseAnswer;
import tubwright.engine.response.TwistLine;

/** How fast a tub twists along its length, as one row of blocks from nose to tail, with its landmarks below. */
final class TwistSketch {
    private static final String BLOCKS = " ▁▂▃▄▅▆▇█";
    private static final int COLUMNS = 66;

    private TwistSketch() {}

    /** The sketch; empty for a case without a twist line. */
    static List<String> lines(CaseAnswer torsion, List<Landmark> landmarks) {
        if (torsion.twistLine().isEmpty()) {
            return List.of();
        }
        TwistLine line = torsion.twistLine().get();
        double[] x = line.stations();
        double low = x[0];
        double high = x[x.length - 1];
        double[] rates = new double[COLUMNS];
        for (int c = 0; c < COLUMNS; c++) {
            double station = low + (c + 0.5) * (high - low) / COLUMNS;
            rates[c] = Math.abs(at(x, line.slopes(), station));
        }
        double most = Arrays.stream(rates).filter(Double::isFinite).max().orElse(0);
        StringBuilder blocks = new StringBuilder("  ");
        for (double rate : rates) {
            int level = most > 0 && rate > 0 ? (int) Math.ceil(8 * rate / most - 1e-9) : 0;
            blocks.append(BLOCKS.charAt(Math.clamp(level, 0, 8)));
        }
        List<String> result = new ArrayList<>();
        double peak = Math.toDegrees(most / torsion.load() * 1000);
        result.add("How fast it twists, x " + fixed(1000 * low, 0, " ") + " to " + fixed(1000 * high, 0, " ")
                + " mm; tallest: " + significant(peak, 2, " ") + " deg/m per kN·m");
        result.add(blocks.toString().stripTrailing());
        result.addAll(names(landmarks, low, high));
        return result;
    }

    /** Names under their stations, on a second line where the first is taken. */
    private static List<String> names(List<Landmark> landmarks, double low, double high) {
        StringBuilder[] rows = {new StringBuilder(), new StringBuilder()};
        for (Landmark mark : landmarks) {
            double middle = (mark.from() + mark.to()) / 2;
            int column = (int) Math.round((middle - low) / (high - low) * (COLUMNS - 1));
            int start = Math.clamp(
                    column - mark.name().length() / 2,
                    0,
                    Math.max(0, COLUMNS - mark.name().length()));
            for (StringBuilder row : rows) {
                if (row.isEmpty() ? true : row.length() < start) {
                    row.append(" ".repeat(start - row.length())).append(mark.name());
                    break;
                }
            }
        }
        return Arrays.stream(rows).filter(r -> !r.isEmpty()).map(r -> "  " + r).toList();
    }

    private static double at(double[] x, double[] y, double station) {
        int i = Arrays.binarySearch(x, station);
        if (i >= 0) {
            return y[i];
        }
        int above = Math.clamp(-i - 1L, 1, x.length - 1);
        double s = (station - x[above - 1]) / (x[above] - x[above - 1]);
        return y[above - 1] + s * (y[above] - y[above - 1]);
    }
}
