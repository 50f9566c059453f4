// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.List;

/** Horizontal bars with a name before and a figure behind each. */
final class Bars {
    private static final double ROW = 25;

    /**
     * One bar.
     *
     * @param name what it stands for
     * @param note a word about it, set quietly
     * @param length 0 to 1 of the longest
     * @param figure number with unit
     * @param kind class of the bar
     */
    record Bar(String name, String note, double length, String figure, String kind) {}

    private Bars() {}

    /** Draws the bars, {@code width} wide, names in the first {@code names} of it. */
    static String draw(List<Bar> bars, double width, double names, String label) {
        Svg svg = new Svg(width, ROW * bars.size() + 4, label);
        double room = width - names - 92;
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = bars.get(i);
            double y = ROW * i;
            svg.text("name end", names - 12, y + 16, bar.name());
            svg.rectangle("track", names, y + 5, room, 14);
            svg.rectangle("bar " + bar.kind(), names, y + 5, room * Math.clamp(bar.length(), 0, 1), 14);
            svg.text("figure", names + room + 8, y + 16, bar.figure());
            if (!bar.note().isEmpty()) {
                boolean fits = room * bar.length() < room - 7.0 * bar.note().length();
                svg.text(
                        fits ? "note" : "note inside end",
                        fits ? names + room * bar.length() + 7 : names + room * bar.length() - 7,
                        y + 16,
                        bar.note());
            }
        }
        return svg.done();
    }
}
