// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.Optional;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.joint.BarStrength;
import tubwright.engine.material.Metal;
import tubwright.engine.structure.Stiffener;

/**
 * Sections of bars from their sizes: angle, flat, square and round tube. "Across" is bending out of the surface the bar
 * lies on, "in" bending within it.
 */
final class Sections {
    /**
     * The geometry of a section.
     *
     * @param area m²
     * @param across second moment for bending out of the surface, m⁴
     * @param in second moment for bending in the surface, m⁴
     * @param torsion torsion constant, m⁴
     * @param depth distance of the centroid from the surface it lies against, m
     * @param reaches from the centroid to the outermost fibre, out of the surface and within it, m
     * @param torsionModulus torque over largest shear stress, m³
     * @param wall thickness of leg or wall, m
     * @param words for the report
     */
    record Geometry(
            double area,
            double across,
            double in,
            double torsion,
            double depth,
            double[] reaches,
            double torsionModulus,
            double wall,
            String words) {
        Stiffener.Section of(Metal metal) {
            return new Stiffener.Section(
                    metal.elasticity().e1(),
                    metal.elasticity().g12(),
                    metal.density(),
                    area,
                    across,
                    in,
                    torsion,
                    Optional.of(
                            new BarStrength(metal, area, new double[] {across, in}, reaches, torsionModulus, wall)));
        }
    }

    private Sections() {}

    static Geometry of(StiffenerText text) {
        Optional<Geometry> angle = text.angle().map(s -> angle(sizes(s, 3)));
        Optional<Geometry> flat = text.flat().map(s -> flat(sizes(s, 2)));
        Optional<Geometry> square = text.squareTube().map(s -> squareTube(s, sizes(s, 3)));
        Optional<Geometry> round = text.roundTube().map(s -> roundTube(s, sizes(s, 2)));
        return angle.or(() -> flat).or(() -> square).or(() -> round).orElseThrow();
    }

    /** A round or a square tube, whichever is written. */
    static Geometry tube(Optional<Amounts> round, Optional<Amounts> square) {
        return round.map(s -> roundTube(s, sizes(s, 2)))
                .or(() -> square.map(s -> squareTube(s, sizes(s, 3))))
                .orElseThrow();
    }

    private static double[] sizes(Amounts amounts, int wanted) {
        if (amounts.si().length != wanted) {
            throw new DesignError(
                    amounts.place(),
                    amounts.si().length + " sizes are given where " + wanted + " are due",
                    wanted == 3 ? "as in \"25 x 25 x 1.6 mm\"" : "as in \"25 x 1.6 mm\"");
        }
        return amounts.si();
    }

    /** Leg b flat on the surface, leg h standing inward, both t thick (thin-walled: legs meet at their middle lines). */
    static Geometry angle(double[] s) {
        double b = s[0];
        double h = s[1];
        double t = s[2];
        double legIn = b * t;
        double legDown = (h - t) * t;
        double area = legIn + legDown;
        // Depth z from the surface, breadth y from the standing leg's outer face.
        double z = (legIn * t / 2 + legDown * (t + (h - t) / 2)) / area;
        double y = (legIn * b / 2 + legDown * t / 2) / area;
        double across = b * t * t * t / 12
                + legIn * square(z - t / 2)
                + t * cube(h - t) / 12
                + legDown * square(z - t - (h - t) / 2);
        double in = t * cube(b) / 12 + legIn * square(y - b / 2) + (h - t) * cube(t) / 12 + legDown * square(y - t / 2);
        double torsion = (b + h - t) * cube(t) / 3;
        double[] reaches = {Math.max(z, h - z), Math.max(y, b - y)};
        return new Geometry(area, across, in, torsion, z, reaches, torsion / t, t, words("angle", s));
    }

    static Geometry flat(double[] s) {
        double b = s[0];
        double t = s[1];
        double torsion = b * cube(t) / 3;
        double[] reaches = {t / 2, b / 2};
        return new Geometry(
                b * t, b * cube(t) / 12, t * cube(b) / 12, torsion, t / 2, reaches, torsion / t, t, words("flat", s));
    }

    /** Torsion constant of the thin closed section after Bredt (1896): 4 A² t / perimeter of the middle line. */
    static Geometry squareTube(Amounts text, double[] s) {
        double b = s[0];
        double h = s[1];
        double t = s[2];
        refuseSolid(text, Math.min(b, h), t);
        double bi = b - 2 * t;
        double hi = h - 2 * t;
        double enclosed = (b - t) * (h - t);
        return new Geometry(
                b * h - bi * hi,
                (b * cube(h) - bi * cube(hi)) / 12,
                (h * cube(b) - hi * cube(bi)) / 12,
                4 * square(enclosed) * t / (2 * (b + h - 2 * t)),
                h / 2,
                new double[] {h / 2, b / 2},
                2 * enclosed * t,
                t,
                words("tube", s));
    }

    static Geometry roundTube(Amounts text, double[] s) {
        double r = s[0] / 2;
        double ri = r - s[1];
        refuseSolid(text, s[0], s[1]);
        double inertia = Math.PI / 4 * (square(square(r)) - square(square(ri)));
        return new Geometry(
                Math.PI * (r * r - ri * ri),
                inertia,
                inertia,
                2 * inertia,
                r,
                new double[] {r, r},
                2 * inertia / r,
                s[1],
                words("round tube", s));
    }

    private static void refuseSolid(Amounts text, double size, double wall) {
        if (2 * wall >= size) {
            throw new DesignError(
                    text.place(), "the wall of the tube is thicker than half the tube", "check its sizes");
        }
    }

    private static String words(String kind, double[] sizes) {
        StringBuilder words = new StringBuilder(kind);
        for (int i = 0; i < sizes.length; i++) {
            words.append(i == 0 ? " " : " × ").append(mm(sizes[i]));
        }
        return words + " mm";
    }

    /** Millimetres without needless digits. */
    static String mm(double metres) {
        double rounded = Math.rint(metres * 1e5) / 100;
        return rounded == Math.rint(rounded) ? String.valueOf((long) rounded) : String.valueOf(rounded);
    }

    private static double square(double v) {
        return v * v;
    }

    private static double cube(double v) {
        return v * v * v;
    }
}
