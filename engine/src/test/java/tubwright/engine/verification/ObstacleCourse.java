// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static java.lang.Math.PI;
import static java.lang.Math.cos;
import static java.lang.Math.sin;
import static java.lang.Math.sqrt;
import static java.lang.Math.toRadians;

import java.util.SplittableRandom;
import java.util.function.BiFunction;

/** Published shell problems as functions of the mesh; each returns the quantity the source tabulates. */
final class ObstacleCourse {
    /** Element shape of a mesh. */
    enum Kind {
        QUADS,
        TRIANGLES,
        /** Quads with every inner node moved by up to a quarter of a cell each way, always the same way. */
        DISTORTED,
        /** Those quads cut in two. */
        DISTORTED_TRIANGLES;

        boolean distorted() {
            return this == DISTORTED || this == DISTORTED_TRIANGLES;
        }

        boolean triangles() {
            return this == TRIANGLES || this == DISTORTED_TRIANGLES;
        }
    }

    private ObstacleCourse() {}

    /** Structured mesh of nx × ny cells over parameters in [0,1]²; node (i,j) has index base + j (nx+1) + i. */
    static void grid(ShellModel m, Kind kind, int nx, int ny, BiFunction<Double, Double, double[]> map) {
        int base = m.nodes.size();
        for (int j = 0; j <= ny; j++) {
            for (int i = 0; i <= nx; i++) {
                boolean moved = kind.distorted() && i > 0 && j > 0 && i < nx && j < ny;
                SplittableRandom random = new SplittableRandom(1_000_003L * i + j);
                double di = moved ? random.nextDouble(-.25, .25) : 0;
                double dj = moved ? random.nextDouble(-.25, .25) : 0;
                m.nodes.add(map.apply((i + di) / nx, (j + dj) / ny));
            }
        }
        for (int j = 0; j < ny; j++) {
            for (int i = 0; i < nx; i++) {
                int a = base + j * (nx + 1) + i;
                if (!kind.triangles()) {
                    m.element(a, a + 1, a + nx + 2, a + nx + 1);
                } else {
                    m.triangles(false, a, a + 1, a + nx + 2, a + nx + 1);
                }
            }
        }
    }

    static boolean near(double a, double b) {
        return Math.abs(a - b) < 1e-9 * Math.max(1, Math.abs(b));
    }

