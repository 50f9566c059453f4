// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import tubwright.engine.make.surface.Bodies;
import tubwright.engine.make.surface.TriangleSurface;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.solver.Solvers;

/** Caps of a unit sphere and bodies that unroll, against closed forms (make-reference §2.1). */
class FlatteningTest {
    private static final Ladder CAP =
            Ladder.of(Family.DRAPE, "cap of a unit sphere: stereographic map, 1/cos²(θ/2)", Mark.EXACT);
    private static final Ladder UNROLLED = Ladder.of(Family.DRAPE, "a cone unrolls without stretch", Mark.EXACT);

    @Test
    void aConeUnrollsWithoutStretch() {
        TriangleSurface cone = Bodies.cone(0.4, 2.5, 30, 0.3, 0.9, 15);
        double[] flat = Flattening.isometric(cone, Solvers.pureJava());
        Distortion d = Distortion.of(cone, flat);
        UNROLLED.vanishes("nearly isometric flat of a cone: longest", "30 × 15 cells", d.longest(), 1e-6);
        UNROLLED.vanishes("nearly isometric flat of a cone: shortest", "30 × 15 cells", d.shortest(), 1e-6);
        assertEquals(0, d.area(), 1e-6);
        // The unrolled sector: radius as far as the apex, its opening the cone's times the sine of its half angle.
        double chord = 2 * 0.9 * Math.sin(2.5 * Math.sin(0.4) / 2);
        int last = cone.pointCount() - 1;
        int first = last - 30;
        assertEquals(
                chord,
                Math.hypot(flat[2 * last] - flat[2 * first], flat[2 * last + 1] - flat[2 * first + 1]),
                1e-3 * chord);
    }

    /** The conformal map of a cap is the stereographic one: lengths at the rim over those at the pole 1/cos²(θ/2). */
    @Test
    void theConformalMapOfACapIsStereographic() {
        for (double[] row : new double[][] {{30, 1.0718}, {45, 1.1716}, {60, 1.3333}}) {
            TriangleSurface cap = cap(Math.toRadians(row[0]));
            double[] flat = Flattening.conformal(cap, Solvers.pureJava());
            double pole = scale(cap, flat, 0);
            double rim = 0;
            for (int k = 1; k <= 2 * ROUND; k++) {
                rim += Math.log(scale(cap, flat, cap.triangles() - k)) / (2 * ROUND);
            }
            double theta = Math.toRadians(row[0]);
            assertEquals(row[1], 1 / square(Math.cos(theta / 2)), 1e-4);
            // The middles of the outermost triangles lie half a ring inside the rim.
            double middle = theta * (1 - 0.5 / RINGS);
            CAP.equal(
                    String.format(Locale.ROOT, "conformal flat of a cap of %.0f°: scale at the rim over pole", row[0]),
                    1 / square(Math.cos(middle / 2)),
                    Math.exp(rim) / pole,
                    0.002);
        }
    }

    /** A long strip that begins bent by 120° lies straight, which turns of one rotation a triangle do but slowly. */
    @Test
    void aBentStripLiesStraight() {
        int length = 100;
        double[] points = new double[6 * (length + 1)];
        double[] bent = new double[4 * (length + 1)];
        int[] corners = new int[6 * length];
        for (int i = 0; i <= length; i++) {
            double along = 0.01 * i;
            double turn = Math.toRadians(120) * i / length;
            double radius = 1 / Math.toRadians(120);
            for (int side = 0; side < 2; side++) {
                int p = 2 * i + side;
                points[3 * p] = along;
                points[3 * p + 1] = 0.02 * side;
                bent[2 * p] = (radius - 0.02 * side) * Math.sin(turn);
                bent[2 * p + 1] = radius - (radius - 0.02 * side) * Math.cos(turn);
            }
            if (i < length) {
                int p = 2 * i;
                System.arraycopy(new int[] {p, p + 2, p + 1, p + 1, p + 2, p + 3}, 0, corners, 6 * i, 6);
            }
        }
        TriangleSurface strip = TriangleSurface.of(points, corners);
        double[] flat = Flattening.isometric(strip, bent, Solvers.pureJava());
        Distortion d = Distortion.of(strip, flat);
        assertTrue(d.longest() < 1e-5 && d.shortest() > -1e-5, d::toString);
        assertEquals(1, Math.hypot(flat[4 * length] - flat[0], flat[4 * length + 1] - flat[1]), 1e-5);
    }

