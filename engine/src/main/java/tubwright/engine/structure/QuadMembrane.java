// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;

/**
 * Membrane strain of the quad, from nine natural strains: the stretch of its four sides, the shear at its middle, and
 * the bows of its sides.
 *
 * <p>The first five make the field of a bilinear quad whatever its shape (Ko, Lee and Bathe 2017, Comput. Struct.
 * 182:404): in a plane it is the compatible one; on a warped quad no point of the inside is asked for a stretch that the
 * sides do not have, which would lock thin ones. Of this field with the bows the mean and the best linear
 * self-equilibrated stress field of the nominal laminate are kept, and a small share of the rest; see {@link ShellQuad}.
 */
final class QuadMembrane {
    /** Share of the residual (non-equilibrated) membrane strain energy that is kept. */
    private static final double RESIDUAL_SHARE = 0.02;

    private static final double KEEP = Math.sqrt(RESIDUAL_SHARE);
    private static final int M = ShellWorkspace.NATURAL;
    private static final int F = ShellQuad.FREEDOMS;
    private static final int SHEAR = 4;
    private static final int BOWS = 5;

    private QuadMembrane() {}

    /**
     * Writes the three membrane rows of the strain operator of all points; frames, side normals and bows of the
     * workspace must be there.
     */
    static void strain(double[] corners, double[] nominal, ShellWorkspace w) {
        for (int i = 0; i < 4; i++) {
            ShellGeometry.sideStretch(corners, i, i + 1 & 3, i, F, w);
            ShellGeometry.bowDifference(i, i + 1 & 3, BOWS + i, F, w);
        }
        middleShear(corners, w.natural);
        compatible(corners, w);
        assumed(nominal, w);
    }

    /** Covariant shear at the middle of the bilinear surface: half of x,r · u,s + x,s · u,r. */
    private static void middleShear(double[] x, double[] natural) {
        int o = SHEAR * F;
        Arrays.fill(natural, o, o + F, 0);
        for (int c = 0; c < 3; c++) {
            double a = x[c];
            double b = x[3 + c];
            double d = x[6 + c];
            double e = x[9 + c];
            double fr = (b + d - a - e) / 32;
            double fs = (d + e - a - b) / 32;
            natural[o + c] = -fr - fs;
            natural[o + 6 + c] = fs - fr;
            natural[o + 12 + c] = fr + fs;
            natural[o + 18 + c] = fr - fs;
        }
    }

    /**
     * Compatible strain at the points. Along r the stretch is that of the sides s = ±1, linear between them, plus (s² − 1)
     * h, h = x,rs · u,rs, which in a plane is a sum of the five natural strains; likewise along s, and rs·h in the shear.
     */
    private static void compatible(double[] x, ShellWorkspace w) {
        double[] e = w.axes[ShellQuad.POINTS];
        double[] inv = w.inverse[ShellQuad.POINTS];
        double d1 = 0;
        double d2 = 0;
        for (int c = 0; c < 3; c++) {
            double twist = (x[c] - x[3 + c] + x[6 + c] - x[9 + c]) / 4;
            d1 += e[c] * twist;
            d2 += e[3 + c] * twist;
        }
        double cr = d1 * inv[0] + d2 * inv[2];
        double cs = d1 * inv[1] + d2 * inv[3];
        double d = cr * cr + cs * cs - 1;
        if (!(d < -1e-3)) {
            throw new IllegalArgumentException("shell element is too distorted: make it two triangles");
        }
        double[] h = w.twist;
        h[0] = cr * (cr + 1) / (2 * d);
        h[1] = cs * (cs - 1) / (2 * d);
        h[2] = cr * (cr - 1) / (2 * d);
        h[3] = cs * (cs + 1) / (2 * d);
        h[SHEAR] = 2 * cr * cs / d;
        for (int p = 0; p < ShellQuad.POINTS; p++) {
            double r = ShellQuad.r(p);
            double s = ShellQuad.s(p);
            double[] v = w.inverse[p];
            double[] b = w.compatible[p];
            for (int k = 0; k < BOWS; k++) {
                double along = k == 0 ? (1 - s) / 2 : k == 2 ? (1 + s) / 2 : 0;
                double over = k == 1 ? (1 + r) / 2 : k == 3 ? (1 - r) / 2 : 0;
                double shear = k == SHEAR ? 1 : k % 2 == 0 ? (k - 1) * r / 4 : (2 - k) * s / 4;
                double rr = along + (s * s - 1) * h[k];
                double ss = over + (r * r - 1) * h[k];
                double rs = 2 * (shear + r * s * h[k]);
                b[k] = v[0] * v[0] * rr + v[1] * v[1] * ss + v[0] * v[1] * rs;
                b[M + k] = v[2] * v[2] * rr + v[3] * v[3] * ss + v[2] * v[3] * rs;
                b[2 * M + k] = 2 * (v[0] * v[2] * rr + v[1] * v[3] * ss) + (v[0] * v[3] + v[1] * v[2]) * rs;
            }
            ShellGeometry.bowStrain(4, BOWS, p, w);
        }
    }

