// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static tubwright.engine.verification.ObstacleCourse.near;
import static tubwright.engine.verification.ObstacleCourseTest.label;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** What an assembled tub is made of: a bay that tapers, bays of other walls one after the other, a bay cut open. */
class TaperedAndOpenTubesTest {
    private static final double ANY_ORDER = Double.NEGATIVE_INFINITY;
    private static final Ladder TAPER = Ladder.of(
            Family.TORSION, "Membrane shear c/r² in each wall, θ/T = (1/b² − 1/a²)/4Gtα, sin β = tan α", Mark.EXACT);
    private static final Ladder BAYS =
            Ladder.of(Family.TORSION, "Bredt 1896, twists of the bays added; a square does not warp", Mark.EXACT);
    private static final Ladder OPEN = Ladder.of(
            Family.TORSION, "Two walls bent to an S (Timoshenko, k = 5/6) and twisted, ends held (Vlasov)", Mark.EXACT);

    /** Two kinds of thickness of wall along z, each with its share of the length. */
    private record Bays(double[] near, double[] far, double split) {}

    /** Twist per couple of a square tube of side a at the root and b at the far end; ends turn rigidly, free to warp. */
    private static double square(Kind kind, double a, double b, double length, int cells, int along, Bays bays) {
        ShellModel m = new ShellModel(bays.near) {
            @Override
            double[] stiffness(int e) {
                double z = 0;
                double[] x = corners(e);
                for (int i = 2; i < x.length; i += 3) {
                    z += 3 * x[i] / x.length;
                }
                laminate = z < bays.split * length ? bays.near : bays.far;
                nominal = laminate;
                return super.stiffness(e);
            }
        };
        m.reference = x -> new double[] {0, 0, 1};
        for (int wall = 0; wall < 4; wall++) {
            double c = Math.cos(Math.PI / 2 * wall);
            double s = Math.sin(Math.PI / 2 * wall);
            // Bay by bay, so that no cell of a distorted mesh reaches over the joint.
            for (int bay = 0; bay < 2; bay++) {
                double from = bay * bays.split;
                double share = bay == 0 ? bays.split : 1 - bays.split;
                ShellModel part = new ShellModel(bays.near);
                ObstacleCourse.grid(part, kind, cells, (int) Math.round(along * share), (r, q) -> {
                    double z = from + share * q;
                    double half = (a + z * (b - a)) / 2;
                    double x = half * (2 * r - 1);
                    return new double[] {c * x + s * half, s * x - c * half, length * z};
                });
                ObstacleCourse.merge(m, part);
            }
        }
        for (int i : m.where(x -> near(x[2], 0))) {
            m.hold(i, 0, 1, 5);
        }
        for (int i : m.where(x -> near(x[2], length))) {
            turn(m, i);
        }
        m.hold(0, 2);
        m.solve();
        return 1 / m.twiceEnergy();
    }

    private static void turn(ShellModel m, int node) {
        double[] x = m.nodes.get(node);
        m.prescribe(node, 0, -x[1]);
        m.prescribe(node, 1, x[0]);
        m.prescribe(node, 5, 1);
    }

    /**
     * A shear of c/r² about the apex is in equilibrium in each plane wall and leaves it continuous at the edges, so the
     * membrane twist is exact between arcs about the apex: T = 8 α c sin β, and twice the energy over T² gives θ/T.
     */
    @ParameterizedTest
    @EnumSource
    void aTaperedBoxTwistsByTheShearOfItsWalls(Kind kind) {
        double a = 300;
        double b = 200;
        double length = 1500;
        double t = 2;
        double[] c = Laminates.isotropic(70e3, .3, t);
        double beta = Math.atan((a - b) / 2 / length);
        double alpha = Math.atan(Math.sin(beta));
        TAPER.converges(
                "Square box tapered from 300 to 200 mm, θ/T (rad/N·mm)",
                label(kind) + ", a wall",
                new int[] {1, 2, 4},
                n -> square(kind, a, b, length, n, 8 * n, new Bays(c, c, .5)),
                (1 / (b * b) - 1 / (a * a)) / (4 * 70e3 / 2.6 * t * alpha),
                // As prismatic boxes, and α² more: the ends are planes, up to this share off the arcs at the corners.
                prismatic(kind) + alpha * alpha,
                ANY_ORDER);
    }

