// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import java.util.Locale;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;

/** Flat patterns as SVG at full size in mm, one below the other, in groups named after the layers of {@link FlatDxf}. */
public final class FlatSvg {
    private static final double GAP = 20;

    private FlatSvg() {}

    /** The whole file. */
    public static String write(List<FlatPattern> patterns) {
        return write(patterns, "");
    }

    /** The whole file with words of what issue it is of, on top. */
    public static String write(List<FlatPattern> patterns, String foot) {
        double width = 0;
        double height = GAP;
        for (FlatPattern p : patterns) {
            width = Math.max(width, 1e3 * p.length());
            height += 1e3 * p.width() + GAP;
        }
        width += 2 * GAP;
        StringBuilder svg = new StringBuilder(1 << 16);
        svg.append(format(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.1fmm\" height=\"%.1fmm\" viewBox=\"0 0 %.1f %.1f\">%n",
                width, height, width, height));
        svg.append("<style>path,line{fill:none;stroke:#000;stroke-width:.5}.l7{stroke:#06c}.l8{stroke:#888}"
                + ".l4{stroke:#c00}text{font:8px sans-serif}</style>\n");
        if (!foot.isEmpty()) {
            svg.append(format("<text class=\"l15\" x=\"%.1f\" y=\"12\">%s</text>%n", GAP, escape(foot)));
        }
        double y = GAP;
        for (FlatPattern p : patterns) {
            double[] box = p.box();
            // SVG counts y downwards: turned over here, so that the pattern is seen as it is laid.
            svg.append(format(
                    "<g id=\"%s\" transform=\"translate(%.3f %.3f) scale(1 -1)\">%n",
                    FlatDxf.name(p), GAP - 1e3 * box[0], y + 1e3 * box[3]));
            for (int i = 0; i < p.outlines().size(); i++) {
                svg.append(path(i == 0 ? "l1" : "l11", p.outlines().get(i), true));
            }
            p.lines().forEach(line -> svg.append(path("l8", line, false)));
            p.marks().forEach(m -> svg.append(path(m.kind() == Mark.Kind.NOTCH ? "l4" : "l8", m.points(), false)));
            double half = Math.min(60, 1e3 * Math.min(p.length(), p.width()) / 3);
            svg.append(arrow("l7", p, 0, half)).append(arrow("l8", p, p.reference(), half));
            svg.append(format(
                    "<text class=\"l15\" transform=\"translate(%.2f %.2f) scale(1 -1)\">%s</text>%n</g>%n",
                    1e3 * p.start()[0] + 3, 1e3 * p.start()[1] + 3, escape(p.name())));
            y += 1e3 * (box[3] - box[1]) + GAP;
        }
        return svg.append("</svg>\n").toString();
    }

    private static String arrow(String layer, FlatPattern p, double angle, double half) {
        double x = 1e3 * p.start()[0];
        double y = 1e3 * p.start()[1];
        double c = half * Math.cos(angle);
        double s = half * Math.sin(angle);
        return format(
                "<line class=\"%s\" x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\"/>%n",
                layer, x - c, y - s, x + c, y + s);
    }

    private static String path(String layer, double[] points, boolean closed) {
        StringBuilder d = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            d.append(i == 0 ? 'M' : 'L').append(format("%.3f %.3f", 1e3 * points[i], 1e3 * points[i + 1]));
        }
        return "<path class=\"" + layer + "\" d=\"" + d + (closed ? "Z" : "") + "\"/>\n";
    }

    private static String escape(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern.replace("%n", "\n"), values);
    }
}
