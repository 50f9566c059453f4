// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static tubwright.engine.verification.ObstacleCourse.near;
import static tubwright.engine.verification.ObstacleCourseTest.label;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** The NAFEMS standard tests that a shell can do (targets from memory). */
class NafemsTest {
    private static final double ANY_ORDER = Double.NEGATIVE_INFINITY;
    private static final Ladder LE1 = Ladder.of(Family.NAFEMS, "NAFEMS LE1; plane stress converges to 93", Mark.MEMORY);
    private static final Ladder LE2 =
            Ladder.of(Family.NAFEMS, "NAFEMS LE2; statics, 6M/t² and pR/t", Mark.MEMORY_CONFIRMED);
    private static final Ladder LE3 = Ladder.of(Family.NAFEMS, "NAFEMS LE3", Mark.MEMORY);
    private static final Ladder LE6 = Ladder.of(Family.NAFEMS, "NAFEMS LE6", Mark.MEMORY);

    /** Mean stress resultants C ε of one cell of a grid nx cells wide: a quad, or its two triangles. */
    private static double[] resultants(ShellModel m, int nx, int i, int j) {
        return resultants(m, 0, nx, i, j);
    }

    /** The same for a grid whose first element is not the first of the model. */
    static double[] resultants(ShellModel m, int first, int nx, int i, int j) {
        int each = m.elements.getFirst().length == 3 ? 2 : 1;
        int cell = first / each + j * nx + i;
        ShellWorkspace w = new ShellWorkspace();
        double[] mean = new double[8];
        double[] e = new double[9];
        double sum = 0;
        for (int at = each * cell; at < each * (cell + 1); at++) {
            m.strainPoints(at, w);
            for (int p = 0; p < w.points(); p++) {
                w.strainAt(p, m.elementDisplacement(at), e);
                sum += w.weight(p);
                for (int r = 0; r < 8; r++) {
                    for (int c = 0; c < 8; c++) {
                        mean[r] += w.weight(p) * m.laminate[8 * r + c] * e[c];
                    }
                }
            }
        }
        for (int r = 0; r < 8; r++) {
            mean[r] /= sum;
        }
        return mean;
    }

    @ParameterizedTest
    @EnumSource
    void anEllipticMembraneLe1(Kind kind) {
        // The edge stress from the two elements next to the corner, on the inner edge; MPa.
        LE1.converges(
                "LE1 elliptic membrane, edge stress (Pa)",
                label(kind),
                new int[] {16, 32, 64},
                n -> ellipticMembrane(kind, n),
                92.7e6,
                kind == Kind.DISTORTED_TRIANGLES ? .03 : .02,
                ANY_ORDER);
    }

