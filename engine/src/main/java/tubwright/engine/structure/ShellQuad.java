// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Four-node laminated shell with six freedoms a node, whose stiffness is linear in the laminate.
 *
 * <p>Generalised strains at 2×2 Gauss points of the reference surface:
 *
 * <ul>
 *   <li>Bending from the degenerated continuum, director motion β = θ × n, n the nodal director; transverse shear tied
 *       at the side midpoints (MITC4: Dvorkin and Bathe 1984, Eng. Comput. 1:77).
 *   <li>Membrane: the stretch of the sides and the shear of the middle (Ko, Lee and Bathe 2017, Comput. Struct. 182:404);
 *       sides bow with the difference of their end rotations about the surface normal (Allman 1984, Comput. Struct.
 *       19:1), strongly curved ones less; the strain is the mean strain plus the strain of the complete linear self-equilibrated stress
 *       field that fits best in the energy of the nominal laminate (assumed stress after Pian and Sumihara 1984, IJNME
 *       20:1685), plus a small share of what is left over.
 *   <li>Drilling: mean nodal rotation about the normal less the rotation of the surface (Hughes and Brezzi 1989, CMAME
 *       72:105), and the one rotation pattern the 2×2 points cannot see.
 * </ul>
 *
 * <p>The nominal laminate only shapes the strain field; it must be the same for all laminates compared. See
 * docs/theory/shell.md for the derivation and measured behaviour.
 *
 * <p>Common arguments: {@code corners} 12 coordinates (m), counter-clockwise about the normal; {@code directors} 12
 * components of the unit surface normals at the corners; {@code reference} 3 components of the material reference
 * direction (projected on the surface, any length); {@code laminate} 8×8 row-major stiffness about the reference surface
 * in the material axes, order εx, εy, γxy, κx, κy, κxy, γxz, γyz (N/m, N, N·m).
 */
public final class ShellQuad {
    /** Nodes. */
    public static final int NODES = 4;
    /** Freedoms: ux, uy, uz, rx, ry, rz in global axes at each node. */
    public static final int FREEDOMS = 24;
    /** Strain points. */
    public static final int POINTS = 4;

    /** How fast the bow of a side fades: half gone where eight times its sag is five and a half thicknesses. */
    private static final double BOW_RATE = 0.1;

    /** Strain of the alternating rotation pattern relative to the drilling strain: stiffness 100 times as large. */
    private static final double PATTERN_WEIGHT = 10;

    private static final double G = 1 / Math.sqrt(3);
    private static final double[] R = {-G, G, G, -G, 0};
    private static final double[] S = {-G, -G, G, G, 0};
    private static final double[] HOURGLASS = {1, -1, 1, -1};
    private static final double[][] N = new double[5][4];
    private static final double[][] N_R = new double[5][4];
    private static final double[][] N_S = new double[5][4];
    private static final double[][] E_R = new double[5][4];
    private static final double[][] E_S = new double[5][4];

    static {
        for (int p = 0; p < 5; p++) {
            double r = R[p];
            double s = S[p];
            N[p] = new double[] {
                (1 - r) * (1 - s) / 4, (1 + r) * (1 - s) / 4, (1 + r) * (1 + s) / 4, (1 - r) * (1 + s) / 4
            };
            N_R[p] = new double[] {-(1 - s) / 4, (1 - s) / 4, (1 + s) / 4, -(1 + s) / 4};
            N_S[p] = new double[] {-(1 - r) / 4, -(1 + r) / 4, (1 + r) / 4, (1 - r) / 4};
            E_R[p] = new double[] {-r * (1 - s), (1 - s * s) / 2, -r * (1 + s), -(1 - s * s) / 2};
            E_S[p] = new double[] {-(1 - r * r) / 2, -s * (1 + r), (1 - r * r) / 2, -s * (1 - r)};
        }
    }

    private ShellQuad() {}

    /** First parent coordinate of a strain point. */
    static double r(int point) {
        return R[point];
    }

    /** Second parent coordinate of a strain point. */
    static double s(int point) {
        return S[point];
    }

