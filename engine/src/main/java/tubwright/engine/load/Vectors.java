// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

/** Three-component vectors as arrays. */
final class Vectors {
    private Vectors() {}

    static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    static double[] plus(double[] a, double factor, double[] b) {
        return new double[] {a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]};
    }

    static double[] times(double factor, double[] a) {
        return new double[] {factor * a[0], factor * a[1], factor * a[2]};
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double length(double[] a) {
        return Math.sqrt(dot(a, a));
    }

    /** Mirror image across the middle plane of the car. */
    static double[] mirrored(double[] a) {
        return new double[] {a[0], -a[1], a[2]};
    }

    static double[] unit(double[] a) {
        return times(1 / length(a), a);
    }
}
