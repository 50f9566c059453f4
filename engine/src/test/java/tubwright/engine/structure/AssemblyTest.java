// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.numerics.SymmetricMatrix;

/** Mass and geometric stiffness of a whole structure against rigid-body mechanics and statics. */
class AssemblyTest {
    private static final double L = TestStructures.LENGTH;
    private static final double R = TestStructures.RADIUS;
    private static final Structure TUBE = TestStructures.of(TestMeshes.tube(R, L, 12, 24), List.of());

    /** Displacement field of a rotation vector (or, for the last three, translation) of the whole structure. */
    private static double[] rigid(Structure structure, double[] turn, double[] shift) {
        double[] u = new double[structure.unknowns()];
        for (int n = 0; n < structure.nodeCount(); n++) {
            double[] x = java.util.Arrays.copyOfRange(structure.positions(), 3 * n, 3 * n + 3);
            double[] moved = Vectors.plus(shift, 1, Vectors.cross(turn, x));
            System.arraycopy(moved, 0, u, 6 * n, 3);
            System.arraycopy(turn, 0, u, 6 * n + 3, 3);
        }
        return u;
    }

    private static double product(SymmetricMatrix a, double[] x) {
        double[] y = a.multiply(x);
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }

    @Test
    void aMovingTubeHasTheEnergyOfItsMassAndASpinningOneOfItsInertia() {
        SymmetricMatrix m = new Assembly(TUBE).mass();
        // Faces of the 24-sided tube.
        double perimeter = 24 * 2 * R * Math.sin(Math.PI / 24);
        double mass = 2700 * TestStructures.THICKNESS * perimeter * L;
        double[] none = new double[3];
        for (int d = 0; d < 3; d++) {
            double[] shift = new double[3];
            shift[d] = 1;
            assertEquals(1, product(m, rigid(TUBE, none, shift)) / mass, 1e-9);
        }
        double polar = product(m, rigid(TUBE, new double[] {1, 0, 0}, none));
        // The faces lie inside the circle: mean square radius of a polygon's sides.
        double half = Math.PI / 24;
        double square = R * R * (Math.pow(Math.cos(half), 2) + Math.pow(Math.sin(half), 2) / 3);
        assertEquals(1, polar / (mass * square), 1e-4);
    }

    @Test
    void turningAPulledTubeCostsTheTurningOfItsPull() {
        // Prestress u = ax: every element feels N along x. Turning it by θ about y: ½ Σ N θ² A = ½ (N P) L θ².
        Structure s = TUBE;
        double[] u = new double[s.unknowns()];
        for (int n = 0; n < s.nodeCount(); n++) {
            u[6 * n] = 1e-3 * s.positions()[3 * n];
        }
        SymmetricMatrix g = new Assembly(s).geometricStiffness(u);
        double q = TestStructures.YOUNGS / (1 - TestStructures.POISSON * TestStructures.POISSON);
        double nx = q * TestStructures.THICKNESS * 1e-3;
        double nRound = TestStructures.POISSON * nx;
        double perimeter = 24 * 2 * R * Math.sin(Math.PI / 24);
        double turned = product(g, rigid(s, new double[] {0, 1, 0}, new double[3]));
        // Hoop tension is at 45° on average: half of it turns out of its line.
        assertEquals(1, turned / ((nx + nRound / 2) * perimeter * L), 1e-6);
        assertEquals(0, product(g, rigid(s, new double[3], new double[] {1, 2, 3})), 1e-6 * turned);
    }
}
