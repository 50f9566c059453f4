// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.verification.ObstacleCourse.Kind;

/**
 * Errors put in on purpose. Each variant runs through the formula of a named check of the ladder, with the same reference
 * and tolerance: the right one passes, the wrong one must fail.
 */
class WrongVariantsTest {
    /** The right value is within the tolerance of the reference and the wrong one is not. */
    private static void caught(String check, double reference, double tolerance, double right, double wrong) {
        assertTrue(Math.abs(right - reference) <= tolerance, () -> check + ": the right variant fails with " + right);
        assertTrue(Math.abs(wrong - reference) > tolerance, () -> check + " does not notice: " + wrong);
    }

    /** TransverseShearStiffnessTest: shear factor of [0/90/90/0] is .5952 (Whitney 1973), not 5/6. */
    @Test
    void aFixedShearFactorIsNoticed() {
        Laminate laminate = Stacks.crossPly();
        double sum = .5 * .5 + .5 * .2;
        double right = laminate.stiffness().shear()[0] / sum / .04;
        caught("[0/90/90/0], factor Kx", .5952, 5e-5, right, 5.0 / 6);
        // ExactLaminateTest: the deflection of a sandwich at a/h = 10.
        caught("sandwich, w", 2.2004, .02 * 2.2004, sandwichDeflection(false), sandwichDeflection(true));
    }

    private static double sandwichDeflection(boolean fixed) {
        double[] c = Stacks.sandwich().stiffness().matrix();
        if (fixed) {
            c[54] = 5.0 / 6 * (.2 * .5 + .8 * .06);
            c[63] = 5.0 / 6 * (.2 * .2 + .8 * .06);
        }
        return 100 / new Navier(c, 10, 10, false).condensed(1, 1) / 1e4;
    }

    /** MacNealHarderTest: the straight cantilever bent in its plane, 6 × 1 rectangles. */
    @Test
    void aPlainBilinearMembraneIsNoticed() {
        double right = ObstacleCourse.straightCantilever(Kind.QUADS, 0, 1);
        caught("Straight cantilever, bent in its plane", .1081, .02 * .1081, right, bilinearCantilever());
    }

    /** Plane-stress bilinear quads with full integration, 6 × 1, written out here. */
    private static double bilinearCantilever() {
        int n = 14;
        double[][] k = new double[2 * n][2 * n + 1];
        double e = 1e7 / .91 * .1;
        double[][] c = {{e, .3 * e, 0}, {.3 * e, e, 0}, {0, 0, .35 * e}};
        double g = 1 / Math.sqrt(3);
        for (int cell = 0; cell < 6; cell++) {
            int[] q = {cell, cell + 1, cell + 8, cell + 7};
            for (int p = 0; p < 4; p++) {
                double r = p == 0 || p == 3 ? -g : g;
                double s = p < 2 ? -g : g;
                double[] dx = {-(1 - s) / 2, (1 - s) / 2, (1 + s) / 2, -(1 + s) / 2};
                double[] dy = {-(1 - r) / .4, -(1 + r) / .4, (1 + r) / .4, (1 - r) / .4};
                double[][] b = new double[3][8];
                for (int i = 0; i < 4; i++) {
                    b[0][2 * i] = dx[i];
                    b[1][2 * i + 1] = dy[i];
                    b[2][2 * i] = dy[i];
                    b[2][2 * i + 1] = dx[i];
                }
                for (int i = 0; i < 8; i++) {
                    for (int j = 0; j < 8; j++) {
                        for (int a = 0; a < 3; a++) {
                            for (int d = 0; d < 3; d++) {
                                k[2 * q[i / 2] + i % 2][2 * q[j / 2] + j % 2] += b[a][i] * c[a][d] * b[d][j] * .05;
                            }
                        }
                    }
                }
            }
        }
        k[13][2 * n] = .5;
        k[27][2 * n] = .5;
        for (int held : new int[] {0, 1, 14, 15}) {
            k[held] = new double[2 * n + 1];
            k[held][held] = 1;
        }
        for (int p = 0; p < 2 * n; p++) {
            for (int row = 0; row < 2 * n; row++) {
                double f = row == p ? 0 : k[row][p] / k[p][p];
                for (int j = 2 * n; j >= p && f != 0; j--) {
                    k[row][j] -= f * k[p][j];
                }
            }
        }
        return (k[13][2 * n] / k[13][13] + k[27][2 * n] / k[27][27]) / 2;
    }