    /** Shares found reachable for closed boxes of flat walls (quads 5e-4 of the reference sheet, as the two cells else). */
    private static double prismatic(Kind kind) {
        return kind.triangles() ? .005 : kind.distorted() ? .002 : 5e-4;
    }

    @ParameterizedTest
    @EnumSource
    void baysOfOtherWallsAddTheirTwists(Kind kind) {
        double side = 250;
        double length = 2000;
        double g = 70e3 / 2.6;
        double twist = 0;
        for (double t : new double[] {2, 4}) {
            twist += length / 2 / (g * (side * side * side * t + 4 * side * t * t * t / 3));
        }
        BAYS.converges(
                "Square box, half its length of twice the wall, θ/T (rad/N·mm)",
                label(kind) + ", a wall",
                // Edges kink at the joint; an element as long as the wall is wide smears that over its length.
                new int[] {2, 4, 8},
                n -> square(
                        kind,
                        side,
                        side,
                        length,
                        n,
                        8 * n,
                        new Bays(Laminates.isotropic(70e3, .3, 2), Laminates.isotropic(70e3, .3, 4), .5)),
                twist,
                prismatic(kind),
                ANY_ORDER);
    }

    /**
     * A bay without roof and floor between rigid bays: its two walls, ends built in, carry the couple by bending in their
     * planes; that makes the bound on which a tub cut open for the driver is judged. ν = 0, or the ends held would hinder
     * the contraction that beams do not know.
     */
    @ParameterizedTest
    @EnumSource
    void aBayCutOpenCarriesTorsionByItsWallsBending(Kind kind) {
        double width = 300;
        double depth = 60;
        double length = 600;
        double t = 2;
        double e = 70e3;
        double g = e / 2;
        double inertia = t * depth * depth * depth / 12;
        double phi = 12 * e * inertia / (5. / 6 * g * depth * t * length * length);
        double bending = 2 * width * width / 4 * 12 * e * inertia / (length * length * length * (1 + phi));
        // Each wall twisted, its ends held plane, the warping of a narrow strip being of second order: Γ = (dt)³/144.
        double gj = g * depth * t * t * t / 3;
        double k = Math.sqrt(gj / (e * depth * depth * depth * t * t * t / 144));
        double twisting = 2 * gj / (length - 2 / k * Math.tanh(k * length / 2));
        OPEN.converges(
                "Bay without roof and floor, ends rigid, θ/T (rad/N·mm)",
                label(kind) + ", over the depth",
                new int[] {2, 4, 8},
                n -> {
                    ShellModel m = new ShellModel(Laminates.isotropic(e, 0, t));
                    for (int side = -1; side < 2; side += 2) {
                        int s = side;
                        ObstacleCourse.grid(m, kind, 10 * n, n, (r, q) ->
                                new double[] {s * width / 2, depth * (q - .5), length * r});
                    }
                    m.reference = x -> new double[] {0, 0, 1};
                    for (int i : m.where(x -> near(x[2], 0))) {
                        m.hold(i, 0, 1, 2, 3, 4, 5);
                    }
                    for (int i : m.where(x -> near(x[2], length))) {
                        turn(m, i);
                        m.hold(i, 2, 3, 4);
                    }
                    m.solve();
                    return 1 / m.twiceEnergy();
                },
                1 / (bending + twisting),
                // Shear is Φ = 2.4 % of it, and built-in ends keep the shear from warping: part of Φ is not there.
                kind == Kind.QUADS ? .01 : .02,
                kind == Kind.QUADS ? 1.7 : ANY_ORDER);
    }
}
