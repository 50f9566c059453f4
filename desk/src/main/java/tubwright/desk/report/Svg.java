// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** A drawing in the making, for use inside a page: looks come from the page's style sheet by class. */
final class Svg {
    private final StringBuilder text = new StringBuilder();

    Svg(double width, double height, String label) {
        text.append("<svg viewBox=\"0 0 ")
                .append(number(width))
                .append(' ')
                .append(number(height))
                .append("\" role=\"img\" aria-label=\"")
                .append(Html.escape(label))
                .append("\">");
    }

    Svg line(String kind, double x1, double y1, double x2, double y2) {
        text.append("<line class=\"").append(kind).append('"');
        attribute("x1", x1).attribute("y1", y1).attribute("x2", x2).attribute("y2", y2);
        text.append("/>");
        return this;
    }

    Svg rectangle(String kind, double x, double y, double width, double height) {
        return rectangle(kind, "", x, y, width, height);
    }

    /** A rectangle filled with {@code fill}, a colour or a pattern, unless it is "". */
    Svg rectangle(String kind, String fill, double x, double y, double width, double height) {
        text.append("<rect class=\"").append(kind).append('"');
        if (!fill.isEmpty()) {
            text.append(" fill=\"").append(fill).append('"');
        }
        attribute("x", x)
                .attribute("y", y)
                .attribute("width", Math.max(0, width))
                .attribute("height", Math.max(0, height));
        text.append("/>");
        return this;
    }

    Svg circle(String kind, double x, double y, double radius) {
        text.append("<circle class=\"").append(kind).append('"');
        attribute("cx", x).attribute("cy", y).attribute("r", radius);
        text.append("/>");
        return this;
    }

    /** A polyline through the points; a NaN in either coordinate lifts the pen. */
    Svg path(String kind, double[] x, double[] y) {
        text.append("<path class=\"").append(kind).append("\" d=\"");
        boolean down = false;
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i])) {
                down = false;
                continue;
            }
            text.append(down ? 'L' : 'M').append(number(x[i])).append(' ').append(number(y[i]));
            down = true;
        }
        text.append("\"/>");
        return this;
    }

    Svg text(String kind, double x, double y, String words) {
        text.append("<text class=\"").append(kind).append('"');
        attribute("x", x).attribute("y", y);
        text.append('>').append(Html.escape(words)).append("</text>");
        return this;
    }

    /** Words written upwards. */
    Svg upright(String kind, double x, double y, String words) {
        text.append("<text class=\"").append(kind).append("\" transform=\"translate(");
        text.append(number(x)).append(' ').append(number(y)).append(") rotate(-90)\">");
        text.append(Html.escape(words)).append("</text>");
        return this;
    }

    Svg image(String uri, double x, double y, double width, double height) {
        text.append("<image href=\"").append(uri).append('"');
        attribute("x", x).attribute("y", y).attribute("width", width).attribute("height", height);
        text.append("/>");
        return this;
    }

    Svg raw(String markup) {
        text.append(markup);
        return this;
    }

    /** The finished drawing. */
    String done() {
        return text + "</svg>";
    }

    /** A length with at most two digits after the point. */
    static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(2, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }

    private Svg attribute(String name, double value) {
        text.append(' ').append(name).append("=\"").append(number(value)).append('"');
        return this;
    }
}