    private static double ellipticMembrane(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(210e9, .3, .1));
        ObstacleCourse.grid(m, kind, n, n, (a, b) -> {
            double f = Math.PI / 2 * b;
            double[] in = {2 * Math.cos(f), Math.sin(f)};
            double[] out = {3.25 * Math.cos(f), 2.75 * Math.sin(f)};
            return new double[] {in[0] + a * (out[0] - in[0]), in[1] + a * (out[1] - in[1]), 0};
        });
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 2, 3, 4);
        }
        for (int i : m.where(x -> Math.abs(x[1]) < 1e-9)) {
            m.hold(i, 1, 5);
        }
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 5);
        }
        // Outward pressure 10 MPa on the outer edge, thickness .1.
        for (int j = 0; j < n; j++) {
            int a = j * (n + 1) + n;
            int b = a + n + 1;
            double dx = m.nodes.get(b)[0] - m.nodes.get(a)[0];
            double dy = m.nodes.get(b)[1] - m.nodes.get(a)[1];
            for (int i : new int[] {a, b}) {
                m.load(i, 0, .5 * 10e6 * .1 * dy);
                m.load(i, 1, -.5 * 10e6 * .1 * dx);
            }
        }
        m.solve();
        // σyy at (2, 0): from the elements along y = 0, carried to the edge by the three nearest.
        double[] s = new double[3];
        for (int k = 0; k < 3; k++) {
            s[k] = resultants(m, n, k, 0)[1] / .1;
        }
        // Quadratic extrapolation to x = 0.
        return s[0] * 15 / 8 - s[1] * 10 / 8 + s[2] * 3 / 8;
    }

    @ParameterizedTest
    @EnumSource
    void aHemisphereUnderPointForcesLe3(Kind kind) {
        // 2 kN on the same hemisphere as in the obstacle course, E = 68.25 GPa: .185 m.
        LE3.converges(
                "LE3 hemisphere, movement at A (m)",
                label(kind),
                new int[] {4, 8, 16},
                n -> 2000 / 1e3 * ObstacleCourse.fullHemisphere(kind, n),
                .185,
                .01,
                ANY_ORDER);
    }

    /** Stress of a cylindrical patch, even all over, by a moment on its edge and by pressure with the pull that bears it. */
    @ParameterizedTest
    @EnumSource
    void aCylindricalPatchLe2(Kind kind) {
        for (boolean pressed : new boolean[] {false, true}) {
            LE2.converges(
                    "LE2 cylindrical patch, " + (pressed ? "pressure" : "edge moment") + ", hoop stress outside (Pa)",
                    label(kind),
                    new int[] {4, 8, 16},
                    n -> cylindricalPatch(kind, n, pressed),
                    60e6,
                    .01,
                    ANY_ORDER);
        }
    }

    private static double cylindricalPatch(Kind kind, int n, boolean pressed) {
        double t = .01;
        ShellModel m = new ShellModel(Laminates.isotropic(210e9, .3, t));
        m.normal = x -> Vectors.unit(x[0], 0, x[2]);
        m.reference = x -> new double[] {0, 1, 0};
        ObstacleCourse.grid(m, kind, n, n, (a, b) ->
                new double[] {Math.sin(Math.PI / 6 * a), .5 * b, Math.cos(Math.PI / 6 * a)});
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 1, 2, 3, 4, 5);
        }
        for (int i : m.where(x -> near(x[1], 0) || near(x[1], .5))) {
            m.hold(i, 1, 3, 5);
        }
        double c = Math.cos(Math.PI / 6);
        double s = .5;
        for (int j = 0; j <= n; j++) {
            int i = j * (n + 1) + n;
            double share = .5 / n * (j == 0 || j == n ? .5 : 1);
            if (pressed) {
                m.load(i, 0, 60e6 * t * share * c);
                m.load(i, 2, -60e6 * t * share * s);
            } else {
                m.load(i, 4, 1000 * share);
            }
        }
        if (pressed) {
            m.pressure(.6e6);
        }
        m.solve();
        double[] r = resultants(m, n, n / 2, n / 2);
        return Math.abs(r[1] / t) + Math.abs(6 * r[4] / (t * t));
    }

    @ParameterizedTest
    @EnumSource
    void aSkewPlateLe6(Kind kind) {
        LE6.converges(
                "LE6 skew plate, largest principal stress below the centre (Pa)",
                label(kind),
                kind.triangles() ? new int[] {16, 32, 64} : new int[] {8, 16, 32},
                n -> skewPlate(kind, n),
                .802e6,
                // Moments are singular at the obtuse corners; constant-strain bending feels it most.
                kind.triangles() ? .06 : .03,
                ANY_ORDER);
    }

    private static double skewPlate(Kind kind, int n) {
        double c = Math.cos(Math.PI / 6);
        ShellModel m = new ShellModel(Laminates.isotropic(210e9, .3, .01));
        ObstacleCourse.grid(m, kind, n, n, (a, b) -> new double[] {a + b * c, b * .5, 0});
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 0, 1, 5);
            int col = i % (n + 1);
            int row = i / (n + 1);
            if (col == 0 || col == n || row == 0 || row == n) {
                m.hold(i, 2);
            }
        }
        m.surfaceLoad(0, 0, -700);
        m.solve();
        double[] mean = new double[8];
        // The elements round the centre node.
        for (int k = 0; k < 4; k++) {
            double[] one = resultants(m, n, n / 2 - k % 2, n / 2 - k / 2);
            for (int i = 0; i < 8; i++) {
                mean[i] += one[i] / 4;
            }
        }
        double sx = 6 * mean[3] / 1e-4;
        double sy = 6 * mean[4] / 1e-4;
        double sxy = 6 * mean[5] / 1e-4;
        return Math.abs(sx + sy) / 2 + Math.hypot((sx - sy) / 2, sxy);
    }
}
