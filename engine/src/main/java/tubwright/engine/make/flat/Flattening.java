// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import tubwright.engine.make.surface.TriangleSurface;
import tubwright.numerics.Analysis;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;
import tubwright.numerics.SymmetricPattern;

/**
 * Lays a surface into the plane with its lengths kept as well as they can be: from a least-squares conformal map (Lévy,
 * Petitjean, Ray & Maillot 2002) as rigid as possible, which is to say least squares from one best rotation a triangle (Liu,
 * Zhang, Xu, Gotsman & Gortler 2008; both from memory), by steps of Newton on a quadratic that never curves down. The surface must be in one part and open.
 */
public final class Flattening {
    private static final int MOST_STEPS = 40;
    /** A step that promises to take off less than this of its energy is the last … */
    private static final double SETTLED = 1e-3;
    /** … and so is one of less than this of its area: the square of a strain that no cutter sees. */
    private static final double FINE = 1e-12;

    /** Smallest weight of an edge: keeps the matrix definite over obtuse triangles. */
    private static final double LEAST_WEIGHT = 1e-2;

    private final TriangleSurface surface;
    private final DirectSolver solver;

    private Flattening(TriangleSurface surface, DirectSolver solver) {
        this.surface = surface;
        this.solver = solver;
    }

    /** Nearly isometric: 2 coordinates per point, m, anticlockwise as the surface is seen against its normals. */
    public static double[] isometric(TriangleSurface surface, DirectSolver solver) {
        Flattening work = new Flattening(surface, solver);
        double[] flat = work.conformalMap();
        work.rigid(flat);
        return flat;
    }

    /** Nearly isometric, from another map of the same points into the plane, which is not changed. */
    public static double[] isometric(TriangleSurface surface, double[] start, DirectSolver solver) {
        double[] flat = start.clone();
        new Flattening(surface, solver).rigid(flat);
        return flat;
    }

    /** Conformal: angles kept as well as they can be, lengths not; scaled to the surface's area. */
    public static double[] conformal(TriangleSurface surface, DirectSolver solver) {
        return new Flattening(surface, solver).conformalMap();
    }

    /** Cotangents of the angle opposite edge k of a triangle. */
    private double cotangent(int t, int k) {
        return 1 / Math.tan(surface.cornerAngle(t, (k + 2) % 3));
    }

