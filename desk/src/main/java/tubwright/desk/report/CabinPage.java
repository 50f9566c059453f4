// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tubwright.desk.answer.CabinAnswer;
import tubwright.desk.console.CabinSummary;
import tubwright.engine.cabin.Cabin;
import tubwright.engine.cabin.Driver;
import tubwright.engine.cabin.Solid;
import tubwright.engine.cabin.Tank;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;

/** Side and top view of what goes into a tub. */
public final class CabinPage {
    private static final double WIDTH = 860;
    private static final double EDGE = 30;
    private static final int STATIONS = 90;

    private CabinPage() {}

    /** The whole page. */
    public static String write(CabinAnswer answer) {
        String head = "<header><div class=\"name\"><p class=\"kicker\">What goes into it</p><h1>"
                + Html.escape(answer.tub()) + "</h1><p>"
                + Html.escape(CabinSummary.CAUTION) + "</p></div></header>\n";
        String words = answer.words().stream()
                .map(w -> "<p>" + Html.escape(w) + "</p>")
                .collect(Collectors.joining());
        return Note.page(
                answer.tub() + ": what goes into it",
                head,
                List.of(
                        new Section(
                                "From the side",
                                "Outer skin in a bold line, inner skin in a thin one, on the centreline; dashed what must"
                                        + " go inside.",
                                view(answer, true)),
                        new Section("From above", "The tub where it is widest at each station.", view(answer, false)),
                        new Section("In words", "Tightest places first.", words + table(answer))),
                "");
    }

    private static String table(CabinAnswer answer) {
        StringBuilder rows =
                new StringBuilder("<table><tr><th></th><th>to the skin</th><th>x</th><th>y</th><th>z</th></tr>");
        for (Cabin.Nearest n : answer.fit().nearest()) {
            rows.append("<tr><td>").append(Html.escape(n.what())).append("</td>");
            for (double value : new double[] {n.distance(), n.at()[0], Math.abs(n.at()[1]), n.at()[2]}) {
                rows.append("<td>")
                        .append(Html.escape(CabinAnswer.millimetres(value)))
                        .append("</td>");
            }
            rows.append("</tr>");
        }
        return rows.append("</table>").toString();
    }