    private static void assumed(double[] nominal, ShellWorkspace w) {
        double[] s = w.compliance;
        ShellGeometry.membraneCompliance(nominal, s);
        double area = 0;
        double cx = 0;
        double cy = 0;
        double cz = 0;
        for (int p = 0; p < ShellQuad.POINTS; p++) {
            double a = w.weight[p];
            double[] x = w.position[p];
            area += a;
            cx += a * x[0];
            cy += a * x[1];
            cz += a * x[2];
        }
        cx /= area;
        cy /= area;
        cz /= area;
        double[] mean = w.mean;
        Arrays.fill(mean, 0);
        for (int p = 0; p < ShellQuad.POINTS; p++) {
            double f = w.weight[p] / area;
            double[] b = w.compatible[p];
            for (int j = 0; j < 3 * M; j++) {
                mean[j] += f * b[j];
            }
        }
        double[] g = w.moments;
        double[] h = w.flexibility;
        Arrays.fill(g, 0);
        Arrays.fill(h, 0);
        double[] e = w.axes[ShellQuad.POINTS];
        for (int p = 0; p < ShellQuad.POINTS; p++) {
            double a = w.weight[p];
            double dx = w.position[p][0] - cx;
            double dy = w.position[p][1] - cy;
            double dz = w.position[p][2] - cz;
            double x = dx * e[0] + dy * e[1] + dz * e[2];
            double y = dx * e[3] + dy * e[4] + dz * e[5];
            // Stress modes: Nx = y; Ny = x; (Nx, Nxy) = (x, -y); (Ny, Nxy) = (y, -x). Their strains, row by row:
            double[] q = w.stressShape[p];
            for (int i = 0; i < 3; i++) {
                q[4 * i] = s[3 * i] * y;
                q[4 * i + 1] = s[3 * i + 1] * x;
                q[4 * i + 2] = s[3 * i] * x - s[3 * i + 2] * y;
                q[4 * i + 3] = s[3 * i + 1] * y - s[3 * i + 2] * x;
            }
            for (int j = 0; j < 4; j++) {
                h[j] += a * y * q[j];
                h[4 + j] += a * x * q[4 + j];
                h[8 + j] += a * (x * q[j] - y * q[8 + j]);
                h[12 + j] += a * (y * q[4 + j] - x * q[8 + j]);
            }
            double[] b = w.compatible[p];
            double ax = a * x;
            double ay = a * y;
            for (int j = 0; j < M; j++) {
                double ex = b[j];
                double ey = b[M + j];
                double exy = b[2 * M + j];
                g[j] += ay * ex;
                g[M + j] += ax * ey;
                g[2 * M + j] += ax * ex - ay * exy;
                g[3 * M + j] += ay * ey - ax * exy;
            }
        }
        ShellGeometry.solve4(h, g, M);
        double rest = 1 - KEEP;
        for (int p = 0; p < ShellQuad.POINTS; p++) {
            double[] q = w.stressShape[p];
            double[] b = w.compatible[p];
            double[] out = w.assumed;
            for (int i = 0; i < 3; i++) {
                double q0 = q[4 * i];
                double q1 = q[4 * i + 1];
                double q2 = q[4 * i + 2];
                double q3 = q[4 * i + 3];
                for (int j = 0; j < M; j++) {
                    double fit = mean[M * i + j] + q0 * g[j] + q1 * g[M + j] + q2 * g[2 * M + j] + q3 * g[3 * M + j];
                    out[M * i + j] = rest * fit + KEEP * b[M * i + j];
                }
            }
            ShellGeometry.spreadMembrane(out, M, F, w, w.strain[p]);
        }
    }
}
