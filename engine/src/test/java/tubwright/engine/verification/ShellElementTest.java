// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tubwright.engine.structure.ShellQuad;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** What every single shell element must do, whatever its shape and laminate. */
class ShellElementTest {
    private static final Ladder LADDER =
            Ladder.of(Family.ELEMENT, "Mechanics of rigid bodies, change of axes", Mark.EXACT);

    private static final double[] CARBON = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 4e9, .0005, .0007, 0, 30, -45);

    /** One warped, distorted, curved element with a laminate off its reference surface. */
    private static ShellModel warped(int corners) {
        ShellModel m = new ShellModel(CARBON);
        m.normal = x -> Vectors.unit(.4 * x[0] - .2, .3 * x[1] + .1, 1);
        m.reference = x -> new double[] {1, .3, 0};
        m.node(0, 0, .002);
        m.node(.06, .004, -.003);
        m.node(.055, .05, .004);
        m.node(-.006, .04, 0);
        m.element(corners == 4 ? new int[] {0, 1, 2, 3} : new int[] {0, 1, 2});
        return m;
    }

    private static ShellModel square(int corners, double size, double[] laminate) {
        ShellModel m = new ShellModel(laminate);
        m.node(0, 0, 0);
        m.node(size, 0, 0);
        m.node(size, size, 0);
        m.node(0, size, 0);
        m.element(corners == 4 ? new int[] {0, 1, 2, 3} : new int[] {0, 1, 2});
        return m;
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void sixRigidMotionsAndNoOtherCostNothing(int corners) {
        for (ShellModel m : new ShellModel[] {warped(corners), square(corners, .05, CARBON)}) {
            double[] e = Eigenvalues.of(m.stiffness(0), 6 * corners);
            double max = e[e.length - 1];
            String shape = m.nodes.size() == 4 && m.nodes.get(0)[2] == 0 ? "square" : "warped, off its middle";
            double least = 0;
            for (int i = 0; i < 6; i++) {
                least = Math.max(least, Math.abs(e[i]) / max);
            }
            LADDER.vanishes("Six rigid motions, stiffness", shape + ", " + corners + " corners", least, 1e-10);
            assertTrue(e[6] > 1e-8 * max, "a seventh motion costs nothing: " + e[6] / max);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void energyIsTheSameInEveryFrameAndNumbering(int corners) {
        Random random = new Random(7);
        double[] u = random.doubles(6 * corners).toArray();
        ShellModel m = warped(corners);
        double expected = energy(m.stiffness(0), u);
        double[] axis = Vectors.unit(.3, -.5, .8);
        ShellModel turned = new ShellModel(CARBON);
        turned.reference = x -> turn(axis, 1.1, new double[] {1, .3, 0});
        turned.normal = x -> turn(axis, 1.1, m.normal.apply(turn(axis, -1.1, x)));
        for (double[] x : m.nodes) {
            turned.nodes.add(turn(axis, 1.1, x));
        }
        turned.element(corners == 4 ? new int[] {2, 3, 0, 1} : new int[] {2, 0, 1});
        double[] v = new double[u.length];
        for (int i = 0; i < corners; i++) {
            int from = turned.elements.getFirst()[i];
            for (int k = 0; k < 2; k++) {
                double[] part = {u[6 * from + 3 * k], u[6 * from + 3 * k + 1], u[6 * from + 3 * k + 2]};
                System.arraycopy(turn(axis, 1.1, part), 0, v, 6 * i + 3 * k, 3);
            }
        }
        LADDER.vanishes(
                "Energy turned in space and renumbered, change",
                corners + " corners",
                energy(turned.stiffness(0), v) / expected - 1,
                1e-11);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void stiffnessIsLinearInTheLaminate(int corners) {
        ShellModel m = warped(corners);
        double[] other = Laminates.stack(70e9, 70e9, .05, 5e9, 4e9, .001, 0, 45, 0);
        double[] mixed = new double[64];
        for (int i = 0; i < 64; i++) {
            mixed[i] = 2 * CARBON[i] + 3 * other[i];
        }
        double[] a = m.stiffness(0);
        m.laminate = other;
        double[] b = m.stiffness(0);
        m.laminate = mixed;
        double[] sum = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            sum[i] = 2 * a[i] + 3 * b[i];
        }
        assertArrayEquals(sum, m.stiffness(0), 1e-12 * a[0]);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void energyIsTheSumOverStrainPoints(int corners) {
        ShellModel m = warped(corners);
        double[] u = new Random(11).doubles(6 * corners).toArray();
        ShellWorkspace w = new ShellWorkspace();
        m.strainPoints(0, w);
        double[] e = new double[9];
        double twice = 0;
        for (int p = 0; p < w.points(); p++) {
            w.strainAt(p, u, e);
            for (int i = 0; i < 8; i++) {
                for (int j = 0; j < 8; j++) {
                    twice += w.weight(p) * e[i] * CARBON[8 * i + j] * e[j];
                }
            }
            twice += w.weight(p) * tubwright.engine.structure.ShellIntegral.drilling(CARBON) * e[8] * e[8];
        }
        assertEquals(energy(m.stiffness(0), u), twice, 1e-12 * twice, "seed 11");
    }

    @Test
    void aReferenceDirectionNormalToTheShellIsRefused() {
        ShellModel m = square(4, 1, CARBON);
        m.reference = x -> new double[] {0, 0, 1};
        Exception e = assertThrows(IllegalArgumentException.class, () -> m.stiffness(0));
        assertTrue(e.getMessage().contains("reference direction"));
    }

    @Test
    void anElementWithoutAreaIsRefused() {
        ShellWorkspace w = new ShellWorkspace();
        double[] up = {0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 0, 1};
        assertThrows(
                IllegalArgumentException.class,
                () -> ShellQuad.strainPoints(new double[12], up, new double[] {1, 0, 0}, CARBON, w));
    }

    private static double energy(double[] k, double[] u) {
        double sum = 0;
        for (int i = 0; i < u.length; i++) {
            for (int j = 0; j < u.length; j++) {
                sum += u[i] * k[i * u.length + j] * u[j];
            }
        }
        return sum;
    }

    /** Rodrigues rotation about a unit axis. */
    static double[] turn(double[] k, double angle, double[] v) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double[] x = Vectors.cross(k, v);
        double d = Vectors.dot(k, v) * (1 - c);
        return new double[] {
            v[0] * c + x[0] * s + k[0] * d, v[1] * c + x[1] * s + k[1] * d, v[2] * c + x[2] * s + k[2] * d
        };
    }
}
