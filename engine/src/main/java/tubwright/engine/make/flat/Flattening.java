// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.flat;

import tubwright.engine.make.surface.TriangleSurface;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;
import tubwright.numerics.NodeGraph;
import tubwright.numerics.SymmetricMatrix;

/**
 * Lays a surface into the plane with its lengths kept as well as they can be: from a least-squares conformal map (Lévy,
 * Petitjean, Ray & Maillot 2002) by turns of one best rotation a triangle and one linear solve (local/global, as rigid as
 * possible: Liu, Zhang, Xu, Gotsman & Gortler 2008; both from memory). The surface must be in one part and open.
 */
public final class Flattening {
    private static final int MOST_TURNS = 60;
    private static final double SETTLED = 1e-7;
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
        SymmetricMatrix matrix = new SymmetricMatrix(graph().pattern(1));
        double[] weight = new double[c.length];
        for (int t = 0; t < surface.triangles(); t++) {
            for (int k = 0; k < 3; k++) {
                double w = Math.max(LEAST_WEIGHT, cotangent(t, k));
                weight[3 * t + k] = w;
                int i = c[3 * t + k];
                int j = c[3 * t + (k + 1) % 3];
                matrix.add(i, i, w);
                matrix.add(j, j, w);
                matrix.add(i, j, -w);
            }
        }
        // The pattern may float: hold the first point, softly enough to leave rounding alone.
        matrix.add(0, 0, matrix.get(0, 0));
        double held = matrix.get(0, 0) / 2;
        try (Factorisation factor = solver.factorise(matrix, Definiteness.POSITIVE_DEFINITE)) {
            double[][] sides = new double[2][n];
            double before = Double.POSITIVE_INFINITY;
            for (int turn = 0; turn < MOST_TURNS; turn++) {
                double energy = local(flat, weight, sides);
                sides[0][0] += held * flat[0];
                sides[1][0] += held * flat[1];
                factor.solveInPlace(sides);
                for (int p = 0; p < n; p++) {
                    flat[2 * p] = sides[0][p];
                    flat[2 * p + 1] = sides[1][p];
                }
                if (before - energy < SETTLED * energy || energy < 1e-24) {
                    break;
                }
                before = energy;
            }
        }
    }

    /** Best rotation of every triangle; fills the right-hand sides and gives the energy before. */
    private double local(double[] flat, double[] weight, double[][] sides) {
        java.util.Arrays.fill(sides[0], 0);
        java.util.Arrays.fill(sides[1], 0);
        int[] c = surface.corners();
        double energy = 0;
        double[] dx = new double[3];
        double[] dy = new double[3];
        for (int t = 0; t < surface.triangles(); t++) {
            double[] local = surface.localCorners(t);
            double[] px = {0, local[0], local[1]};
            double[] py = {0, 0, local[2]};
            double cos = 0;
            double sin = 0;
            double square = 0;
            for (int k = 0; k < 3; k++) {
                int m = (k + 1) % 3;
                dx[k] = px[k] - px[m];
                dy[k] = py[k] - py[m];
                double u = flat[2 * c[3 * t + k]] - flat[2 * c[3 * t + m]];
                double v = flat[2 * c[3 * t + k] + 1] - flat[2 * c[3 * t + m] + 1];
                double w = weight[3 * t + k];
                cos += w * (u * dx[k] + v * dy[k]);
                sin += w * (v * dx[k] - u * dy[k]);
                square += w * (u * u + v * v + dx[k] * dx[k] + dy[k] * dy[k]);
            }
            double l = Math.hypot(cos, sin);
            energy += Math.max(0, square - 2 * l);
            if (l > 0) {
                cos /= l;
                sin /= l;
            } else {
                cos = 1;
            }
            for (int k = 0; k < 3; k++) {
                double w = weight[3 * t + k];
                double u = w * (cos * dx[k] - sin * dy[k]);
                double v = w * (sin * dx[k] + cos * dy[k]);
                sides[0][c[3 * t + k]] += u;
                sides[1][c[3 * t + k]] += v;
                sides[0][c[3 * t + (k + 1) % 3]] -= u;
                sides[1][c[3 * t + (k + 1) % 3]] -= v;
            }
        }
        return energy;
    }
}