    /** Scordelis–Lo roof: vertical displacement at the middle of the free edge (downwards positive). */
    static double scordelisLo(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(4.32e8, 0, 0.25));
        m.normal = x -> Vectors.unit(x[0], 0, x[2]);
        m.reference = x -> new double[] {0, 1, 0};
        // Angle grows from the crown (x = 0); y from midspan to the diaphragm.
        grid(m, kind, n, n, (a, b) -> new double[] {25 * sin(toRadians(40 * a)), 25 * b, 25 * cos(toRadians(40 * a))});
        m.surfaceLoad(0, 0, -90);
        for (int i : m.where(x -> near(x[0], 0))) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> near(x[1], 0))) {
            m.hold(i, 1, 3, 5);
        }
        for (int i : m.where(x -> near(x[1], 25))) {
            m.hold(i, 0, 2);
        }
        return -m.solve().at(n, 2);
    }

    /** Pinched cylinder with rigid diaphragms: displacement under the load. */
    static double pinchedCylinder(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(3e6, 0.3, 3));
        m.normal = x -> Vectors.unit(x[0], 0, x[2]);
        m.reference = x -> new double[] {0, 1, 0};
        grid(m, kind, n, n, (a, b) -> new double[] {300 * sin(PI / 2 * a), 300 * b, 300 * cos(PI / 2 * a)});
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[2]) < 1e-9)) {
            m.hold(i, 2, 3, 4);
        }
        for (int i : m.where(x -> near(x[1], 0))) {
            m.hold(i, 1, 3, 5);
        }
        for (int i : m.where(x -> near(x[1], 300))) {
            m.hold(i, 0, 2, 4);
        }
        m.load(0, 2, -0.25);
        return -m.solve().at(0, 2);
    }

    /** Hemisphere with an 18° hole under two pairs of forces: displacement along the force at A. */
    static double holedHemisphere(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(6.825e7, 0.3, 0.04));
        m.normal = x -> Vectors.unit(x[0], x[1], x[2]);
        m.reference = x -> new double[] {0, 0, 1};
        grid(m, kind, n, n, (a, b) -> {
            double f = toRadians(72 * b);
            return new double[] {10 * cos(PI / 2 * a) * cos(f), 10 * sin(PI / 2 * a) * cos(f), 10 * sin(f)};
        });
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[1]) < 1e-9)) {
            m.hold(i, 1, 3, 5);
        }
        m.hold(0, 2);
        m.load(0, 0, 1);
        m.load(n, 1, -1);
        return m.solve().at(0, 0);
    }

    /** An octant of a sphere in three patches with n elements per half edge. */
    static ShellModel octant(double radius, double[] laminate, Kind kind, int n) {
        ShellModel m = new ShellModel(laminate);
        m.normal = x -> Vectors.unit(x[0], x[1], x[2]);
        m.reference = x -> Math.abs(x[2]) < 0.8 * radius ? new double[] {0, 0, 1} : new double[] {1, 0.3, 0};
        double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int k = 0; k < 3; k++) {
            double[] a = v[k];
            double[] b = v[(k + 1) % 3];
            double[] c = v[(k + 2) % 3];
            ShellModel part = new ShellModel(m.laminate);
            grid(part, kind, n, n, (r, s) -> {
                // Corner a, mid side ab, centroid, mid side ac, on the sphere by central projection of equal angles.
                double[] p = new double[3];
                double[] ab = mid(a, b, r / 2);
                double[] ac = mid(a, c, s / 2);
                double[] abEnd = mid(a, b, 0.5);
                double[] acEnd = mid(a, c, 0.5);
                double[] o = Vectors.unit(1, 1, 1);
                double[] top = mid(acEnd, o, r);
                double[] right = mid(abEnd, o, s);
                for (int i = 0; i < 3; i++) {
                    p[i] = (1 - s) * ab[i]
                            + s * top[i]
                            + (1 - r) * ac[i]
                            + r * right[i]
                            - ((1 - r) * (1 - s) * a[i]
                                    + r * (1 - s) * abEnd[i]
                                    + r * s * o[i]
                                    + (1 - r) * s * acEnd[i]);
                }
                double[] q = Vectors.unit(p);
                return new double[] {radius * q[0], radius * q[1], radius * q[2]};
            });
            merge(m, part);
        }
        return m;
    }

    /** Closed hemisphere, an octant with n elements per half edge. */
    static double fullHemisphere(Kind kind, int n) {
        ShellModel m = octant(10, Laminates.isotropic(6.825e7, 0.3, 0.04), kind, n);
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[1]) < 1e-9)) {
            m.hold(i, 1, 3, 5);
        }
        int a = m.where(x -> near(x[0], 10))[0];
        int b = m.where(x -> near(x[1], 10))[0];
        int pole = m.where(x -> near(x[2], 10))[0];
        m.hold(pole, 2);
        m.load(a, 0, 1);
        m.load(b, 1, -1);
        return m.solve().at(a, 0);
    }

    private static double[] mid(double[] a, double[] b, double t) {
        double w = Math.acos(Math.min(1, Vectors.dot(a, b)));
        double[] p = new double[3];
        for (int i = 0; i < 3; i++) {
            p[i] = (sin((1 - t) * w) * a[i] + sin(t * w) * b[i]) / sin(w);
        }
        return p;
    }

    /** Adds a part to a model, joining nodes that coincide. */
    static void merge(ShellModel m, ShellModel part) {
        int[] to = new int[part.nodes.size()];
        for (int i = 0; i < to.length; i++) {
            double[] x = part.nodes.get(i);
            to[i] = -1;
            for (int j = 0; j < m.nodes.size(); j++) {
                double[] d = Vectors.minus(x, m.nodes.get(j));
                if (Vectors.dot(d, d) < 1e-12) {
                    to[i] = j;
                }
            }
            if (to[i] < 0) {
                m.nodes.add(x);
                to[i] = m.nodes.size() - 1;
            }
        }
        for (int[] e : part.elements) {
            m.element(java.util.Arrays.stream(e).map(i -> to[i]).toArray());
        }
    }

    /** Hook of two arcs: displacement along the width at the tip under a unit force spread over the tip. */
    static double hook(Kind kind, int across, int along) {
        ShellModel m = new ShellModel(Laminates.isotropic(3300, 0.35, 2));
        double first = 14 * toRadians(60);
        double second = 46 * toRadians(150);
        // Small arc about the origin, from angle 90° down to 30°; the large arc turns the other way about its centre.
        double[] centre = {60 * cos(toRadians(30)), 60 * sin(toRadians(30))};
        int k = (int) Math.round(along * first / (first + second));
        m.normal = x -> hypot(x[0], x[1]) < 14 + 1e-6
                ? Vectors.unit(x[0], x[1], 0)
                : Vectors.unit(centre[0] - x[0], centre[1] - x[1], 0);
        m.reference = x -> new double[] {0, 0, 1};
        double split = (double) k / along;
        grid(m, kind, along, across, (a, b) -> {
            if (a <= split + 1e-9) {
                double f = toRadians(90 - 60 * a / split);
                return new double[] {14 * cos(f), 14 * sin(f), -20 * b};
            }
            double f = toRadians(210 + 150 * (a - split) / (1 - split));
            return new double[] {centre[0] + 46 * cos(f), centre[1] + 46 * sin(f), -20 * b};
        });
        for (int j = 0; j <= across; j++) {
            m.hold(j * (along + 1), 0, 1, 2, 3, 4, 5);
            double share = j == 0 || j == across ? 0.5 / across : 1.0 / across;
            m.load(j * (along + 1) + along, 2, share);
        }
        m.solve();
        return m.at(along, 2);
    }

    private static double hypot(double a, double b) {
        return sqrt(a * a + b * b);
    }

    /** Twisted beam: tip displacement under a unit (or thin variant 1e-6) force along y or z. */
    static double twistedBeam(Kind kind, int nx, int ny, double t, int axis) {
        ShellModel m = new ShellModel(Laminates.isotropic(29e6, 0.22, t));
        m.normal = x -> {
            double f = PI / 2 * x[0] / 12;
            double r = x[1] * cos(f) + x[2] * sin(f);
            double k = PI / 24;
            // Surface (x, r cos f, r sin f): tangents (1, −r k sin f, r k cos f) and (0, cos f, sin f).
            return Vectors.unit(
                    Vectors.cross(new double[] {1, -r * k * sin(f), r * k * cos(f)}, new double[] {0, cos(f), sin(f)}));
        };
        grid(m, kind, nx, ny, (a, b) -> {
            double f = PI / 2 * a;
            double r = 1.1 * (b - 0.5);
            return new double[] {12 * a, r * cos(f), r * sin(f)};
        });
        for (int j = 0; j <= ny; j++) {
            m.hold(j * (nx + 1), 0, 1, 2, 3, 4, 5);
        }
        double p = t < 0.01 ? 1e-6 : 1;
        m.load((ny / 2) * (nx + 1) + nx, axis, p);
        return m.solve().at((ny / 2) * (nx + 1) + nx, axis);
    }

    /** Clamped hyperbolic paraboloid, half model 2n × n: deflection at the middle of the free edge x = L/2. */
    static double hypar(Kind kind, int n, double t) {
        ShellModel m = saddle(kind, n, t);
        return -m.at(2 * n, 2);
    }

    /** The same, solved: half of it. */
    static ShellModel saddle(Kind kind, int n, double t) {
        ShellModel m = new ShellModel(Laminates.isotropic(2e11, 0.3, t));
        m.normal = x -> Vectors.unit(-2 * x[0], 2 * x[1], 1);
        grid(m, kind, 2 * n, n, (a, b) -> {
            double x = a - 0.5;
            double y = b / 2;
            return new double[] {x, y, x * x - y * y};
        });
        m.surfaceLoad(0, 0, -8000 * t);
        for (int i : m.where(x -> near(x[0], -0.5))) {
            m.hold(i, 0, 1, 2, 3, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[1]) < 1e-12)) {
            m.hold(i, 1, 3, 5);
        }
        return m.solve();
    }

    /** Cook's membrane: vertical displacement at the middle of the loaded side. */
    static double cook(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(1, 1.0 / 3, 1));
        grid(m, kind, n, n, (a, b) -> {
            double low = 44 * a;
            double high = 44 + 16 * a;
            return new double[] {48 * a, low + (high - low) * b, 0};
        });
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 2, 3, 4);
        }
        for (int j = 0; j <= n; j++) {
            m.hold(j * (n + 1), 0, 1, 5);
            m.load(j * (n + 1) + n, 1, j == 0 || j == n ? 0.5 / n : 1.0 / n);
        }
        return m.solve().at((n / 2) * (n + 1) + n, 1);
    }

    /** {@link #straightCantilever(Kind, int, int, int)} of six elements. */
    static double straightCantilever(Kind kind, int shape, int load) {
        return straightCantilever(kind, shape, load, 1);
    }

    /**
     * Straight cantilever 6 × 0.2 × 0.1 of 6n × n cells: load case 0 extension, 1 in its plane, 2 out of it, 3 twist; shape
     * 0 rectangles, 1 trapezoids, 2 parallelograms.
     */
    static double straightCantilever(Kind kind, int shape, int load, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(1e7, 0.3, 0.1));
        grid(m, kind, 6 * n, n, (a, b) -> {
            double x = 6 * a;
            boolean inside = a > 0.01 && a < 0.99;
            int line = (int) Math.round(n * x);
            double sign = shape == 0 || !inside ? 0 : shape == 1 && line % 2 == 1 ? -0.1 : 0.1;
            return new double[] {x + sign / n * (2 * b - 1), 0.2 * b, 0};
        });
        double mean = 0;
        for (int j = 0; j <= n; j++) {
            int root = (6 * n + 1) * j;
            double share = (j == 0 || j == n ? .5 : 1.) / n;
            m.hold(root, 0, 1, 2, 3, 4, 5);
            if (load < 3) {
                m.load(root + 6 * n, load, share);
            }
        }
        int low = 6 * n;
        int high = (6 * n + 1) * n + 6 * n;
        if (load == 3) {
            m.load(low, 2, -5);
            m.load(high, 2, 5);
        }
        m.solve();
        for (int j = 0; load < 3 && j <= n; j++) {
            mean += m.at((6 * n + 1) * j + 6 * n, load) * (j == 0 || j == n ? .5 : 1.) / n;
        }
        return load < 3 ? mean : (m.at(high, 2) - m.at(low, 2)) / 0.2;
    }

    /** Cylinder of free ends under pressure: outward movement at the crown in its middle. */
    static double pressedCylinder(Kind kind, int n) {
        ShellModel m = new ShellModel(Laminates.isotropic(3e6, 0.3, 3));
        m.normal = x -> Vectors.unit(x[0], 0, x[2]);
        m.reference = x -> new double[] {0, 1, 0};
        grid(m, kind, n, n, (a, b) -> new double[] {300 * sin(PI / 2 * a), 300 * b, 300 * cos(PI / 2 * a)});
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[2]) < 1e-9)) {
            m.hold(i, 2, 3, 4);
        }
        for (int i : m.where(x -> near(x[1], 0))) {
            m.hold(i, 1, 3, 5);
        }
        m.pressure(10);
        return m.solve().at(0, 2);
    }

    /** Curved cantilever, quarter ring 4.12 to 4.32: tip displacement along a unit radial (in-plane) or normal force. */
    static double curvedCantilever(Kind kind, int nx, int ny, boolean inPlane) {
        ShellModel m = new ShellModel(Laminates.isotropic(1e7, 0.25, 0.1));
        grid(m, kind, nx, ny, (a, b) -> {
            double f = PI / 2 * (1 - a);
            double r = 4.12 + 0.2 * b;
            return new double[] {r * cos(f), r * sin(f), 0};
        });
        int axis = inPlane ? 0 : 2;
        double sum = 0;
        for (int j = 0; j <= ny; j++) {
            m.hold(j * (nx + 1), 0, 1, 2, 3, 4, 5);
            m.load(j * (nx + 1) + nx, axis, j == 0 || j == ny ? 0.5 / ny : 1.0 / ny);
        }
        m.solve();
        for (int j = 0; j <= ny; j++) {
            sum += m.at(j * (nx + 1) + nx, axis) * (j == 0 || j == ny ? 0.5 / ny : 1.0 / ny);
        }
        return sum;
    }

    /** Rectangular plate 2 × b, quarter model n × n: centre deflection. */
    static double plate(Kind kind, int n, double b, boolean clamped, boolean point) {
        ShellModel m = new ShellModel(Laminates.isotropic(1.7472e7, 0.3, 1e-4));
        grid(m, kind, n, n, (r, s) -> new double[] {r, s * b / 2, 0});
        for (int i = 0; i < m.nodes.size(); i++) {
            m.hold(i, 0, 1, 5);
            double[] x = m.nodes.get(i);
            if (near(x[0], 0)) {
                m.hold(i, 4);
            }
            if (near(x[1], 0)) {
                m.hold(i, 3);
            }
            if (near(x[0], 1)) {
                m.hold(i, 2, 3);
            }
            if (near(x[1], b / 2)) {
                m.hold(i, 2, 4);
            }
            if (clamped && (near(x[0], 1) || near(x[1], b / 2))) {
                m.hold(i, 3, 4);
            }
        }
        if (point) {
            m.load(0, 2, 1e-4);
        } else {
            m.surfaceLoad(0, 0, 1e-4);
        }
        return m.solve().at(0, 2);
    }
}
