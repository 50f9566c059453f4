// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;

/**
 * The motion of the skin's cross-sections: cuts the deformed skin by the plane at a station and fits the rigid motion
 * of the cut in that plane by least squares, weighted by length along the section.
 */
final class SkinSections {
    /**
     * Rigid motion of one section in its plane.
     *
     * @param y mean movement to the right, m
     * @param z mean movement up, m
     * @param twist rotation about +x, rad
     * @param length of skin cut, m; 0 where the plane meets no skin
     */
    record Motion(double y, double z, double twist, double length) {}

    private final Mesh mesh;
    private final int[] byStation;
    private final double[] first;
    private final double[] last;
    private double widest;

    SkinSections(Mesh mesh) {
        this.mesh = mesh;
        int elements = mesh.elementCount();
        first = new double[elements];
        last = new double[elements];
        int count = 0;
        long[] keys = new long[elements];
        for (int e = 0; e < elements; e++) {
            if (mesh.region(e).surface() != Region.Surface.SKIN) {
                continue;
            }
            first[e] = Double.POSITIVE_INFINITY;
            last[e] = Double.NEGATIVE_INFINITY;
            for (int c = 0; c < mesh.cornerCount(e); c++) {
                double x = mesh.nodes()[3 * mesh.elementNodes()[4 * e + c]];
                first[e] = Math.min(first[e], x);
                last[e] = Math.max(last[e], x);
            }
            widest = Math.max(widest, last[e] - first[e]);
            // Sortable image of a float in the high half, the element in the low half.
            int bits = Float.floatToIntBits((float) first[e]);
            int sortable = bits ^ ((bits >> 31) & 0x7fffffff);
            keys[count++] = ((long) sortable << 32) | e;
        }
        java.util.Arrays.sort(keys, 0, count);
        byStation = new int[count];
        for (int i = 0; i < count; i++) {
            byStation[i] = (int) keys[i];
        }
    }

    /** Stations of the foremost and rearmost skin, m. */
    double[] extent() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int e : byStation) {
            low = Math.min(low, first[e]);
            high = Math.max(high, last[e]);
        }
        return new double[] {low, high};
    }

    /**
     * The motion of the section at a station.
     *
     * @param x station, m
     * @param u displacements, 6 per node
     */
    Motion at(double x, double[] u) {
        double[] sums = new double[9];
        double[] cut = new double[8];
        for (int i = lowerBound(x - widest - 1e-6 * Math.max(1, Math.abs(x))); i < byStation.length; i++) {
            int e = byStation[i];
            if (first[e] > x + 1e-6) {
                break;
            }
            if (last[e] <= x || first[e] > x) {
                continue;
            }
            if (cut(e, x, u, cut)) {
                add(cut, sums);
            }
        }
        double length = sums[0];
        if (length == 0) {
            return new Motion(0, 0, 0, 0);
        }
        double y = sums[1] / length;
        double z = sums[2] / length;
        double v = sums[3] / length;
        double w = sums[4] / length;
        double polar = sums[5] - length * (y * y + z * z);
        double turn = sums[6] - length * (y * w - z * v);
        return new Motion(v, w, turn / polar, length);
    }

    private int lowerBound(double x) {
        int low = 0;
        int high = byStation.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (first[byStation[middle]] < x) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Where the plane enters and leaves an element: y, z, v, w at both ends. False where it touches a corner only. */
    private boolean cut(int e, double x, double[] u, double[] out) {
        int found = 0;
        int corners = mesh.cornerCount(e);
        for (int c = 0; c < corners && found < 2; c++) {
            int a = mesh.elementNodes()[4 * e + c];
            int b = mesh.elementNodes()[4 * e + (c + 1) % corners];
            double xa = mesh.nodes()[3 * a];
            double xb = mesh.nodes()[3 * b];
            // Half open, so that a plane through nodes counts each of them once and one column of elements only.
            if ((xa <= x) == (xb <= x)) {
                continue;
            }
            double t = (x - xa) / (xb - xa);
            int at = 4 * found;
            out[at] = (1 - t) * mesh.nodes()[3 * a + 1] + t * mesh.nodes()[3 * b + 1];
            out[at + 1] = (1 - t) * mesh.nodes()[3 * a + 2] + t * mesh.nodes()[3 * b + 2];
            out[at + 2] = (1 - t) * u[6 * a + 1] + t * u[6 * b + 1];
            out[at + 3] = (1 - t) * u[6 * a + 2] + t * u[6 * b + 2];
            found++;
        }
        return found == 2;
    }

    /** Adds the integrals along one cut, exact for linear fields (Simpson over ends and middle). */
    private static void add(double[] cut, double[] sums) {
        double length = Math.hypot(cut[4] - cut[0], cut[5] - cut[1]);
        for (int p = 0; p < 3; p++) {
            double t = 0.5 * p;
            double weight = length * (p == 1 ? 4.0 : 1.0) / 6;
            double y = (1 - t) * cut[0] + t * cut[4];
            double z = (1 - t) * cut[1] + t * cut[5];
            double v = (1 - t) * cut[2] + t * cut[6];
            double w = (1 - t) * cut[3] + t * cut[7];
            sums[0] += weight;
            sums[1] += weight * y;
            sums[2] += weight * z;
            sums[3] += weight * v;
            sums[4] += weight * w;
            sums[5] += weight * (y * y + z * z);
            sums[6] += weight * (y * w - z * v);
        }
    }
}
