// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.Arrays;

/**
 * Three-node laminated shell with six freedoms a node, the filler between {@link ShellQuad}s; its stiffness is linear in
 * the laminate too.
 *
 * <ul>
 *   <li>Bending and transverse shear: constant curvature from the nodal rotations plus a rotation bubble, shear tied in
 *       the interior (MITC3+: Lee, Lee and Bathe 2014, Comput. Struct. 138:12). The bubble is condensed with the
 *       nominal laminate and then frozen, so that B does not depend on the laminate.
 *   <li>Membrane: constant strain plus sides that bow with the difference of their end rotations (Allman 1984); mean
 *       and zero-mean strain of the bows are weighted separately, as in the optimal triangle (Felippa 2003, CMAME
 *       192:2125).
 *   <li>Drilling: mean nodal rotation about the normal less the rotation of the surface.
 * </ul>
 *
 * <p>Arguments as for {@link ShellQuad}, with three corners.
 */
public final class ShellTriangle {
    /** Nodes. */
    public static final int NODES = 3;
    /** Freedoms: ux, uy, uz, rx, ry, rz in global axes at each node. */
    public static final int FREEDOMS = 18;
    /** Strain points. */
    public static final int POINTS = 3;

    /** How fast the bow of a side fades with its sag. */
    private static final double BOW_RATE = 0.02;
    /** Weight of the drilling strain. */
    private static final double DRILLING_WEIGHT = 3;
    /** Weight of the bows' mean strain; 3/2 makes in-plane bending of two triangles nearly exact (Felippa 2003). */
    private static final double MEAN_WEIGHT = 1.5;
    /** Share of the energy of the bows' zero-mean strain that is kept. */
    private static final double SPREAD_SHARE = 0.12;

    /** Makes three points integrate the square of the bubble's gradient exactly: √(4.05/1.6875). */
    private static final double BUBBLE = Math.sqrt(2.4);

    private static final int M = ShellWorkspace.NATURAL;
    private static final int BOWS = 3;
    private static final double[] R = {1.0 / 6, 2.0 / 3, 1.0 / 6, 1.0 / 3};
    private static final double[] S = {1.0 / 6, 1.0 / 6, 2.0 / 3, 1.0 / 3};
    private static final double[] N_R = {-1, 1, 0};
    private static final double[] N_S = {-1, 0, 1};
    private static final double[][] N = new double[4][];
    private static final double[][] E_R = new double[4][];
    private static final double[][] E_S = new double[4][];
    private static final double[] F_R = new double[3];
    private static final double[] F_S = new double[3];

    static {
        for (int p = 0; p < 4; p++) {
            double r = R[p];
            double s = S[p];
            double q = 1 - r - s;
            N[p] = new double[] {q, r, s};
            E_R[p] = new double[] {4 * (q - r), 4 * s, -4 * s};
            E_S[p] = new double[] {-4 * r, 4 * r, 4 * (q - s)};
            if (p < 3) {
                F_R[p] = BUBBLE * 27 * s * (q - r);
                F_S[p] = BUBBLE * 27 * r * (q - s);
            }
        }
    }

    private ShellTriangle() {}

    /** Computes the strain points into the workspace; see {@link ShellQuad#strainPoints}. */
    public static void strainPoints(
            double[] corners, double[] directors, double[] reference, double[] nominal, ShellWorkspace w) {
        w.points = POINTS;
        w.freedoms = FREEDOMS;
        for (int p = 0; p <= POINTS; p++) {
            ShellGeometry.frame(corners, reference, N[p], N_R, N_S, 3, p, w);
            ShellGeometry.gradients(N_R, N_S, E_R[p], E_S[p], 3, p, w);
        }
        for (int p = 0; p < POINTS; p++) {
            w.weight[p] /= 6;
            Arrays.fill(w.strain[p], 0);
        }
        ShellGeometry.sides(corners, directors, nominal, 3, BOW_RATE, w);
        membrane(corners, w);
        for (int p = 0; p < POINTS; p++) {
            ShellGeometry.bending(directors, 3, p, w);
        }
        shear(corners, directors, nominal, w);
        bubble(corners, directors, nominal, w);
        double bulge = ShellGeometry.bulge(directors, nominal, 3, w.centreArea / 2, w);
        drilling(bulge, w);
    }