    /**
     * Computes the strain points into the workspace.
     *
     * @param nominal nominal laminate (8×8) that shapes the assumed membrane strain; only its A block is used
     * @throws IllegalArgumentException if the element is degenerate, the reference direction is normal to it, or the
     *     nominal membrane stiffness is not positive definite
     */
    public static void strainPoints(
            double[] corners, double[] directors, double[] reference, double[] nominal, ShellWorkspace w) {
        w.points = POINTS;
        w.freedoms = FREEDOMS;
        for (int p = 0; p <= POINTS; p++) {
            ShellGeometry.frame(corners, reference, N[p], N_R[p], N_S[p], 4, p, w);
            ShellGeometry.gradients(N_R[p], N_S[p], E_R[p], E_S[p], 4, p, w);
        }
        for (int p = 0; p < POINTS; p++) {
            java.util.Arrays.fill(w.strain[p], 0);
        }
        ShellGeometry.sides(corners, directors, nominal, 4, BOW_RATE, w);
        QuadMembrane.strain(corners, nominal, w);
        shearTies(corners, directors, w);
        for (int p = 0; p < POINTS; p++) {
            ShellGeometry.bending(directors, 4, p, w);
            shear(p, w);
        }
        double bulge = ShellGeometry.bulge(directors, nominal, 4, 4 * w.centreArea, w);
        drilling(corners, bulge, w);
    }

    /**
     * Stiffness K = Σ w Bᵀ C B, drilling included.
     *
     * @param laminate laminate stiffness (8×8)
     * @param nominal nominal laminate (8×8), see {@link #strainPoints}
     * @param stiffness 24×24 values written, row-major, full symmetric
     */
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

    /**
     * Consistent mass: bilinear displacement, rotary inertia on the tangential rotations only.
     *
     * @param areaMass ∫ρ dz, kg/m²
     * @param firstMoment ∫ρ z dz about the reference surface, kg/m
     * @param secondMoment ∫ρ z² dz, kg
     * @param mass 24×24 values written, row-major, full symmetric
     */
    public static void mass(
            double[] corners,
            double[] directors,
            double areaMass,
            double firstMoment,
            double secondMoment,
            double[] mass) {
        double[] nn = new double[16];
        for (int p = 0; p < POINTS; p++) {
            double a = ShellLoads.area(corners, N_R[p], N_S[p], 4);
            for (int i = 0; i < 4; i++) {
                for (int j = 0; j < 4; j++) {
                    nn[4 * i + j] += a * N[p][i] * N[p][j];
                }
            }
        }
        ShellLoads.mass(nn, directors, 4, areaMass, firstMoment, secondMoment, mass);
    }

    /**
     * Consistent load of a pressure on the reference surface.
     *
     * @param pressure Pa, positive along the normal
     * @param load 24 values added to
     */
    public static void pressure(double[] corners, double pressure, double[] load) {
        double[] n = new double[3];
        for (int p = 0; p < POINTS; p++) {
            ShellLoads.normal(corners, N_R[p], N_S[p], 4, n);
            for (int i = 0; i < 4; i++) {
                for (int c = 0; c < 3; c++) {
                    load[6 * i + c] += pressure * N[p][i] * n[c];
                }
            }
        }
    }

    /**
     * Consistent load of a uniform acceleration field (gravity, inertia relief) or, with unit area mass, of a force per
     * area.
     *
     * @param areaMass ∫ρ dz, kg/m²
     * @param firstMoment ∫ρ z dz about the reference surface, kg/m
     * @param acceleration three components, m/s²
     * @param load 24 values added to
     */
    public static void weight(
            double[] corners,
            double[] directors,
            double areaMass,
            double firstMoment,
            double[] acceleration,
            double[] load) {
        for (int p = 0; p < POINTS; p++) {
            double a = ShellLoads.area(corners, N_R[p], N_S[p], 4);
            for (int i = 0; i < 4; i++) {
                ShellLoads.weight(directors, i, a * N[p][i], areaMass, firstMoment, acceleration, load);
            }
        }
    }