    private static String view(CabinAnswer answer, boolean side) {
        TubShape shape = answer.variant().tub().shape();
        double[] x = new double[STATIONS + 1];
        double[][] edges = new double[4][STATIONS + 1];
        for (int i = 0; i <= STATIONS; i++) {
            x[i] = shape.front() + i * (shape.rear() - shape.front()) / STATIONS;
            var section = shape.section(x[i]);
            double skin = answer.variant().skin(x[i]);
            double half = halfWidth(section);
            edges[0][i] = side ? section.top() : half;
            edges[1][i] = side ? section.bottom() : -half;
            edges[2][i] = edges[0][i] - skin;
            edges[3][i] = edges[1][i] + skin;
        }
        List<Solid> solids = new ArrayList<>(answer.cabin().kept());
        answer.cabin().driver().ifPresent(d -> {
            solids.addAll(d.limbs());
            solids.add(d.head());
        });
        double most = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i <= STATIONS; i++) {
            most = Math.max(most, edges[0][i]);
            least = Math.min(least, edges[1][i]);
        }
        for (Solid solid : solids) {
            for (double[] p : solid.surface()) {
                most = Math.max(most, side ? p[2] : p[1]);
                least = Math.min(least, side ? p[2] : p[1]);
            }
        }
        double scale = (WIDTH - 2 * EDGE) / (shape.rear() - shape.front());
        double height = 2 * EDGE + scale * (most - least);
        Svg svg = new Svg(WIDTH, height, side ? "Side view of driver and tub" : "Top view of driver and tub");
        Place place = new Place(shape.front(), most, scale);
        for (int e = 0; e < 4; e++) {
            double[] u = new double[x.length];
            double[] v = new double[x.length];
            for (int i = 0; i < x.length; i++) {
                u[i] = place.u(x[i]);
                v[i] = place.v(edges[e][i]);
            }
            svg.path(e < 2 ? "curve s0" : "curve thin s0", u, v);
        }
        answer.cabin().tank().ifPresent(t -> tank(svg, t, place, side));
        solids.forEach(s -> solid(svg, s, place, side));
        answer.cabin().driver().ifPresent(d -> joints(svg, d, place, side));
        answer.fit().nearest().stream().limit(1).forEach(n -> {
            double u = place.u(n.at()[0]);
            double v = place.v(side ? n.at()[2] : Math.abs(n.at()[1]));
            svg.circle("mark", u, v, 4);
            svg.text("figure", u + 8, v - 6, n.what() + " " + CabinAnswer.millimetres(n.distance()));
        });
        return svg.done();
    }

    private record Place(double front, double most, double scale) {
        double u(double x) {
            return EDGE + scale * (x - front);
        }

        double v(double up) {
            return EDGE + scale * (most - up);
        }
    }

    private static double halfWidth(tubwright.engine.shape.Section section) {
        double most = 0;
        SkinPoint point = new SkinPoint();
        for (int strip = 0; strip < section.stripCount(); strip++) {
            for (int i = 0; i <= 8; i++) {
                section.at(strip, i / 8.0, point);
                most = Math.max(most, point.y);
            }
        }
        return most;
    }

    private static void tank(Svg svg, Tank tank, Place place, boolean side) {
        if (side) {
            svg.rectangle(
                    "tick",
                    "none",
                    place.u(tank.from()),
                    place.v(tank.high()),
                    place.u(tank.to()) - place.u(tank.from()),
                    place.v(tank.low()) - place.v(tank.high()));
            svg.text(
                    "figure middle",
                    place.u((tank.from() + tank.to()) / 2),
                    place.v((tank.low() + tank.high()) / 2),
                    "tank");
        }
    }

    /** Outline of a solid: the hull of its surface in the view, as the least and most of every ring. */
    private static void solid(Svg svg, Solid solid, Place place, boolean side) {
        List<double[]> points = solid.surface();
        double[][] flat = new double[points.size()][];
        for (int i = 0; i < flat.length; i++) {
            double[] p = points.get(i);
            flat[i] = new double[] {place.u(p[0]), place.v(side ? p[2] : p[1])};
        }
        List<double[]> hull = hull(flat);
        double[] u = new double[hull.size() + 1];
        double[] v = new double[u.length];
        for (int i = 0; i < u.length; i++) {
            u[i] = hull.get(i % hull.size())[0];
            v[i] = hull.get(i % hull.size())[1];
        }
        svg.path("curve s1", u, v);
    }

    private static void joints(Svg svg, Driver driver, Place place, boolean side) {
        if (!side) {
            return;
        }
        double[][] chain = {driver.heels(), driver.knee(), driver.hip(), driver.onBack(driver.shoulder())};
        double[] u = new double[chain.length];
        double[] v = new double[chain.length];
        for (int i = 0; i < chain.length; i++) {
            u[i] = place.u(chain[i][0]);
            v[i] = place.v(chain[i][1]);
            svg.circle("mark", u[i], v[i], 3);
        }
        svg.path("curve s2", u, v);
    }

    /** Convex hull (Andrew 1979). */
    private static List<double[]> hull(double[][] points) {
        double[][] sorted = points.clone();
        java.util.Arrays.sort(
                sorted,
                java.util.Comparator.<double[]>comparingDouble(p -> p[0]).thenComparingDouble(p -> p[1]));
        List<double[]> hull = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            int start = hull.size();
            for (int i = 0; i < sorted.length; i++) {
                double[] p = sorted[pass == 0 ? i : sorted.length - 1 - i];
                while (hull.size() >= start + 2 && turn(hull.get(hull.size() - 2), hull.getLast(), p) <= 0) {
                    hull.removeLast();
                }
                hull.add(p);
            }
            hull.removeLast();
        }
        return hull;
    }

    private static double turn(double[] a, double[] b, double[] c) {
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    }
}