    /** Stiffness K = Σ w Bᵀ C B, 18×18; see {@link ShellQuad#stiffness}. */
    public static void stiffness(
            double[] corners,
            double[] directors,
            double[] reference,
            double[] laminate,
            double[] nominal,
            ShellWorkspace w,
            double[] stiffness) {
        strainPoints(corners, directors, reference, nominal, w);
        ShellIntegral.integrate(laminate, w, stiffness);
    }

    /** Consistent mass, 18×18; see {@link ShellQuad#mass}. */
    public static void mass(
            double[] corners,
            double[] directors,
            double areaMass,
            double firstMoment,
            double secondMoment,
            double[] mass) {
        double[] nn = new double[9];
        double a = ShellLoads.area(corners, N_R, N_S, 3) / 24;
        for (int i = 0; i < 9; i++) {
            nn[i] = i % 4 == 0 ? 2 * a : a;
        }
        ShellLoads.mass(nn, directors, 3, areaMass, firstMoment, secondMoment, mass);
    }

    /** Consistent pressure load, added to 18 values; see {@link ShellQuad#pressure}. */
    public static void pressure(double[] corners, double pressure, double[] load) {
        double[] n = new double[3];
        ShellLoads.normal(corners, N_R, N_S, 3, n);
        for (int i = 0; i < 18; i++) {
            if (i % 6 < 3) {
                load[i] += pressure * n[i % 6] / 6;
            }
        }
    }

    /** Consistent load of an acceleration field, added to 18 values; see {@link ShellQuad#weight}. */
    public static void weight(
            double[] corners,
            double[] directors,
            double areaMass,
            double firstMoment,
            double[] acceleration,
            double[] load) {
        double a = ShellLoads.area(corners, N_R, N_S, 3) / 6;
        for (int i = 0; i < 3; i++) {
            ShellLoads.weight(directors, i, a, areaMass, firstMoment, acceleration, load);
        }
    }

    /** Natural strains: the stretch of the three sides, and their bows. */
    private static void membrane(double[] x, ShellWorkspace w) {
        for (int i = 0; i < 3; i++) {
            ShellGeometry.sideStretch(x, i, (i + 1) % 3, i, FREEDOMS, w);
            ShellGeometry.bowDifference(i, (i + 1) % 3, BOWS + i, FREEDOMS, w);
        }
        for (int p = 0; p < POINTS; p++) {
            double[] v = w.inverse[p];
            double[] b = w.compatible[p];
            for (int k = 0; k < BOWS; k++) {
                // Sides lie along r, along s − r and along s; four times the stretch is the covariant strain.
                double rr = k == 0 ? 4 : 0;
                double ss = k == 2 ? 4 : 0;
                double rs = k == 1 ? -4 : 4;
                b[k] = v[0] * v[0] * rr + v[1] * v[1] * ss + v[0] * v[1] * rs;
                b[M + k] = v[2] * v[2] * rr + v[3] * v[3] * ss + v[2] * v[3] * rs;
                b[2 * M + k] = 2 * (v[0] * v[2] * rr + v[1] * v[3] * ss) + (v[0] * v[3] + v[1] * v[2]) * rs;
            }
            ShellGeometry.bowStrain(3, BOWS, p, w);
        }
        double[] mean = w.mean;
        for (int j = 0; j < 3 * M; j++) {
            mean[j] = (w.compatible[0][j] + w.compatible[1][j] + w.compatible[2][j]) / 3;
        }
        double keep = Math.sqrt(SPREAD_SHARE);
        for (int p = 0; p < POINTS; p++) {
            double[] b = w.compatible[p];
            double[] out = w.assumed;
            for (int j = 0; j < 3 * M; j++) {
                boolean side = j % M >= BOWS;
                out[j] = side ? MEAN_WEIGHT * mean[j] + keep * (b[j] - mean[j]) : b[j];
            }
            ShellGeometry.spreadMembrane(out, 6, FREEDOMS, w, w.strain[p]);
        }
    }

