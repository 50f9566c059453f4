// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tubwright.engine.verification.ObstacleCourse.near;
import static tubwright.engine.verification.ObstacleCourseTest.label;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** The composite tests of NAFEMS report R0031 that a shell can do: a strip on three lines and a sandwich plate. */
class NafemsCompositeTest {
    private static final double ANY_ORDER = Double.NEGATIVE_INFINITY;
    private static final Ladder STRIP =
            Ladder.of(Family.NAFEMS, "NAFEMS R0031/1; beam theory with energy shear", Mark.MEMORY_CONFIRMED);
    private static final Ladder SANDWICH =
            Ladder.of(Family.NAFEMS, "NAFEMS R0031/3; first-order series with core G d²/c", Mark.COMPUTED);
    private static final Ladder PRINTED =
            Ladder.of(Family.NAFEMS, "NAFEMS R0031/3, taken to be of the middle of the face", Mark.MEMORY_CONFIRMED);
    private static final double[] SANDWICH_FACE = {10e6, 4e6, .3, 1.875e6};

    /** Deflection, stress and shear of the strip; one per cent, as beam theory and the printed digits are apart. */
    @ParameterizedTest
    @EnumSource
    void aStripOfLaminateR0031Test1(Kind kind) {
        String[] names = {"deflection (mm)", "σ11 at the bottom (MPa)", "shear at the first interface (MPa)"};
        double[] reference = {1.06, 683.9, 4.1};
        int[] sizes = {50, 100, 200};
        double[][] ours = new double[sizes.length][];
        for (int i = 0; i < sizes.length; i++) {
            ours[i] = strip(kind, sizes[i]);
        }
        for (int v = 0; v < 3; v++) {
            int value = v;
            STRIP.converges(
                    "R0031/1 strip, " + names[v],
                    label(kind) + ", along",
                    sizes,
                    n -> ours[Integer.numberOfTrailingZeros(n / 50)][value],
                    reference[v],
                    .01,
                    ANY_ORDER);
        }
    }

    /** [0/90/0/90~(.4)/0/90/0], .1 mm plies; span 30, width 10, overhangs of 10; 10 N/mm at the middle. */
    private static double[] strip(Kind kind, int n) {
        double[] c = CompositeStrip.stiffness();
        int k = 4 * n / 50;
        ShellModel m = new ShellModel(c);
        // Lines of support and load are lines of the mesh, on irregular meshes too.
        for (int part = 0; part < 4; part++) {
            double from = new double[] {0, 10, 25, 40}[part];
            double to = new double[] {10, 25, 40, 50}[part];
            ShellModel add = new ShellModel(c);
            ObstacleCourse.grid(add, kind, (int) Math.round((to - from) * n / 50), k, (a, b) ->
                    new double[] {from + a * (to - from), 10 * b, 0});
            ObstacleCourse.merge(m, add);
        }
        for (int i : m.where(x -> near(x[0], 10) || near(x[0], 40))) {
            m.hold(i, 2);
        }
        for (int i : m.where(x -> near(x[0], 25))) {
            double y = m.nodes.get(i)[1];
            m.load(i, 2, -100. / k * (near(y, 0) || near(y, 10) ? .5 : 1));
        }
        int middle = m.where(x -> near(x[0], 25) && near(x[1], 5))[0];
        m.hold(middle, 0, 1, 5);
        m.solve();
        int each = kind.triangles() ? 2 : 1;
        int mm = n / 50;
        // Moment by the cells next to the force in the middle of the width, carried half a cell on.
        int right = each * k * 25 * mm;
        double at = NafemsTest.resultants(m, right, 15 * mm, 0, k / 2)[3];
        double next = NafemsTest.resultants(m, right, 15 * mm, 1, k / 2)[3];
        double curvature = (at + .5 * (at - next)) / c[27];
        double sigma = 100e3 / (1 - .4 * .4 * 5 / 100) * .5 * curvature;
        // Shear in the middle half of the width, from 18 to 22 mm.
        double q = 0;
        for (int j = k / 4; j < 3 * k / 4; j++) {
            for (int i = 8 * mm; i < 12 * mm; i++) {
                q += NafemsTest.resultants(m, each * k * 10 * mm, 15 * mm, i, j)[6] / (2. * k * mm);
            }
        }
        return new double[] {-m.at(middle, 2), Math.abs(sigma), Math.abs(CompositeStrip.interfaceShear(q))};
    }

    @ParameterizedTest
    @EnumSource
    void aSandwichPlateR0031Test3(Kind kind) {
        double reference = sandwichSeries()[0];
        assertEquals(.12220, reference, 5e-6);
        SANDWICH.converges(
                "R0031/3 sandwich, deflection (in)",
                label(kind),
                new int[] {4, 8, 16},
                n -> sandwich(kind, n)[0],
                reference,
                .01,
                ANY_ORDER);
    }

    /** One per cent is asked of 16 × 16 quads by the reference sheet; other kinds take twice as many a side. */
    @ParameterizedTest
    @EnumSource
    void theFacesOfTheSandwichAreStressedAsInTheSeries(Kind kind) {
        String[] names = {"σx outside, middle (psi)", "σy outside, middle (psi)", "τxy outside, quarter point (psi)"};
        double[] reference = sandwichSeries();
        int coarsest = kind == Kind.QUADS ? 4 : 8;
        int[] sizes = {coarsest, 2 * coarsest, 4 * coarsest};
        double[][] ours = new double[sizes.length][];
        for (int i = 0; i < sizes.length; i++) {
            ours[i] = sandwich(kind, sizes[i]);
        }
        for (int v = 1; v < 4; v++) {
            int value = v;
            SANDWICH.converges(
                    "R0031/3 sandwich, " + names[v - 1],
                    label(kind),
                    sizes,
                    n -> ours[Integer.numberOfTrailingZeros(n / coarsest)][value],
                    reference[v],
                    .01,
                    ANY_ORDER);
        }
    }

