// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** Metres or millimetres: a shell with coupling, curvature and warped elements answers the same. */
class UnitsTest {
    private static final Ladder LADDER = Ladder.of(Family.SOLVER, "Dimensions of the quantities", Mark.EXACT);

    @ParameterizedTest
    @EnumSource
    void lengthsInMillimetresChangeNothing(Kind kind) {
        double metres = tip(kind, 1);
        double millimetres = tip(kind, 1e3) / 1e3;
        LADDER.vanishes(
                "Saddle in m and in mm, change", ObstacleCourseTest.label(kind) + " 8", millimetres / metres - 1, 1e-8);
    }

    /** Tip of a clamped saddle; unit: how many length units make a metre. Forces in N. */
    private static double tip(Kind kind, double unit) {
        double pa = 1 / (unit * unit);
        double[] c = Laminates.stack(
                181e9 * pa, 10.3e9 * pa, .28, 7.17e9 * pa, 4e9 * pa, 1e-3 * unit, 1.5e-3 * unit, 0, 30, -45);
        ShellModel m = new ShellModel(c);
        m.normal = x -> Vectors.unit(-2 * x[0] / unit, 2 * x[1] / unit, 1);
        ObstacleCourse.grid(m, kind, 8, 4, (a, b) -> {
            double x = a - .5;
            double y = b / 2;
            return new double[] {x * unit, y * unit, (x * x - y * y) * unit};
        });
        for (int i : m.where(x -> ObstacleCourse.near(x[0] / unit, -.5))) {
            m.hold(i, 0, 1, 2, 3, 4, 5);
        }
        m.load(8, 2, 100);
        return m.solve().at(8, 2);
    }
}