    private static void shear(double[] x, double[] d, double[] nominal, ShellWorkspace w) {
        double rx = x[3] - x[0];
        double ry = x[4] - x[1];
        double rz = x[5] - x[2];
        double sx = x[6] - x[0];
        double sy = x[7] - x[1];
        double sz = x[8] - x[2];
        double[] t = w.shearTies;
        // Covariant shear along r and s at the three nodes, from which all ties are combined.
        double[] er = w.moments;
        double[] es = w.product;
        Arrays.fill(er, 0, 54, 0);
        Arrays.fill(es, 0, 54, 0);
        for (int k = 0; k < 3; k++) {
            int o = 18 * k;
            for (int c = 0; c < 3; c++) {
                double n = d[3 * k + c];
                er[o + c] = -n;
                er[o + 6 + c] = n;
                es[o + c] = -n;
                es[o + 12 + c] = n;
            }
            ShellGeometry.crossInto(d, 3 * k, rx, ry, rz, er, o + 6 * k + 3);
            ShellGeometry.crossInto(d, 3 * k, sx, sy, sz, es, o + 6 * k + 3);
        }
        double soft = linearShear(nominal, w.centreArea / 2);
        for (int j = 0; j < 18; j++) {
            double r1 = er[j];
            double r2 = er[18 + j];
            double r3 = er[36 + j];
            double s1 = es[j];
            double s2 = es[18 + j];
            double s3 = es[36 + j];
            double rNear1 = (4 * r1 + r2 + r3) / 6;
            double sNear1 = (4 * s1 + s2 + s3) / 6;
            double rNear2 = (r1 + 4 * r2 + r3) / 6;
            double sNear2 = (s1 + 4 * s2 + s3) / 6;
            double rNear3 = (r1 + r2 + 4 * r3) / 6;
            double sNear3 = (s1 + s2 + 4 * s3) / 6;
            t[j] = 2.0 / 3 * (rNear2 - sNear2 / 2) + (rNear1 + sNear1) / 3;
            t[18 + j] = 2.0 / 3 * (sNear3 - rNear3 / 2) + (rNear1 + sNear1) / 3;
            t[36 + j] = soft * (r3 - r1 + s1 - s2) / 3;
        }
        for (int p = 0; p < POINTS; p++) {
            double[] inv = w.inverse[p];
            double[] b = w.strain[p];
            double fr = 3 * S[p] - 1;
            double fs = 1 - 3 * R[p];
            for (int j = 0; j < 18; j++) {
                double gr = t[j] + fr * t[36 + j];
                double gs = t[18 + j] + fs * t[36 + j];
                b[108 + j] = inv[0] * gr + inv[1] * gs;
                b[126 + j] = inv[2] * gr + inv[3] * gs;
            }
        }
    }

    /** Weight of the linear part of the shear strain: thickness over size, as stabilised plate triangles have it. */
    private static double linearShear(double[] nominal, double area) {
        double a66 = nominal[18];
        double b66 = nominal[21];
        double d = nominal[45] - b66 * b66 / a66;
        double s = (nominal[54] + nominal[63]) / 2;
        return Math.sqrt(1 / (1 + 0.1 * s * area / d));
    }

