// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.mesh.Mesh;

/** Directions in the elements of a mesh. */
final class Directions {
    private Directions() {}

    /** Unit outward normal of an element. */
    static double[] normal(Mesh mesh, int e) {
        int[] c = mesh.elementNodes();
        double[] x = mesh.nodes();
        int a = 3 * c[4 * e];
        int b = 3 * c[4 * e + 1];
        int d = 3 * c[4 * e + 2];
        int f = mesh.isTriangle(e) ? a : 3 * c[4 * e + 3];
        double[] p = {x[d] - x[a], x[d + 1] - x[a + 1], x[d + 2] - x[a + 2]};
        double[] q = {x[f] - x[b], x[f + 1] - x[b + 1], x[f + 2] - x[b + 2]};
        return unit(cross(p, q));
    }

    /** Unit vector of a direction in an element, by its angle from the reference direction, rad. */
    static double[] of(Mesh mesh, int e, double angle) {
        double[] first = new double[3];
        System.arraycopy(mesh.referenceDirections(), 3 * e, first, 0, 3);
        double[] n = normal(mesh, e);
        double off = dot(first, n);
        for (int i = 0; i < 3; i++) {
            first[i] -= off * n[i];
        }
        first = unit(first);
        double[] second = cross(n, first);
        double[] d = new double[3];
        for (int i = 0; i < 3; i++) {
            d[i] = Math.cos(angle) * first[i] + Math.sin(angle) * second[i];
        }
        return d;
    }

    /** Angle of a vector from an element's reference direction, about its outward normal, rad. */
    static double angle(Mesh mesh, int e, double[] vector) {
        return Math.atan2(dot(vector, of(mesh, e, Math.PI / 2)), dot(vector, of(mesh, e, 0)));
    }

    /** Nominal angle of a ply in an element: mirrored on the left. */
    static double nominal(Mesh mesh, int e, LaidPly ply) {
        return mesh.region(e).mirrored() ? -ply.angle() : ply.angle();
    }

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double[] unit(double[] a) {
        double l = Math.sqrt(dot(a, a));
        return new double[] {a[0] / l, a[1] / l, a[2] / l};
    }
}
