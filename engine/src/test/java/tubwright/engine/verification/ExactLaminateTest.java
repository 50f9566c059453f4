// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.Reference;
import tubwright.engine.laminate.TransverseShear;
import tubwright.engine.material.Ply;
import tubwright.engine.verification.PaganoPlate.Layer3;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Simply supported laminates under a sine of pressure: the three-dimensional solution against its printed tables, then
 * first-order theory with the shear stiffness of the stack's own energy, by series and by shells, against it. E_L = 25,
 * E_T = 1, G_LT = .5, G_TT = .2, ν = .25; sandwich core Ex = Ey = .04, Ez = .5, Gxz = Gyz = .06, Gxy = .016.
 */
class ExactLaminateTest {
    private static final Ladder TABLE = Ladder.of(
            Family.EXACT_LAMINATES, "Pagano 1970; Pagano and Hatfield 1972, AIAA J. 10:931", Mark.MEMORY_CONFIRMED);
    private static final Ladder ELASTICITY =
            Ladder.of(Family.EXACT_LAMINATES, "Theory of elasticity, state-space solution in the test", Mark.EXACT);

    private enum Stack {
        FOUR("[0/90/90/0]"),
        THREE("[0/90/0]"),
        LONG("[0/90/0], b = 3a"),
        SANDWICH("sandwich .1/.8/.1");

        final String title;

        Stack(String title) {
            this.title = title;
        }

        double[] thickness() {
            return switch (this) {
                case FOUR -> new double[] {.25, .25, .25, .25};
                case THREE, LONG -> new double[] {1 / 3., 1 / 3., 1 / 3.};
                case SANDWICH -> new double[] {.1, .8, .1};
            };
        }

        double[] degrees() {
            return switch (this) {
                case FOUR -> new double[] {0, 90, 90, 0};
                case THREE, LONG -> new double[] {0, 90, 0};
                case SANDWICH -> new double[3];
            };
        }

        double width(double a) {
            return this == LONG ? 3 * a : a;
        }

        PaganoPlate exact(double a) {
            List<Layer3> layers = new ArrayList<>();
            for (int k = 0; k < thickness().length; k++) {
                layers.add(
                        this == SANDWICH && k == 1
                                ? new Layer3(.8, .04, .04, .5, .25, .02, .02, .016, .06, .06)
                                : Layer3.ply(thickness()[k], degrees()[k], 25, 1, .5, .2, .25));
            }
            return new PaganoPlate(layers, a, width(a));
        }

        /** Ours, unit moduli in Pa. */
        Laminate laminate() {
            List<Layer> layers = new ArrayList<>();
            for (int k = 0; k < thickness().length; k++) {
                Ply ply = this == SANDWICH && k == 1
                        ? Stacks.ply(.04, .04, .25, .016, .06, .06)
                        : Stacks.ply(25, 1, .25, .5, .5, .2);
                layers.add(new Layer(ply, thickness()[k], Math.toRadians(degrees()[k])));
            }
            return new Laminate(layers, Reference.MIDDLE);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "FOUR, 4, 1.9367, .7203, .2193, .2915, .0467",
        "FOUR, 10, .7370, .5586, .3014, .1959, .0275",
        "FOUR, 20, .5130, .5428, .3282, .1556, .0230",
        "FOUR, 100, .4346, .5388, .3388, .1389, .0214",
        "THREE, 4, 2.0059, .8008, .2559, .2172, .0511",
        "THREE, 10, .7530, .5906, .3573, .1228, .0288",
        "THREE, 100, .4347, .5393, .3947, .0828, .0214",
        "LONG, 4, 2.8211, 1.1443, .3511, .0334, .0269",
        "LONG, 10, .9189, .7260, .4201, .0152, .0120",
        "LONG, 100, .5077, .6244, .4393, .0108, .0083",
        "SANDWICH, 4, 7.5962, 1.5558, .2387, .1072, .1437",
        "SANDWICH, 10, 2.2004, 1.1531, .2998, .0527, .0707",
        "SANDWICH, 100, .8924, 1.0975, .3240, .0297, .0437"
    })
    void theExactSolutionGivesThePrintedTables(
            Stack stack, double s, double w, double sx, double txz, double tyz, double txy) {
        PaganoPlate p = stack.exact(s);
        int top = stack.thickness().length - 1;
        String name = stack.title + ", a/h = " + (int) s + ", ";
        TABLE.equal(name + "w exact, table", w, 100 * p.deflection(.5) / Math.pow(s, 4), 6e-5);
        TABLE.equal(name + "σx exact, table", sx, p.sigmaX(1, top) / (s * s), 6e-5);
        TABLE.equal(name + "τxz exact, table", txz, Math.abs(p.tauXz(.5)) / s, 6e-5);
        TABLE.equal(name + "τyz exact, table", tyz, Math.abs(p.tauYz(.5)) / s, 6e-5);
        TABLE.equal(name + "τxy exact, table", txy, Math.abs(p.tauXy(1, top)) / (s * s), 6e-5);
    }

