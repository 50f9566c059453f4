// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.export;

import java.util.List;
import java.util.Locale;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.flat.Mark;

/**
 * Flat patterns for a cutter as ASCII DXF, in mm, layers after ASTM D6673: 1 outline, 4 notches (slits as lines from the
 * outline inward), 7 direction of warp or fibres, 8 drawn lines (edges of zones, the reference direction, where a core's ramp
 * begins, outlines of potting), 11 cut-outs, 15 words. One block a pattern, placed side by side once; outlines are
 * closed polylines.
 */
public final class FlatDxf {
    private static final int[] LAYERS = {1, 4, 7, 8, 11, 15};
    private static final double GAP = 20;
    private static final double ARROW = 60;

    private final StringBuilder text = new StringBuilder(1 << 16);

    private FlatDxf() {}

    /** The whole file. */
    public static String write(List<FlatPattern> patterns) {
        return write(patterns, "");
    }

    /** The whole file with words of what issue it is of, beside the first pattern. */
    public static String write(List<FlatPattern> patterns, String foot) {
        FlatDxf dxf = new FlatDxf();
        dxf.head();
        dxf.pair(0, "SECTION").pair(2, "BLOCKS");
        patterns.forEach(dxf::block);
        dxf.pair(0, "ENDSEC").pair(0, "SECTION").pair(2, "ENTITIES");
        double y = 0;
        for (FlatPattern pattern : patterns) {
            double[] box = pattern.box();
            dxf.pair(0, "INSERT").pair(8, "1").pair(2, name(pattern));
            dxf.point(10, -1e3 * box[0], y - 1e3 * box[1]);
            y += 1e3 * (box[3] - box[1]) + GAP;
        }
        if (!foot.isEmpty()) {
            dxf.words(0, -2 * GAP, GAP / 2, foot);
        }
        dxf.pair(0, "ENDSEC").pair(0, "EOF");
        return dxf.text.toString();
    }

    private void head() {
        pair(0, "SECTION").pair(2, "HEADER");
        pair(9, "$ACADVER").pair(1, "AC1009").pair(9, "$INSUNITS").pair(70, "4");
        pair(9, "$MEASUREMENT").pair(70, "1").pair(0, "ENDSEC");
        pair(0, "SECTION").pair(2, "TABLES").pair(0, "TABLE").pair(2, "LAYER");
        pair(70, Integer.toString(LAYERS.length));
        for (int layer : LAYERS) {
            pair(0, "LAYER").pair(2, Integer.toString(layer)).pair(70, "0");
            pair(62, layer == 1 || layer == 11 ? "7" : "5").pair(6, "CONTINUOUS");
        }
        pair(0, "ENDTAB").pair(0, "ENDSEC");
    }

    private void block(FlatPattern pattern) {
        pair(0, "BLOCK").pair(8, "1").pair(2, name(pattern)).pair(70, "0");
        point(10, 0, 0);
        pair(3, name(pattern));
        for (int i = 0; i < pattern.outlines().size(); i++) {
            polyline(i == 0 ? "1" : "11", pattern.outlines().get(i), true);
        }
        pattern.lines().forEach(line -> polyline("8", line, false));
        pattern.marks(Mark.Kind.CHAMFER).forEach(line -> polyline("8", line, false));
        pattern.marks(Mark.Kind.POTTING).forEach(line -> polyline("8", line, false));
        pattern.marks(Mark.Kind.NOTCH)
                .forEach(slit -> line("4", 1e3 * slit[0], 1e3 * slit[1], 1e3 * slit[2], 1e3 * slit[3]));
        double x = 1e3 * pattern.start()[0];
        double y = 1e3 * pattern.start()[1];
        double half = Math.min(ARROW, 1e3 * Math.min(pattern.length(), pattern.width()) / 3);
        arrow("7", x, y, 0, half);
        arrow("8", x, y, pattern.reference(), half);
        words(x + half / 10, y + half / 10, half / 6, pattern.name());
        pair(0, "ENDBLK").pair(8, "1");
    }

    private void arrow(String layer, double x, double y, double angle, double half) {
        double c = half * Math.cos(angle);
        double s = half * Math.sin(angle);
        line(layer, x - c, y - s, x + c, y + s);
        for (int side = -1; side <= 1; side += 2) {
            double back = angle + Math.PI + side * Math.PI / 8;
            line(layer, x + c, y + s, x + c + half / 4 * Math.cos(back), y + s + half / 4 * Math.sin(back));
        }
    }

    private void line(String layer, double x1, double y1, double x2, double y2) {
        pair(0, "LINE").pair(8, layer);
        point(10, x1, y1);
        point(11, x2, y2);
    }

    private void words(double x, double y, double height, String words) {
        pair(0, "TEXT").pair(8, "15");
        point(10, x, y);
        pair(40, number(Math.max(2, height))).pair(1, ascii(words));
    }

    private void polyline(String layer, double[] points, boolean closed) {
        pair(0, "POLYLINE").pair(8, layer).pair(66, "1");
        point(10, 0, 0);
        pair(70, closed ? "1" : "0");
        for (int i = 0; i < points.length; i += 2) {
            pair(0, "VERTEX").pair(8, layer);
            point(10, 1e3 * points[i], 1e3 * points[i + 1]);
        }
        pair(0, "SEQEND").pair(8, layer);
    }

    private void point(int code, double x, double y) {
        pair(code, number(x)).pair(code + 10, number(y)).pair(code + 20, "0.0");
    }

    private FlatDxf pair(int code, String value) {
        text.append(String.format(Locale.ROOT, "%3d\n", code)).append(value).append('\n');
        return this;
    }

    private static String number(double mm) {
        return String.format(Locale.ROOT, "%.4f", mm);
    }

    /** A block's name: capitals, digits and low lines. */
    static String name(FlatPattern pattern) {
        return ascii(pattern.name()).toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]+", "_");
    }

    private static String ascii(String words) {
        return words.replaceAll("[^ -~]", "_");
    }
}