    /**
     * The printed 34.45 and −5.07 ksi are those of the middle of the face. σy, remembered as 13.93, is 13.41 there and 13.90
     * outside: not compared with, the digits want checking in the report.
     */
    @Test
    void theSandwichStressesPrintedAreOfTheMiddleOfTheFace() {
        double[] fine = sandwich(Kind.QUADS, 32);
        double middle = .389 / .403;
        PRINTED.within(.01, "R0031/3 sandwich, σx, printed (psi)", "32 × 32 quads", 34450, middle * fine[1]);
        PRINTED.within(.01, "R0031/3 sandwich, τxy, printed (psi)", "32 × 32 quads", 5070, middle * fine[3]);
    }

    /** Deflection, σx, σy at the middle and τxy at the quarter point by Navier's series, outside of the face. */
    private static double[] sandwichSeries() {
        // Faces .028 about a core of .75; nothing here from the laminate code.
        double inertia = 2 * (.028 * .389 * .389 + .028 * .028 * .028 / 12);
        double f = inertia / (1 - SANDWICH_FACE[2] * SANDWICH_FACE[2] * SANDWICH_FACE[1] / SANDWICH_FACE[0]);
        double d11 = f * SANDWICH_FACE[0];
        double d22 = f * SANDWICH_FACE[1];
        double d12 = SANDWICH_FACE[2] * d22;
        double d66 = inertia * SANDWICH_FACE[3];
        double xz = 30e3 * .778 * .778 / .75;
        double yz = 12e3 * .778 * .778 / .75;
        double[] sum = new double[4];
        for (int m = 1; m < 400; m += 2) {
            for (int n = 1; n < 400; n += 2) {
                double p = Math.PI * m / 10;
                double q = Math.PI * n / 10;
                double load = 1600 / (Math.PI * Math.PI * m * n);
                // Rotations X, Y of one term, both as multiples of w, from the two moment equations.
                double a = d11 * p * p + d66 * q * q + xz;
                double b = (d12 + d66) * p * q;
                double d = d66 * p * p + d22 * q * q + yz;
                double det = a * d - b * b;
                double x = (-xz * p * d + yz * q * b) / det;
                double y = (-yz * q * a + xz * p * b) / det;
                double w = load / (xz * p * (p + x) + yz * q * (q + y));
                double[] stress = face(-p * x * w, -q * y * w, q * x * w + p * y * w);
                double middle = (m + n) / 2 % 2 == 1 ? 1 : -1;
                double quarter = Math.cos(p * 2.5) * Math.cos(q * 2.5);
                sum[0] += w * middle;
                sum[1] += stress[0] * middle;
                sum[2] += stress[1] * middle;
                sum[3] += stress[2] * quarter;
            }
        }
        return abs(sum);
    }

    /** Stress outside of the face by curvatures. */
    private static double[] face(double kx, double ky, double kxy) {
        double e1 = SANDWICH_FACE[0];
        double e2 = SANDWICH_FACE[1];
        double nu = SANDWICH_FACE[2];
        double f = .403 / (1 - nu * nu * e2 / e1);
        return new double[] {f * (e1 * kx + nu * e2 * ky), f * (nu * e2 * kx + e2 * ky), .403 * SANDWICH_FACE[3] * kxy};
    }

    private static double[] abs(double[] v) {
        return Arrays.stream(v).map(Math::abs).toArray();
    }

    private static double[] sandwich(Kind kind, int n) {
        double[] c = CompositeStrip.sandwichPlate();
        ShellModel m = new ShellModel(c);
        ObstacleCourse.grid(m, kind, n, n, (a, b) -> new double[] {10 * a, 10 * b, 0});
        for (int i = 0; i < m.nodes.size(); i++) {
            double[] x = m.nodes.get(i);
            m.hold(i, 5);
            if (near(x[0], 0) || near(x[0], 10)) {
                m.hold(i, 1, 2, 3);
            }
            if (near(x[1], 0) || near(x[1], 10)) {
                m.hold(i, 0, 2, 4);
            }
        }
        m.pressure(100);
        m.solve();
        double[] centre = face(m, c, n, n / 2);
        return abs(new double[] {m.at(n / 2 * (n + 2), 2), centre[0], centre[1], face(m, c, n, n / 4)[2]});
    }

    /** Stress outside of the face at the node (k, k) of n × n cells, by the mean moments of the four cells round it. */
    private static double[] face(ShellModel m, double[] c, int n, int k) {
        double[] moment = new double[3];
        for (int cell = 0; cell < 4; cell++) {
            double[] r = NafemsTest.resultants(m, 0, n, k - cell % 2, k - cell / 2);
            for (int i = 0; i < 3; i++) {
                moment[i] += r[3 + i] / 4;
            }
        }
        double det = c[27] * c[36] - c[28] * c[28];
        return face(
                (c[36] * moment[0] - c[28] * moment[1]) / det,
                (c[27] * moment[1] - c[28] * moment[0]) / det,
                moment[2] / c[45]);
    }
}
