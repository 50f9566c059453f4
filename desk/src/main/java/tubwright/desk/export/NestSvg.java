// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.Locale;
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.nest.Outline;

/** Patterns on a roll as SVG at full size in mm: the roll runs to the right, warp along it. */
public final class NestSvg {
    /** Room for words under the roll, mm. */
    private static final double BELOW = 28;

    private NestSvg() {}

    /** The whole file. */
    public static String write(Nest nest) {
        return write(nest, "");
    }

    /** The whole file with words of what issue it is of, under the roll. */
    public static String write(Nest nest, String foot) {
        double length = 1e3 * nest.length();
        double width = 1e3 * nest.roll().width();
        double below = foot.isEmpty() ? 0 : BELOW;
        StringBuilder svg = new StringBuilder(1 << 16);
        svg.append(format(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.1fmm\" height=\"%.1fmm\" viewBox=\"0 0 %.1f %.1f\">%n",
                length, width + below, length, width + below));
        svg.append("<style>path{fill:#eee;stroke:#000;stroke-width:.6}rect{fill:none;stroke:#888}"
                + "text{font:14px sans-serif;text-anchor:middle}</style>\n");
        svg.append(format("<rect width=\"%.1f\" height=\"%.1f\"/>%n", length, width));
        if (!foot.isEmpty()) {
            svg.append(format(
                    "<text style=\"text-anchor:start\" x=\"0\" y=\"%.1f\">%s</text>%n", width + 20, escape(foot)));
        }
        for (Nest.Placement placement : nest.placements()) {
            Outline outline = nest.outline(placement);
            StringBuilder path = new StringBuilder();
            double x = 0;
            double y = 0;
            for (int i = 0; i < outline.corners(); i++) {
                // SVG counts y downwards: turned over here, so that the roll is seen from above.
                double px = 1e3 * outline.x()[i];
                double py = width - 1e3 * outline.y()[i];
                path.append(i == 0 ? 'M' : 'L').append(format("%.2f %.2f", px, py));
                x += px / outline.corners();
                y += py / outline.corners();
            }
            svg.append("<path d=\"").append(path).append("Z\"/>\n");
            svg.append(format(
                    "<text x=\"%.1f\" y=\"%.1f\">%s</text>%n",
                    x, y, escape(nest.pieces().get(placement.piece()).label())));
        }
        return svg.append("</svg>\n").toString();
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;");
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values).replace(System.lineSeparator(), "\n");
    }
}
