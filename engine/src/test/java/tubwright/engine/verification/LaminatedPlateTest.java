// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.verification.ObstacleCourse.Kind;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Square laminated plates under uniform pressure, centre deflection 100 w E2 h³/(q a⁴), against Navier's series of
 * first-order theory (Reddy, Mechanics of Laminated Composite Plates and Shells; digits recomputed here).
 * E1/E2 = 25, G12 = G13 = 0.5 E2, G23 = 0.2 E2, ν12 = 0.25, shear factor 5/6.
 */
class LaminatedPlateTest {
    private static final Ladder LADDER = Ladder.of(
            Family.LAMINATED_PLATES,
            "Navier; Reddy, Mechanics of Laminated Composite Plates and Shells",
            Mark.MEMORY_CONFIRMED);

    @ParameterizedTest
    @CsvSource({
        "0/90, 10, 1.9469",
        "0/90, 100, 1.6980",
        "0/90/0, 10, 1.0219",
        "0/90/0, 100, 0.6697",
        "0/90/90/0, 10, 1.0250",
        "0/90/90/0, 100, 0.6833",
        "45/-45, 10, 1.2792",
        "45/-45, 100, 1.0305"
    })
    void bendsAsNavierSays(String angles, double slenderness, double expected) {
        double coarse = deflection(Kind.QUADS, angles, slenderness, 8);
        double fine = deflection(Kind.QUADS, angles, slenderness, 16);
        String name = "[" + angles + "], a/h = " + slenderness + ", deflection under pressure";
        LADDER.within(.004, name, "16 × 16 quads", expected, fine);
        // Error falls with the square of the size: extrapolation leaves next to none.
        LADDER.within(.0005, name, "quads, carried to size zero", expected, (4 * fine - coarse) / 3);
        LADDER.within(
                .02, name, "16 × 16 pairs of triangles", expected, deflection(Kind.TRIANGLES, angles, slenderness, 16));
    }

    private static double deflection(Kind kind, String angles, double slenderness, int n) {
        double[] plies = java.util.Arrays.stream(angles.split("/"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double h = 1 / slenderness;
        ShellModel m = new ShellModel(Laminates.stack(25, 1, .25, .5, .2, h / plies.length, 0, plies));
        ObstacleCourse.grid(m, kind, n, n, (a, b) -> new double[] {a, b, 0});
        boolean angled = plies[0] == 45;
        for (int i = 0; i < m.nodes.size(); i++) {
            double[] x = m.nodes.get(i);
            if (ObstacleCourse.near(x[0], 0) || ObstacleCourse.near(x[0], 1)) {
                // Cross-ply: v = w = 0 and no bending along the edge; angle-ply: u = w = 0.
                m.hold(i, angled ? 0 : 1, 2, 3);
            }
            if (ObstacleCourse.near(x[1], 0) || ObstacleCourse.near(x[1], 1)) {
                m.hold(i, angled ? 1 : 0, 2, 4);
            }
        }
        m.pressure(1);
        return 100 * h * h * h * m.solve().at((n / 2) * (n + 1) + n / 2, 2);
    }
}