    /** The first derivatives against differences of the energy. */
    @Test
    void theWayDownhillIsThatOfTheEnergy() {
        TriangleSurface cap = cap(Math.toRadians(30));
        double[] weight = new double[cap.corners().length];
        Arrays.fill(weight, 0.5);
        double[] flat = Flattening.conformal(cap, Solvers.pureJava());
        Turned turned = new Turned(cap, weight);
        turned.energy(flat);
        double[] downhill = new double[flat.length];
        int[] start = new int[cap.triangles() + 1];
        Arrays.setAll(start, t -> 3 * t);
        turned.quadratic(
                new SymmetricMatrix(
                        NodeGraph.of(cap.pointCount(), start, cap.corners()).pattern(2)),
                downhill);
        for (int i : new int[] {0, 1, 501, flat.length - 1}) {
            double here = flat[i];
            double step = 1e-6;
            flat[i] = here + step;
            double more = turned.energy(flat);
            flat[i] = here - step;
            double less = turned.energy(flat);
            flat[i] = here;
            assertEquals((less - more) / (2 * step), downhill[i], 1e-7 + 1e-5 * Math.abs(downhill[i]));
        }
    }

    /** No flat of a cap keeps its radius and its rim: the rim of one that keeps the radius is too long by θ/sin θ − 1. */
    @Test
    void aNearlyIsometricCapSharesItsStretchBetweenPoleAndRim() {
        double theta = Math.toRadians(30);
        TriangleSurface cap = cap(theta);
        Distortion d = Distortion.of(cap, Flattening.isometric(cap, Solvers.pureJava()));
        double rimExcess = theta / Math.sin(theta) - 1;
        assertEquals(0.0472, rimExcess, 0.0001);
        assertTrue(d.longest() < rimExcess && d.longest() > 0.2 * rimExcess, d::toString);
        assertEquals(0, d.flipped());
        Distortion conformal = Distortion.of(cap, Flattening.conformal(cap, Solvers.pureJava()));
        assertTrue(d.mean() < 0.8 * conformal.mean(), () -> d + " against " + conformal);
    }

    /** ∬K dA = 2π (1 − cos θ). */
    @Test
    void theCurvatureOfACapIsWhatNoFlatTakesOut() {
        for (double degrees : new double[] {10, 30, 60}) {
            double theta = Math.toRadians(degrees);
            double sum = 0;
            for (double k : cap(theta).curvatures()) {
                sum += k;
            }
            // The rim's own row of points keeps its share: of first order in the mesh.
            assertEquals(2 * Math.PI * (1 - Math.cos(theta * (1 - 0.5 / RINGS))), sum, 0.004 * theta * theta * Math.PI);
        }
    }

    private static double square(double x) {
        return x * x;
    }

    private static final int RINGS = 40;
    private static final int ROUND = 90;

    /** A cap about z in rings, the triangle at the pole first, one at the rim last. */
    private static TriangleSurface cap(double theta) {
        int round = ROUND;
        double[] points = new double[3 * (1 + RINGS * round)];
        points[2] = 1;
        int[] corners = new int[3 * (round + 2 * round * (RINGS - 1))];
        int e = 0;
        for (int r = 1; r <= RINGS; r++) {
            for (int k = 0; k < round; k++) {
                double a = 2 * Math.PI * (k + 0.5 * (r % 2)) / round;
                double t = theta * r / RINGS;
                double[] p = {Math.sin(t) * Math.cos(a), Math.sin(t) * Math.sin(a), Math.cos(t)};
                System.arraycopy(p, 0, points, 3 * at(r, k, round), 3);
            }
        }
        for (int k = 0; k < round; k++) {
            for (int c : new int[] {0, at(1, k, round), at(1, k + 1, round)}) {
                corners[e++] = c;
            }
        }
        for (int r = 1; r < RINGS; r++) {
            for (int k = 0; k < round; k++) {
                int shift = r % 2; // the outer ring is turned by half a step to the other side every time
                int[] two = shift == 0
                        ? new int[] {
                            at(r, k, round),
                            at(r + 1, k, round),
                            at(r, k + 1, round),
                            at(r, k, round),
                            at(r + 1, k - 1, round),
                            at(r + 1, k, round)
                        }
                        : new int[] {
                            at(r, k, round),
                            at(r + 1, k + 1, round),
                            at(r, k + 1, round),
                            at(r, k, round),
                            at(r + 1, k, round),
                            at(r + 1, k + 1, round)
                        };
                for (int c : two) {
                    corners[e++] = c;
                }
            }
        }
        return TriangleSurface.of(points, corners);
    }

    private static int at(int ring, int k, int round) {
        return 1 + (ring - 1) * round + Math.floorMod(k, round);
    }

    private static double scale(TriangleSurface s, double[] flat, int t) {
        double[] two = Distortion.stretches(s, flat, t);
        return Math.sqrt(two[0] * two[1]);
    }
}
