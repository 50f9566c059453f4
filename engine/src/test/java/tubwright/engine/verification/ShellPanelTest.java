// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Cross-ply laminated shell panels on diaphragms under uniform pressure, square in plan: first-order theory after Sanders
 * by Navier's series (Reddy 1984, J. Eng. Mech. 110:794; spherical R/a = 5 from memory, all computed for the reference
 * sheet). E1/E2 = 25, G12 = G13 = 0.5, G23 = 0.2, ν = .25, a/h = 100.
 */
class ShellPanelTest {
    @ParameterizedTest
    @CsvSource({"0/90, 5, 1.7535", "0/90, 10, 5.5428", "0/90/0, 5, 1.5118", "0/90/0, 10, 3.6445"})
    void sphericalPanelsCarryTheirPressureInTheirSurface(String code, double radius, double table) {
        double[] angles = code.equals("0/90") ? new double[] {0, 90} : new double[] {0, 90, 0};
        double h = 0.01;
        double[] c = Laminates.stack(25, 1, 0.25, 0.5, 0.2, h / angles.length, 0, angles);
        int n = 16;
        StabilityModel m = new StabilityModel(c);
        // Shallow: arcs of length one through the crown in both directions.
        double half = 0.5 / radius;
        m.normal = x -> Vectors.unit(x[0], x[1], x[2] + radius);
        ObstacleCourse.grid(m, ObstacleCourse.Kind.QUADS, n, n, (a, b) -> {
            double tx = Math.tan(half * (2 * a - 1));
            double ty = Math.tan(half * (2 * b - 1));
            double[] u = Vectors.unit(tx, ty, 1);
            return new double[] {radius * u[0], radius * u[1], radius * (u[2] - 1)};
        });
        for (int k = 0; k <= n; k++) {
            for (int end : new int[] {k * (n + 1), k * (n + 1) + n}) {
                m.hold(end, 1, 2, 3);
            }
            for (int end : new int[] {k, n * (n + 1) + k}) {
                m.hold(end, 0, 2, 4);
            }
        }
        m.pressure(1);
        double w = m.solve().at(n / 2 * (n + 2), 2);
        assertEquals(1, 1000 * w * Math.pow(h, 3) / table, 2e-2);
    }
}
