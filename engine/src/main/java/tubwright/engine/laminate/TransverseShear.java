// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

/**
 * Transverse shear of a laminate from equilibrium: how shear stress spreads through the thickness and the stiffness S
 * that stores the same energy.
 *
 * <p>Method: the laminate is bent into a cylinder once along x and once along y (Whitney 1973; superposed as Rolfes and
 * Rohwer 1997 do). Along x only εx, γxy, κx, κxy vary, their gradients are those that leave N,x = 0, Mxy,x = 0 and
 * Mx,x = Qx. The in-plane stress gradients then give τxz,z = −σx,x and τyz,z = −τxy,x, integrated from the free inner
 * surface; likewise along y. With τ(z) = f(z) Q the energy ½ ∫ τᵀ G⁻¹ τ dz = ½ Qᵀ S⁻¹ Q defines S, coupling included.
 * Any stack, symmetric or not; independent of the reference surface. For a homogeneous plate S = 5/6 G h.
 */
public final class TransverseShear {
    /** Abscissae and weights of the three-point Gauss rule on [−1, 1]: exact for the quartic integrand. */
    private static final double[] GAUSS = {-Math.sqrt(0.6), 0, Math.sqrt(0.6)};

    private static final double[] WEIGHT = {5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};

    private final double[] surfaces;
    private final double[][] stiffness;
    private final double[] gradientX;
    private final double[] gradientY;
    private final double[] shear;

    private TransverseShear(
            double[] surfaces, double[][] stiffness, double[] gradientX, double[] gradientY, double[] shear) {
        this.surfaces = surfaces;
        this.stiffness = stiffness;
        this.gradientX = gradientX;
        this.gradientY = gradientY;
        this.shear = shear;
    }

    /** For a laminate, whatever its reference surface. */
    public static TransverseShear of(Laminate laminate) {
        Laminate middle = laminate.about(Reference.MIDDLE);
        double[] z = middle.surfaces();
        int n = middle.layers().size();
        double[][] q = new double[n][];
        double[][] f = new double[n][];
        for (int i = 0; i < n; i++) {
            Layer layer = middle.layers().get(i);
            q[i] = PlaneStress.transformed(layer.material().elasticity(), layer.angle());
            f[i] = PlaneStress.shearCompliance(layer.material().elasticity(), layer.angle());
        }
        return of(z, q, f);
    }

    /**
     * From layer data.
     *
     * @param z surfaces between layers from outer to inner, measured from the middle, m
     * @param q transformed reduced stiffness of each layer (11, 12, 16, 22, 26, 66)
     * @param f transverse shear compliance of each layer (xz-xz, xz-yz, yz-yz)
     */
    static TransverseShear of(double[] z, double[][] q, double[][] f) {
        double h = z[0] - z[z.length - 1];
        // Components of q that act between (εx, γxy) and between (εy, γxy).
        double[] gx = gradient(z, q, h, 0, 2, 5);
        double[] gy = gradient(z, q, h, 3, 4, 5);
        double[] flexibility = new double[3];
        double[] tau = new double[4];
        double[] start = new double[4];
        for (int i = q.length - 1; i >= 0; i--) {
            double half = 0.5 * (z[i] - z[i + 1]);
            double middle = 0.5 * (z[i] + z[i + 1]);
            for (int g = 0; g < 3; g++) {
                System.arraycopy(start, 0, tau, 0, 4);
                addStress(tau, q[i], gx, gy, z[i + 1], middle + half * GAUSS[g]);
                double w = WEIGHT[g] * half;
                // tau = (xz per Qx, yz per Qx, xz per Qy, yz per Qy)
                flexibility[0] += w * form(f[i], tau[0], tau[1], tau[0], tau[1]);
                flexibility[1] += w * form(f[i], tau[0], tau[1], tau[2], tau[3]);
                flexibility[2] += w * form(f[i], tau[2], tau[3], tau[2], tau[3]);
            }
            addStress(start, q[i], gx, gy, z[i + 1], z[i]);
        }
        double determinant = flexibility[0] * flexibility[2] - flexibility[1] * flexibility[1];
        double coupling = -flexibility[1] / determinant;
        double[] shear = {flexibility[2] / determinant, coupling, coupling, flexibility[0] / determinant};
        return new TransverseShear(z, q, gx, gy, shear);
    }

    private static double form(double[] f, double a1, double a2, double b1, double b2) {
        return a1 * (f[0] * b1 + f[1] * b2) + a2 * (f[1] * b1 + f[2] * b2);
    }

    /** Gradients (ε', γ', κ', κxy') under a unit shear force, for one direction of bending. */
    private static double[] gradient(double[] z, double[][] q, double h, int direct, int mixed, int shear) {
        double[] k = new double[16];
        for (int i = 0; i < q.length; i++) {
            double z1 = z[i] / h;
            double z0 = z[i + 1] / h;
            double m0 = z1 - z0;
            double m1 = 0.5 * (z1 * z1 - z0 * z0);
            double m2 = (z1 * z1 * z1 - z0 * z0 * z0) / 3;
            double[] part = {q[i][direct], q[i][mixed], q[i][mixed], q[i][shear]};
            for (int r = 0; r < 2; r++) {
                for (int c = 0; c < 2; c++) {
                    double p = part[2 * r + c];
                    k[4 * r + c] += p * m0;
                    k[4 * r + c + 2] += p * m1;
                    k[4 * (r + 2) + c] += p * m1;
                    k[4 * (r + 2) + c + 2] += p * m2;
                }
            }
        }
        // In lengths of h: N in Pa·h, M in Pa·h², curvature in 1/h.
        double[] l =
                SmallSymmetric.factor(k, 4).orElseThrow(() -> new IllegalStateException("stack without stiffness"));
        double[] g = SmallSymmetric.solve(l, 4, new double[] {0, 0, 1 / (h * h), 0});
        g[2] /= h;
        g[3] /= h;
        return g;
    }

    /** Adds the rise of (xz per Qx, yz per Qx, xz per Qy, yz per Qy) from {@code from} to {@code to} in one layer. */
    private static void addStress(double[] tau, double[] q, double[] gx, double[] gy, double from, double to) {
        double m0 = to - from;
        double m1 = 0.5 * (to * to - from * from);
        double ex = gx[0] * m0 + gx[2] * m1;
        double sx = gx[1] * m0 + gx[3] * m1;
        double ey = gy[0] * m0 + gy[2] * m1;
        double sy = gy[1] * m0 + gy[3] * m1;
        tau[0] -= q[0] * ex + q[2] * sx;
        tau[1] -= q[2] * ex + q[5] * sx;
        tau[2] -= q[4] * ey + q[5] * sy;
        tau[3] -= q[3] * ey + q[4] * sy;
    }

    /** Stiffness (xz-xz, xz-yz, yz-xz, yz-yz), N/m; not to be modified. */
    public double[] stiffness() {
        return shear;
    }

    /**
     * Shear stress (τxz, τyz) in Pa under shear forces per width Qx, Qy in N/m.
     *
     * @param depth distance from the outer surface, m, from 0 to the thickness
     */
    public double[] stressAtDepth(double depth, double qx, double qy) {
        double z = surfaces[0] - depth;
        double[] tau = new double[4];
        for (int i = stiffness.length - 1; i >= 0; i--) {
            double top = Math.min(z, surfaces[i]);
            if (top <= surfaces[i + 1]) {
                break;
            }
            addStress(tau, stiffness[i], gradientX, gradientY, surfaces[i + 1], top);
        }
        return new double[] {tau[0] * qx + tau[2] * qy, tau[1] * qx + tau[3] * qy};
    }
}
