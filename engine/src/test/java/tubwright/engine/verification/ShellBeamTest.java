// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** An I-section built from shells bends as a Timoshenko beam: walls meeting at right angles share their edge nodes. */
class ShellBeamTest {
    private static final Ladder LADDER = Ladder.of(Family.BEAMS, "PL³/3EI + PL/GA, I-section", Mark.EXACT);

    @ParameterizedTest
    @CsvSource({"QUADS, 1, 0.01", "QUADS, 2, 0.01", "QUADS, 4, 0.01", "TRIANGLES, 4, 0.02"})
    void aCantileverTwentyTimesAsLongAsDeep(Kind kind, int deep, double tolerance) {
        LADDER.within(
                tolerance,
                "Cantilever of an I-section made of shells",
                ObstacleCourseTest.label(kind) + ", " + deep + " over the web",
                exact(),
                deflection(kind, deep));
    }

    private static final double H = .1;
    private static final double B = .06;
    private static final double T = .002;
    private static final double L = 2;
    private static final double E = 70e9;

    /** PL³/3EI + PL/GA_web, flange and web measured at their middles. */
    static double exact() {
        double i = T * H * H * H / 12 + 2 * B * T * H * H / 4 + 2 * B * T * T * T / 12;
        // Shear flow of the I: κ-exact energy of web and flanges, q(s) = V S(s)/I.
        double n = 400;
        double energy = 0;
        for (int k = 0; k < n; k++) {
            double z = H / 2 * (k + .5) / n;
            double s = B * T * H / 2 + T * (H * H / 4 - z * z) / 2;
            energy += 2 * s * s / T * H / 2 / n;
            double y = B / 2 * (k + .5) / n;
            double f = T * H / 2 * y;
            energy += 4 * f * f / T * B / 2 / n;
        }
        double g = E / 2.6;
        return L * L * L / (3 * E * i) + L * energy / (i * i * g);
    }

    static double deflection(Kind kind, int deep) {
        int nx = 20 * deep;
        ShellModel m = new ShellModel(Laminates.isotropic(E, .3, T));
        ObstacleCourse.grid(m, kind, nx, deep, (a, b) -> new double[] {L * a, 0, H * (b - .5)});
        for (int side = -1; side < 2; side += 2) {
            double z = side * H / 2;
            ShellModel flange = new ShellModel(m.laminate);
            ObstacleCourse.grid(flange, kind, nx, 2, (a, b) -> new double[] {L * a, B * (b - .5), z});
            ObstacleCourse.merge(m, flange);
        }
        for (int i : m.where(x -> ObstacleCourse.near(x[0], 0))) {
            m.hold(i, 0, 1, 2, 3, 4, 5);
        }
        int[] web = m.where(x -> ObstacleCourse.near(x[0], L) && ObstacleCourse.near(x[1], 0));
        double sum = 0;
        for (int i : web) {
            boolean end = ObstacleCourse.near(Math.abs(m.nodes.get(i)[2]), H / 2);
            m.load(i, 2, (end ? .5 : 1) / deep);
        }
        m.solve();
        for (int i : web) {
            sum += m.at(i, 2) / web.length;
        }
        return sum;
    }
}
