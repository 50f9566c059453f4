// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

/** The rigid motion that a displacement field has in the mean: least squares over all nodes of skin and walls. */
final class BodilyMotion {
    private final double[] centre = new double[3];
    private final double[] motion = new double[6];

    /**
     * Fits.
     *
     * @param x nodes, 3 numbers each, m
     * @param u displacements, 6 per node; only translations count
     */
    BodilyMotion(double[] x, double[] u) {
        int nodes = x.length / 3;
        for (int i = 0; i < x.length; i++) {
            centre[i % 3] += x[i] / nodes;
        }
        double[][] a = new double[6][7];
        double[][] rows = new double[3][6];
        for (int n = 0; n < nodes; n++) {
            double rx = x[3 * n] - centre[0];
            double ry = x[3 * n + 1] - centre[1];
            double rz = x[3 * n + 2] - centre[2];
            rows[0] = new double[] {1, 0, 0, 0, rz, -ry};
            rows[1] = new double[] {0, 1, 0, -rz, 0, rx};
            rows[2] = new double[] {0, 0, 1, ry, -rx, 0};
            for (int d = 0; d < 3; d++) {
                for (int i = 0; i < 6; i++) {
                    for (int j = 0; j < 6; j++) {
                        a[i][j] += rows[d][i] * rows[d][j];
                    }
                    a[i][6] += rows[d][i] * u[6 * n + d];
                }
            }
        }
        for (int p = 0; p < 6; p++) {
            for (int i = 0; i < 6; i++) {
                double factor = i == p ? 0 : a[i][p] / a[p][p];
                for (int j = p; j < 7 && factor != 0; j++) {
                    a[i][j] -= factor * a[p][j];
                }
            }
        }
        for (int i = 0; i < 6; i++) {
            motion[i] = a[i][6] / a[i][i];
        }
    }

    /** Takes the rigid motion from that of a point: translation and rotation left, 6 numbers. */
    double[] leaves(double[] point, double[] movement) {
        double rx = point[0] - centre[0];
        double ry = point[1] - centre[1];
        double rz = point[2] - centre[2];
        double[] own = movement.clone();
        own[0] -= motion[0] + motion[4] * rz - motion[5] * ry;
        own[1] -= motion[1] + motion[5] * rx - motion[3] * rz;
        own[2] -= motion[2] + motion[3] * ry - motion[4] * rx;
        for (int d = 3; d < 6; d++) {
            own[d] -= motion[d];
        }
        return own;
    }
}