    /** Covariant transverse shear at the four side midpoints: sides 1-2 and 4-3 along r, 2-3 and 1-4 along s. */
    private static void shearTies(double[] x, double[] d, ShellWorkspace w) {
        java.util.Arrays.fill(w.shearTies, 0);
        tie(0, 0, 1, x, d, w.shearTies);
        tie(1, 3, 2, x, d, w.shearTies);
        tie(2, 0, 3, x, d, w.shearTies);
        tie(3, 1, 2, x, d, w.shearTies);
    }

    private static void tie(int row, int i, int j, double[] x, double[] d, double[] ties) {
        int o = row * FREEDOMS;
        double ax = (x[3 * j] - x[3 * i]) / 4;
        double ay = (x[3 * j + 1] - x[3 * i + 1]) / 4;
        double az = (x[3 * j + 2] - x[3 * i + 2]) / 4;
        for (int c = 0; c < 3; c++) {
            double n = (d[3 * i + c] + d[3 * j + c]) / 4;
            ties[o + 6 * i + c] = -n;
            ties[o + 6 * j + c] = n;
        }
        ShellGeometry.crossInto(d, 3 * i, ax, ay, az, ties, o + 6 * i + 3);
        ShellGeometry.crossInto(d, 3 * j, ax, ay, az, ties, o + 6 * j + 3);
    }

    private static void shear(int p, ShellWorkspace w) {
        double[] t = w.shearTies;
        double[] inv = w.inverse[p];
        double[] b = w.strain[p];
        double lo = (1 - S[p]) / 2;
        double hi = (1 + S[p]) / 2;
        double left = (1 - R[p]) / 2;
        double right = (1 + R[p]) / 2;
        for (int j = 0; j < FREEDOMS; j++) {
            double gr = lo * t[j] + hi * t[24 + j];
            double gs = left * t[48 + j] + right * t[72 + j];
            b[144 + j] = inv[0] * gr + inv[1] * gs;
            b[168 + j] = inv[2] * gr + inv[3] * gs;
        }
    }

    private static void drilling(double[] x, double bulge, ShellWorkspace w) {
        double[] e = w.axes[4];
        double[] dx = w.nodeX[4];
        double[] dy = w.nodeY[4];
        double[] sx = w.sideX[4];
        double[] sy = w.sideY[4];
        double hx = 0;
        double hy = 0;
        for (int i = 0; i < 4; i++) {
            hx += HOURGLASS[i] * (e[0] * x[3 * i] + e[1] * x[3 * i + 1] + e[2] * x[3 * i + 2]);
            hy += HOURGLASS[i] * (e[3] * x[3 * i] + e[4] * x[3 * i + 1] + e[5] * x[3 * i + 2]);
        }
        double scale = ShellGeometry.fade(1, bulge);
        double pattern = PATTERN_WEIGHT * ShellGeometry.fade(PATTERN_WEIGHT * PATTERN_WEIGHT, bulge);
        double[] first = w.strain[0];
        for (int i = 0; i < 4; i++) {
            int j = (i + 1) & 3;
            int k = (i + 3) & 3;
            for (int c = 0; c < 3; c++) {
                first[192 + 6 * i + c] = scale * (e[c] * dy[i] - e[3 + c] * dx[i]) / 2;
            }
            // Rotation of the surface by the bow of the two sides meeting at the node.
            double own = ShellGeometry.spin(e, w.bow, i, sx[i], sy[i]);
            double before = ShellGeometry.spin(e, w.bow, k, sx[k], sy[k]);
            for (int c = 0; c < 3; c++) {
                first[195 + 6 * i + c] =
                        scale * (e[6 + c] / 4 + own * w.sideNormal[3 * i + c] - before * w.sideNormal[3 * k + c]);
            }
        }
        for (int p = 1; p < POINTS; p++) {
            System.arraycopy(first, 192, w.strain[p], 192, 24);
        }
        for (int i = 0; i < 4; i++) {
            double f = pattern * (HOURGLASS[i] - hx * dx[i] - hy * dy[i]) / 4;
            for (int p = 0; p < POINTS; p++) {
                for (int c = 0; c < 3; c++) {
                    w.strain[p][195 + 6 * i + c] += HOURGLASS[p] * f * e[6 + c];
                }
            }
        }
    }
}
