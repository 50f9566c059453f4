// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static java.lang.Math.PI;
import static java.lang.Math.cos;
import static java.lang.Math.sin;
import static java.lang.Math.sqrt;

import tubwright.engine.verification.ObstacleCourse.Kind;

/**
 * The shells of revolution of Chapelle and Bathe, length 2 and waist radius 1, under the pressure cos 2θ: an eighth of
 * them in elements, and the same by {@link RevolvedShellSeries}.
 */
enum RevolvedShell {
    CLAMPED_CYLINDER("Cylinder, ends clamped", false, true),
    FREE_CYLINDER("Cylinder, ends free", false, false),
    CLAMPED_HYPERBOLOID("Hyperboloid, ends clamped", true, true),
    FREE_HYPERBOLOID("Hyperboloid, ends free", true, false);

    private static final double YOUNGS = 2e11;
    private static final double POISSON = 1.0 / 3;
    private static final int DEGREE = 60;

    final String title;
    private final boolean curved;
    private final boolean clamped;

    RevolvedShell(String title, boolean curved, boolean clamped) {
        this.title = title;
        this.curved = curved;
        this.clamped = clamped;
    }

    private double radius(double y) {
        return curved ? sqrt(1 + y * y) : 1;
    }

    /** Strain energy over that of the same shell by series. */
    double energyShare(Kind kind, int n, double t) {
        return 8 * eighth(kind, n, t) / series(t);
    }

    /** Strain energy by series, J. */
    double series(double t) {
        RevolvedShellSeries series = curved
                ? new RevolvedShellSeries(this::radius, y -> y / radius(y), y -> Math.pow(radius(y), -3), clamped)
                : new RevolvedShellSeries(this::radius, y -> 0, y -> 0, clamped);
        return series.energy(Laminates.isotropic(YOUNGS, POISSON, t), pressure(t), DEGREE);
    }

    /** Grows with what bears it: the thickness where that is stretching, its cube where it is bending. */
    private double pressure(double t) {
        return 1e9 * (clamped ? t : t * t * t);
    }

    private double eighth(Kind kind, int n, double t) {
        ShellModel m = new ShellModel(Laminates.isotropic(YOUNGS, POISSON, t));
        m.normal = x -> {
            double r = Math.hypot(x[0], x[2]);
            return Vectors.unit(x[0] / r, curved ? -x[1] / r : 0, x[2] / r);
        };
        m.reference = x -> new double[] {0, 1, 0};
        // Half of the elements in the layer at a clamped end, some √t wide, as Chapelle and Bathe grade their meshes.
        double layer = clamped ? Math.min(.5, 6 * sqrt(t)) : .5;
        ObstacleCourse.grid(m, kind, n, n, (a, b) -> {
            double y = b < .5 ? 2 * b * (1 - layer) : 1 - 2 * (1 - b) * layer;
            double f = PI / 2 * a;
            return new double[] {radius(y) * sin(f), y, radius(y) * cos(f)};
        });
        double p = pressure(t);
        m.pressure(x -> {
            double r = Math.hypot(x[0], x[2]);
            return p * (x[2] * x[2] - x[0] * x[0]) / (r * r);
        });
        for (int i : m.where(x -> Math.abs(x[0]) < 1e-9)) {
            m.hold(i, 0, 4, 5);
        }
        for (int i : m.where(x -> Math.abs(x[2]) < 1e-9)) {
            m.hold(i, 2, 3, 4);
        }
        for (int i : m.where(x -> Math.abs(x[1]) < 1e-9)) {
            m.hold(i, 1, 3, 5);
        }
        if (clamped) {
            for (int i : m.where(x -> x[1] > 1 - 1e-9)) {
                m.hold(i, 0, 1, 2, 3, 4, 5);
            }
        }
        return m.solve().work() / 2;
    }
}
