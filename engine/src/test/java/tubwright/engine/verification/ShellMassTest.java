// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.engine.structure.ShellQuad;
import tubwright.engine.structure.ShellTriangle;

/** Mass, weight and pressure of single elements against rigid-body mechanics. */
class ShellMassTest {
    private static final double[] CORNERS = {0, 0, 0, 2, 0, 0, 2, 1, 0, 0, 1, 0};
    private static final double[] UP = {0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1};
    private static final double I0 = 3;
    private static final double I1 = .4;
    private static final double I2 = .2;

    private static double[] mass(int corners) {
        double[] m = new double[36 * corners * corners];
        double[] x = java.util.Arrays.copyOf(CORNERS, 3 * corners);
        double[] d = java.util.Arrays.copyOf(UP, 3 * corners);
        if (corners == 4) {
            ShellQuad.mass(x, d, I0, I1, I2, m);
        } else {
            ShellTriangle.mass(x, d, I0, I1, I2, m);
        }
        return m;
    }

    private static double twiceEnergy(double[] m, double[] v) {
        double sum = 0;
        for (int i = 0; i < v.length; i++) {
            for (int j = 0; j < v.length; j++) {
                sum += v[i] * m[i * v.length + j] * v[j];
            }
        }
        return sum;
    }

    /** Rigid motion: velocity at the origin and spin. */
    private static double[] rigid(int corners, double[] v, double[] spin) {
        double[] u = new double[6 * corners];
        for (int i = 0; i < corners; i++) {
            double[] x = {CORNERS[3 * i], CORNERS[3 * i + 1], CORNERS[3 * i + 2]};
            double[] w = Vectors.cross(spin, x);
            for (int c = 0; c < 3; c++) {
                u[6 * i + c] = v[c] + w[c];
                u[6 * i + 3 + c] = spin[c];
            }
        }
        return u;
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void aMovingElementHasTheEnergyOfItsMass(int corners) {
        double area = corners == 4 ? 2 : 1;
        double e = twiceEnergy(mass(corners), rigid(corners, new double[] {1, 2, -2}, new double[3]));
        assertEquals(9 * I0 * area, e, 1e-12);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void aTumblingElementHasTheEnergyOfItsInertia(int corners) {
        // Spin about x with the mass centred I1/I0 above the surface: ∫ρ(y² + z²) = I0 ∫y² + I2 A.
        double area = corners == 4 ? 2 : 1;
        double second = corners == 4 ? 2.0 / 3 : 2 * (1.0 / 3 - 1.0 / 4);
        double e = twiceEnergy(mass(corners), rigid(corners, new double[3], new double[] {1, 0, 0}));
        assertEquals(I0 * second + I2 * area, e, 1e-12);
        // Moving along y while spinning about x: the offset mass adds −2 v ω I1 A.
        double both = twiceEnergy(mass(corners), rigid(corners, new double[] {0, 1, 0}, new double[] {1, 0, 0}));
        assertEquals(e + I0 * area - 2 * I1 * area, both, 1e-12);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void turningAboutTheNormalCarriesNoRotaryInertia(int corners) {
        double[] v = new double[6 * corners];
        for (int i = 0; i < corners; i++) {
            v[6 * i + 5] = 1;
        }
        assertEquals(0, twiceEnergy(mass(corners), v), 1e-15);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void loadsHaveTheRightResultants(int corners) {
        double area = corners == 4 ? 2 : 1;
        double[] x = java.util.Arrays.copyOf(CORNERS, 3 * corners);
        double[] d = java.util.Arrays.copyOf(UP, 3 * corners);
        double[] pressed = new double[6 * corners];
        double[] pulled = new double[6 * corners];
        double[] sideways = {1, 0, 0};
        if (corners == 4) {
            ShellQuad.pressure(x, 7, pressed);
            ShellQuad.weight(x, d, I0, I1, sideways, pulled);
        } else {
            ShellTriangle.pressure(x, 7, pressed);
            ShellTriangle.weight(x, d, I0, I1, sideways, pulled);
        }
        double force = 0;
        double pull = 0;
        double moment = 0;
        for (int i = 0; i < corners; i++) {
            force += pressed[6 * i + 2];
            pull += pulled[6 * i];
            moment += pulled[6 * i + 4];
        }
        assertEquals(7 * area, force, 1e-12);
        assertEquals(I0 * area, pull, 1e-12);
        assertEquals(I1 * area, moment, 1e-12);
    }
}