    /** Adds the bubble's strains times the bubble's rotations, these expressed by the nodal freedoms. */
    private static void bubble(double[] x, double[] d, double[] nominal, ShellWorkspace w) {
        double[] e = w.axes[3];
        // Bubble rotations act as director motions along e1 and e2 of the centre.
        double a1r = (x[3] - x[0]) * e[0] + (x[4] - x[1]) * e[1] + (x[5] - x[2]) * e[2];
        double a2r = (x[3] - x[0]) * e[3] + (x[4] - x[1]) * e[4] + (x[5] - x[2]) * e[5];
        double a1s = (x[6] - x[0]) * e[0] + (x[7] - x[1]) * e[1] + (x[8] - x[2]) * e[2];
        double a2s = (x[6] - x[0]) * e[3] + (x[7] - x[1]) * e[4] + (x[8] - x[2]) * e[5];
        double[][] bb = w.compatible;
        double k11 = 0;
        double k12 = 0;
        double k22 = 0;
        double[] g = w.moments;
        Arrays.fill(g, 0, 36, 0);
        double[] cb = w.flexibility;
        for (int p = 0; p < POINTS; p++) {
            double[] inv = w.inverse[p];
            double fx = inv[0] * F_R[p] + inv[1] * F_S[p];
            double fy = inv[2] * F_R[p] + inv[3] * F_S[p];
            double[] b = bb[p];
            Arrays.fill(b, 0, 16, 0);
            b[3] = fx;
            b[5] = fy;
            b[8 + 4] = fy;
            b[8 + 5] = fx;
            b[6] = (inv[0] * a1r + inv[1] * a1s) / 2;
            b[7] = (inv[2] * a1r + inv[3] * a1s) / 2;
            b[14] = (inv[0] * a2r + inv[1] * a2s) / 2;
            b[15] = (inv[2] * a2r + inv[3] * a2s) / 2;
            for (int m = 0; m < 2; m++) {
                for (int i = 0; i < 8; i++) {
                    double sum = 0;
                    for (int j = 3; j < 8; j++) {
                        sum += nominal[8 * i + j] * b[8 * m + j];
                    }
                    cb[8 * m + i] = w.weight[p] * sum;
                }
            }
            double[] bu = w.strain[p];
            for (int i = 0; i < 8; i++) {
                k11 += b[i] * cb[i];
                k12 += b[i] * cb[8 + i];
                k22 += b[8 + i] * cb[8 + i];
                for (int j = 0; j < 18; j++) {
                    g[j] += cb[i] * bu[18 * i + j];
                    g[18 + j] += cb[8 + i] * bu[18 * i + j];
                }
            }
        }
        double det = k11 * k22 - k12 * k12;
        if (!(det > 0)) {
            throw new IllegalArgumentException("nominal bending stiffness is not positive definite; give a laminate"
                    + " with bending and transverse shear stiffness in every direction");
        }
        for (int j = 0; j < 18; j++) {
            double g1 = -(k22 * g[j] - k12 * g[18 + j]) / det;
            double g2 = -(k11 * g[18 + j] - k12 * g[j]) / det;
            for (int p = 0; p < POINTS; p++) {
                double[] b = bb[p];
                double[] bu = w.strain[p];
                for (int i = 3; i < 8; i++) {
                    bu[18 * i + j] += b[i] * g1 + b[8 + i] * g2;
                }
            }
        }
    }

    private static void drilling(double bulge, ShellWorkspace w) {
        double[] e = w.axes[3];
        double scale = DRILLING_WEIGHT * ShellGeometry.fade(DRILLING_WEIGHT * DRILLING_WEIGHT, bulge);
        double[] dx = w.nodeX[3];
        double[] dy = w.nodeY[3];
        double[] b = w.strain[0];
        for (int i = 0; i < 3; i++) {
            int k = (i + 2) % 3;
            double own = ShellGeometry.spin(e, w.bow, i, w.sideX[3][i], w.sideY[3][i]);
            double before = ShellGeometry.spin(e, w.bow, k, w.sideX[3][k], w.sideY[3][k]);
            for (int c = 0; c < 3; c++) {
                b[144 + 6 * i + c] = scale * (e[c] * dy[i] - e[3 + c] * dx[i]) / 2;
                b[147 + 6 * i + c] =
                        scale * (e[6 + c] / 3 + own * w.sideNormal[3 * i + c] - before * w.sideNormal[3 * k + c]);
            }
        }
        System.arraycopy(b, 144, w.strain[1], 144, 18);
        System.arraycopy(b, 144, w.strain[2], 144, 18);
    }
}
