// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification.ladder;

import java.util.List;
import java.util.Locale;

/** Deviation against elements a side, both logarithmic, as SVG. */
final class ConvergencePlot {
    private static final String[] COLOURS = {"#0b6fa4", "#d1495b", "#3d8b37", "#8a5fbf", "#c77d00", "#444444"};
    private static final double LEFT = 70;
    private static final double RIGHT = 400;
    private static final double TOP = 40;
    private static final double BOTTOM = 300;

    private ConvergencePlot() {}

    static String of(String title, List<Curve> curves) {
        double least = 1e-1;
        double most = 1e-3;
        int small = Integer.MAX_VALUE;
        int large = 0;
        for (Curve c : curves) {
            for (int i = 0; i < c.sizes().length; i++) {
                double d = Math.max(1e-6, c.deviations()[i]);
                least = Math.min(least, d);
                most = Math.max(most, d);
                small = Math.min(small, c.sizes()[i]);
                large = Math.max(large, c.sizes()[i]);
            }
        }
        int low = (int) Math.floor(Math.log10(least) + 1e-9);
        int high = Math.max(low + 1, (int) Math.ceil(Math.log10(most) - 1e-9));
        double perDecade = (BOTTOM - TOP) / (high - low);
        double perDoubling = (RIGHT - LEFT) / Math.max(1, Math.log(large / (double) small) / Math.log(2));
        StringBuilder svg = new StringBuilder(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 350\" font-family=\"sans-serif\" font-size=\"12\">\n"
                        + "<rect width=\"640\" height=\"350\" fill=\"white\"/>\n");
        text(svg, 20, 22, "start", title + ": deviation over elements a side");
        for (int k = low; k <= high; k++) {
            double y = BOTTOM - (k - low) * perDecade;
            line(svg, LEFT, y, RIGHT, y, "#ddd");
            text(svg, LEFT - 8, y + 4, "end", k >= -2 ? trim(Math.pow(10, k + 2)) + " %" : "1e" + (k + 2) + " %");
        }
        for (int n = small; n <= large; n *= 2) {
            double x = LEFT + Math.log(n / (double) small) / Math.log(2) * perDoubling;
            line(svg, x, TOP, x, BOTTOM, "#eee");
            text(svg, x, BOTTOM + 18, "middle", Integer.toString(n));
        }
        slope(svg, perDecade, perDoubling);
        for (int c = 0; c < curves.size(); c++) {
            Curve curve = curves.get(c);
            String colour = COLOURS[c % COLOURS.length];
            StringBuilder points = new StringBuilder();
            StringBuilder dots = new StringBuilder();
            for (int i = 0; i < curve.sizes().length; i++) {
                double x = LEFT + Math.log(curve.sizes()[i] / (double) small) / Math.log(2) * perDoubling;
                double y = BOTTOM - (Math.log10(Math.max(1e-6, curve.deviations()[i])) - low) * perDecade;
                points.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
                dots.append(String.format(
                        Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3.5\" fill=\"%s\"/>%n", x, y, colour));
            }
            svg.append("<polyline fill=\"none\" stroke-width=\"2\" stroke=\"")
                    .append(colour)
                    .append("\" points=\"")
                    .append(points.toString().strip())
                    .append("\"/>\n")
                    .append(dots);
            double y = TOP + 14 + 20 * c;
            line(svg, RIGHT + 20, y - 4, RIGHT + 44, y - 4, colour);
            text(svg, RIGHT + 50, y, "start", curve.label());
        }
        return svg.append("</svg>\n").toString().replace("\r\n", "\n");
    }

    /** A triangle of slope two, the order of linear elements. */
    private static void slope(StringBuilder svg, double perDecade, double perDoubling) {
        double rise = 2 * Math.log10(2) * perDecade;
        double x = RIGHT - perDoubling * .9;
        double y = TOP + 12;
        svg.append(String.format(
                Locale.ROOT,
                "<path d=\"M %.1f %.1f l %.1f %.1f l 0 %.1f z\" fill=\"none\" stroke=\"#999\"/>%n",
                x,
                y,
                perDoubling * .6,
                rise * .6,
                -rise * .6));
        text(svg, x + perDoubling * .6 + 4, y + rise * .3 + 4, "start", "2");
    }

    private static void line(StringBuilder svg, double x1, double y1, double x2, double y2, String colour) {
        svg.append(String.format(
                Locale.ROOT,
                "<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"%s\" stroke-width=\"1.5\"/>%n",
                x1,
                y1,
                x2,
                y2,
                colour));
    }

    private static void text(StringBuilder svg, double x, double y, String anchor, String text) {
        svg.append(String.format(
                Locale.ROOT,
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">%s</text>%n",
                x,
                y,
                anchor,
                text.replace("&", "&amp;").replace("<", "&lt;")));
    }

    private static String trim(double v) {
        return v >= 1 ? Long.toString(Math.round(v)) : Double.toString(v);
    }
}