    private double[] conformalMap() {
        int n = surface.pointCount();
        int[] pinned = farApart();
        // All points keep their place in the matrix; a pinned one is cut off from the others.
        SymmetricMatrix matrix = new SymmetricMatrix(graph().pattern(2));
        double[] right = new double[2 * n];
        double[] known = new double[2 * n];
        double length = distance(pinned[0], pinned[1]);
        known[2 * pinned[1]] = length;
        boolean[] fixed = new boolean[n];
        fixed[pinned[0]] = true;
        fixed[pinned[1]] = true;
        int[] c = surface.corners();
        for (int t = 0; t < surface.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                int i = c[3 * t + k];
                int j = c[3 * t + (k + 1) % 3];
                double w = cotangent(t, k);
                for (int xy = 0; xy < 2; xy++) {
                    add(matrix, right, known, fixed, 2 * i + xy, 2 * i + xy, w / 2);
                    add(matrix, right, known, fixed, 2 * j + xy, 2 * j + xy, w / 2);
                    addPair(matrix, right, known, fixed, 2 * i + xy, 2 * j + xy, -w / 2);
                }
                // Less the area of the flat: conformal is where the Dirichlet energy has no more than that.
                addPair(matrix, right, known, fixed, 2 * i, 2 * j + 1, -0.5);
                addPair(matrix, right, known, fixed, 2 * i + 1, 2 * j, 0.5);
            }
        }
        for (int p : pinned) {
            for (int xy = 0; xy < 2; xy++) {
                matrix.add(2 * p + xy, 2 * p + xy, 1);
                right[2 * p + xy] = known[2 * p + xy];
            }
        }
        try (Factorisation factor = solver.factorise(matrix, Definiteness.INDEFINITE)) {
            factor.solveInPlace(right);
        }
        double flatArea = 0;
        double area = 0;
        for (int t = 0; t < surface.triangles(); t++) {
            double[] s = Distortion.stretches(surface, right, t);
            flatArea += surface.area(t) * Math.abs(s[0] * s[1]);
            area += surface.area(t);
        }
        double scale = Math.sqrt(area / flatArea);
        for (int i = 0; i < right.length; i++) {
            right[i] *= scale;
        }
        return right;
    }

    private static void addPair(
            SymmetricMatrix m, double[] right, double[] known, boolean[] fixed, int row, int column, double value) {
        boolean fixedRow = fixed[row / 2];
        boolean fixedColumn = fixed[column / 2];
        if (!fixedRow && !fixedColumn) {
            m.add(row, column, value);
        } else if (!fixedRow) {
            right[row] -= value * known[column];
        } else if (!fixedColumn) {
            right[column] -= value * known[row];
        }
    }

    private static void add(
            SymmetricMatrix m, double[] right, double[] known, boolean[] fixed, int row, int column, double value) {
        if (!fixed[row / 2]) {
            m.add(row, column, value);
        }
    }

    private NodeGraph graph() {
        int[] start = new int[surface.triangles() + 1];
        for (int t = 0; t <= surface.triangles(); t++) {
            start[t] = 3 * t;
        }
        return NodeGraph.of(surface.pointCount(), start, surface.corners());
    }

    /** Two points far apart: the ends of the longest of a few spans. */
    private int[] farApart() {
        int a = 0;
        int b = 0;
        for (int turn = 0; turn < 3; turn++) {
            a = b;
            for (int p = 0; p < surface.pointCount(); p++) {
                if (distance(a, p) > distance(a, b)) {
                    b = p;
                }
            }
        }
        return new int[] {a, b};
    }

    private double distance(int a, int b) {
        double[] x = surface.points();
        return Math.hypot(Math.hypot(x[3 * a] - x[3 * b], x[3 * a + 1] - x[3 * b + 1]), x[3 * a + 2] - x[3 * b + 2]);
    }

    private void rigid(double[] flat) {
        int n = surface.pointCount();
        int[] c = surface.corners();
        double[] weight = new double[c.length];
        double area = 0;
        for (int t = 0; t < surface.triangles(); t++) {
            area += surface.area(t);
            for (int k = 0; k < 3; k++) {
                weight[3 * t + k] = Math.max(LEAST_WEIGHT, cotangent(t, k));
            }
        }
        SymmetricPattern pattern = graph().pattern(2);
        Turned turned = new Turned(surface, weight);
        double[] downhill = new double[2 * n];
        double energy = turned.energy(flat);
        try (Analysis analysis = solver.analyse(pattern, Definiteness.POSITIVE_DEFINITE)) {
            for (int step = 0; step < MOST_STEPS; step++) {
                SymmetricMatrix matrix = new SymmetricMatrix(pattern);
                turned.quadratic(matrix, downhill);
                try (Factorisation factor = analysis.factorise(matrix)) {
                    double[] gradient = downhill.clone();
                    factor.solveInPlace(downhill);
                    double promised = 0;
                    for (int i = 0; i < downhill.length; i++) {
                        promised += gradient[i] * downhill[i] / 2;
                    }
                    boolean settled = promised < SETTLED * energy + FINE * area;
                    double now = stepped(turned, flat, downhill, energy);
                    if (settled || now >= energy) {
                        break;
                    }
                    energy = now;
                }
            }
        }
    }

    /** Goes a step, shorter where the whole one leads uphill; the energy after it. */
    private static double stepped(Turned turned, double[] flat, double[] downhill, double energy) {
        double[] from = flat.clone();
        for (double share = 1; share > 1e-4; share /= 2) {
            for (int i = 0; i < flat.length; i++) {
                flat[i] = from[i] + share * downhill[i];
            }
            double now = turned.energy(flat);
            if (now < energy) {
                return now;
            }
        }
        System.arraycopy(from, 0, flat, 0, flat.length);
        turned.energy(flat);
        return energy;
    }
}
