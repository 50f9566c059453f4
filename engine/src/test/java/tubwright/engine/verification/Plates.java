// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static tubwright.engine.verification.ObstacleCourse.near;

/** Rectangular plates in the x-y plane. */
final class Plates {
    private Plates() {}

    static StabilityModel flat(ObstacleCourse.Kind kind, double[] laminate, double a, double b, int nx, int ny) {
        StabilityModel m = new StabilityModel(laminate);
        ObstacleCourse.grid(m, kind, nx, ny, (r, s) -> new double[] {a * r, b * s, 0});
        return m;
    }

    /** SS-1: on x edges v = w = φy = 0, on y edges u = w = φx = 0; φx turns about y, φy about -x. */
    static void cross(StabilityModel m, double a, double b) {
        for (int i : m.where(x -> near(x[0], 0) || near(x[0], a))) {
            m.hold(i, 1, 2, 3);
        }
        for (int i : m.where(x -> near(x[1], 0) || near(x[1], b))) {
            m.hold(i, 0, 2, 4);
        }
    }

    /** SS-2: on x edges u = w = φy = 0, on y edges v = w = φx = 0. */
    static void angle(StabilityModel m, double a, double b) {
        for (int i : m.where(x -> near(x[0], 0) || near(x[0], a))) {
            m.hold(i, 0, 2, 3);
        }
        for (int i : m.where(x -> near(x[1], 0) || near(x[1], b))) {
            m.hold(i, 1, 2, 4);
        }
    }

    /** Value at mesh size zero from three sizes each half the one before, and the observed order. */
    record Limit(double value, double order) {
        static Limit of(double coarse, double middle, double fine) {
            double ratio = (coarse - middle) / (middle - fine);
            return new Limit(fine + (fine - middle) / (ratio - 1), Math.log(ratio) / Math.log(2));
        }
    }
}