    /** SandwichShearTest: the ribbon is the stiff way. */
    @Test
    void aRibbonTurnedTheWrongWayIsNoticed() {
        Core core = MaterialLibrary.shipped().get("al-honeycomb-3.1", Core.class);
        Material skin = MaterialLibrary.shipped().get("pw-t650-976");
        double reference = core.elasticity().g13() / core.elasticity().g23();
        caught("ribbon direction", reference, .01, ratio(skin, core, 0), ratio(skin, core, Math.PI / 2));
    }

    private static double ratio(Material skin, Core core, double ribbon) {
        Layer face = Layer.ofDegrees(skin, 0);
        double[] s = new Laminate(java.util.List.of(face, new Layer(core, .02, ribbon), face), Reference.MIDDLE)
                .stiffness()
                .shear();
        return s[0] / s[3];
    }

    /** ApparentModuliTest: Q̄66 of T300/5208 at 30° is 36.74 GPa with engineering shear. */
    @Test
    void tensorShearTakenForEngineeringShearIsNoticed() {
        double[] right = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 5e9, 1, 0, 30);
        double[] wrong = transformed(30, false);
        double[] same = transformed(30, true);
        caught("30° ply, Q̄66", 36.74e9, .005e9, right[18], wrong[2]);
        caught("30° ply, Q̄16", 54.19e9, .005e9, right[2], wrong[1]);
        assertTrue(Math.abs(same[2] / right[18] - 1) < 1e-12, "with engineering shear the formula is the same");
    }

    /** Q̄11, Q̄16, Q̄66 by T⁻¹ Q T with the shear row of T for engineering strain, or mistakenly for tensor strain. */
    private static double[] transformed(double degrees, boolean engineering) {
        double m = Math.cos(Math.toRadians(degrees));
        double n = Math.sin(Math.toRadians(degrees));
        double two = engineering ? 2 : 1;
        double half = engineering ? 1 : 2;
        double[][] t = {
            {m * m, n * n, half * m * n}, {n * n, m * m, -half * m * n}, {-two * m * n, two * m * n, m * m - n * n}
        };
        double d = 1 - .28 * .28 * 10.3 / 181;
        double[][] q = {{181e9 / d, .28 * 10.3e9 / d, 0}, {.28 * 10.3e9 / d, 10.3e9 / d, 0}, {0, 0, 7.17e9}};
        double[][] r = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                for (int a = 0; a < 3; a++) {
                    for (int b = 0; b < 3; b++) {
                        r[i][j] += t[a][i] * q[a][b] * t[b][j];
                    }
                }
            }
        }
        return new double[] {r[0][0], r[0][2], r[2][2]};
    }

    /** KawLaminateStiffnessTest: B11 of [0/30/−45] is −3.129e6 Pa·m² with the first ply inside. */
    @Test
    void aCouplingOfTheWrongSignIsNoticed() {
        double[] c = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 5e9, 5e-3, 0, 0, 30, -45);
        caught("[0/30/−45], B11", -3.129e6, .5e3, c[3], -c[3]);
        // And on a plate: an upside-down ply order moves the strip under one-sided heat the other way.
        double right = stretchedStrip(1);
        double wrong = stretchedStrip(-1);
        assertTrue(
                right * wrong < 0 && Math.abs(right) > 1e-6, "the strip bends the other way: " + right + ", " + wrong);
    }

    /** Tip movement out of its plane of an unsymmetric strip that is pulled. */
    private static double stretchedStrip(double sign) {
        double[] c = Laminates.stack(181e9, 10.3e9, .28, 7.17e9, 5e9, 1e-3, 0, 0, 90);
        for (int i = 0; i < 3; i++) {
            for (int j = 3; j < 6; j++) {
                c[8 * i + j] *= sign;
                c[8 * j + i] *= sign;
            }
        }
        ShellModel m = new ShellModel(c);
        ObstacleCourse.grid(m, Kind.QUADS, 4, 1, (a, b) -> new double[] {a, .2 * b, 0});
        for (int j = 0; j < 2; j++) {
            m.hold(5 * j, 0, 1, 2, 3, 4, 5);
            m.load(5 * j + 4, 0, 500);
        }
        return m.solve().at(4, 2);
    }
}