    /**
     * First-order theory against elasticity. What the outermost stress misses, about 14 % at a/h = 10 and 4 % at 20, is
     * the theory's own: plane sections. The shear recovered at the middle is within 3 % from 20 on; the last 0.8 % of it
     * is that each shear force is given the distribution it has in cylindrical bending.
     */
    @ParameterizedTest
    @CsvSource({
        "FOUR, 4, .08, 1, 1",
        "FOUR, 10, .011, .14, .15",
        "FOUR, 20, .002, .04, .03",
        "FOUR, 100, .0005, .002, .01",
        "THREE, 10, .03, .16, .15",
        "THREE, 20, .01, .045, .03",
        "THREE, 100, .0005, .002, .01",
        "LONG, 20, .02, .05, .03",
        "LONG, 100, .001, .002, .01",
        "SANDWICH, 10, .02, .15, .06",
        "SANDWICH, 20, .01, .04, .03",
        "SANDWICH, 100, .001, .002, .01"
    })
    void firstOrderTheoryWithEnergyShear(Stack stack, double s, double ofW, double ofStress, double ofShear) {
        PaganoPlate exact = stack.exact(s);
        Laminate laminate = stack.laminate();
        double[] c = laminate.stiffness().matrix();
        double p = Math.PI / s;
        double q = Math.PI / stack.width(s);
        double sx = c[54];
        double sy = c[63];
        double a11 = c[27] * p * p + c[45] * q * q + sx;
        double a12 = (c[28] + c[45]) * p * q;
        double a22 = c[45] * p * p + c[36] * q * q + sy;
        double det = a11 * a22 - a12 * a12;
        // Rotations for a unit deflection.
        double x = -(a22 * sx * p - a12 * sy * q) / det;
        double y = -(a11 * sy * q - a12 * sx * p) / det;
        double load = sx * p * p + sy * q * q + sx * p * x + sy * q * y;
        double w = 1 / load;
        String name = stack.title + ", a/h = " + (int) s + ", ";
        ELASTICITY.within(ofW, name + "w by first-order theory", "series", exact.deflection(.5), w);
        int n = 16;
        StabilityModel m = Plates.flat(ObstacleCourse.Kind.QUADS, c, s, stack.width(s), n, n);
        Plates.cross(m, s, stack.width(s));
        sinusoidal(m, s, stack.width(s));
        double meshed = m.solve().at(n / 2 * (n + 2), 2);
        ELASTICITY.within(.006 + ofW, name + "w by shells", "16 × 16 quads", exact.deflection(.5), meshed);
        if (s < 10) {
            return;
        }
        double qx = sx * (x + p) * w;
        double qy = sy * (y + q) * w;
        double[] tau = TransverseShear.of(laminate).stressAtDepth(.5, qx, qy);
        ELASTICITY.within(
                ofShear,
                name + "τxz recovered from equilibrium",
                "series",
                Math.abs(exact.tauXz(.5)),
                Math.abs(tau[0]));
        // σx at the top: the outer ply lies along x.
        double d = 1 - .25 * .25 / 25;
        double sigma = .5 * (25 * p * x + .25 * q * y) * w / d;
        int top = stack.thickness().length - 1;
        ELASTICITY.within(
                ofStress, name + "σx by first-order theory", "series", Math.abs(exact.sigmaX(1, top)), Math.abs(sigma));
    }

    /** Consistent loads of sin sin by the sine of each node times its share. */
    private static void sinusoidal(ShellModel m, double a, double b) {
        int n = (int) Math.round(Math.sqrt(m.nodes.size())) - 1;
        double hx = a / n;
        double hy = b / n;
        // Integral of the hat function times the sine: the same factor at every inner node.
        double fx = 2 * (1 - Math.cos(Math.PI / n)) / Math.pow(Math.PI / n, 2);
        for (int i = 0; i < m.nodes.size(); i++) {
            double[] x = m.nodes.get(i);
            m.load(i, 2, fx * fx * hx * hy * Math.sin(Math.PI * x[0] / a) * Math.sin(Math.PI * x[1] / b));
        }
    }
}
