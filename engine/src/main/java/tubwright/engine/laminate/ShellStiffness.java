// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Elasticity;

/**
 * Stiffness and mass of a laminate as a first-order shear-deformable shell about its reference surface.
 *
 * <p>N = A ε + B κ, M = B ε + D κ with ε(z) = ε + z κ at the reference surface, order (x, y, xy) with engineering shear;
 * Q = S γ with γ = (γxz, γyz). Units: A N/m, B N, D N·m, S N/m. All arrays are shared and not to be modified.
 */
public final class ShellStiffness {
    private static final int SIZE = 8;

    private final double[] matrix;
    private final double thickness;
    private final double zOuter;
    private final double arealMass;
    private final double firstMassMoment;
    private final double secondMassMoment;

    private ShellStiffness(
            double[] matrix,
            double thickness,
            double zOuter,
            double arealMass,
            double firstMassMoment,
            double secondMassMoment) {
        this.matrix = matrix;
        this.thickness = thickness;
        this.zOuter = zOuter;
        this.arealMass = arealMass;
        this.firstMassMoment = firstMassMoment;
        this.secondMassMoment = secondMassMoment;
    }

    /** By classical lamination theory for A, B, D and {@link TransverseShear} for S. */
    public static ShellStiffness of(Laminate laminate) {
        int n = laminate.layers().size();
        double[] surfaces = laminate.surfaces();
        double h = surfaces[0] - surfaces[n];
        double middle = 0.5 * (surfaces[0] + surfaces[n]);
        double[] z = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            z[i] = surfaces[i] - middle;
        }
        double[][] q = new double[n][];
        double[][] f = new double[n][];
        double[] m = new double[SIZE * SIZE];
        double mass = 0;
        double first = 0;
        double second = 0;
        for (int i = 0; i < n; i++) {
            Layer layer = laminate.layers().get(i);
            Elasticity elasticity = layer.material().elasticity();
            q[i] = PlaneStress.transformed(elasticity, layer.angle());
            f[i] = PlaneStress.shearCompliance(elasticity, layer.angle());
            double m0 = layer.thickness();
            double m1 = 0.5 * (z[i] * z[i] - z[i + 1] * z[i + 1]);
            double m2 = (z[i] * z[i] * z[i] - z[i + 1] * z[i + 1] * z[i + 1]) / 3;
            addBlock(m, 0, 0, q[i], m0);
            addBlock(m, 0, 3, q[i], m1);
            addBlock(m, 3, 0, q[i], m1);
            addBlock(m, 3, 3, q[i], m2);
            double density = layer.material().density();
            mass += density * m0;
            first += density * m1;
            second += density * m2;
        }
        double[] s = TransverseShear.of(z, q, f).stiffness();
        for (int r = 0; r < 2; r++) {
            m[SIZE * (6 + r) + 6] = s[2 * r];
            m[SIZE * (6 + r) + 7] = s[2 * r + 1];
        }
        return new ShellStiffness(m, h, 0.5 * h, mass, first, second).withReferenceMovedBy(-middle);
    }

    private static void addBlock(double[] m, int row, int column, double[] q, double factor) {
        m[SIZE * row + column] += q[0] * factor;
        m[SIZE * row + column + 1] += q[1] * factor;
        m[SIZE * row + column + 2] += q[2] * factor;
        m[SIZE * (row + 1) + column] += q[1] * factor;
        m[SIZE * (row + 1) + column + 1] += q[3] * factor;
        m[SIZE * (row + 1) + column + 2] += q[4] * factor;
        m[SIZE * (row + 2) + column] += q[2] * factor;
        m[SIZE * (row + 2) + column + 1] += q[4] * factor;
        m[SIZE * (row + 2) + column + 2] += q[5] * factor;
    }

    /** Of a homogeneous isotropic plate about its middle: Young's modulus Pa, thickness m, density kg/m³. */
    public static ShellStiffness isotropic(
            double youngsModulus, double poissonsRatio, double thickness, double density) {
        Elasticity e = Elasticity.isotropic(youngsModulus, poissonsRatio);
        double[] q = PlaneStress.transformed(e, 0);
        double[] m = new double[SIZE * SIZE];
        addBlock(m, 0, 0, q, thickness);
        addBlock(m, 3, 3, q, thickness * thickness * thickness / 12);
        m[SIZE * 6 + 6] = 5.0 / 6.0 * e.g13() * thickness;
        m[SIZE * 7 + 7] = m[SIZE * 6 + 6];
        double second = density * thickness * thickness * thickness / 12;
        return new ShellStiffness(m, thickness, 0.5 * thickness, density * thickness, 0, second);
    }

    /**
     * The same laminate about a reference surface that lies {@code distance} further out (along +n), m.
     *
     * <p>With z' = z − d: A' = A, B' = B − d A, D' = D − 2 d B + d² A; S unchanged.
     */
    public ShellStiffness withReferenceMovedBy(double distance) {
        if (distance == 0) {
            return this;
        }
        double[] m = matrix.clone();
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                double a = matrix[SIZE * r + c];
                double b = matrix[SIZE * r + c + 3];
                double moved = b - distance * a;
                m[SIZE * r + c + 3] = moved;
                m[SIZE * (r + 3) + c] = moved;
                m[SIZE * (r + 3) + c + 3] = matrix[SIZE * (r + 3) + c + 3] - 2 * distance * b + distance * distance * a;
            }
        }
        return new ShellStiffness(
                m,
                thickness,
                zOuter - distance,
                arealMass,
                firstMassMoment - distance * arealMass,
                secondMassMoment - 2 * distance * firstMassMoment + distance * distance * arealMass);
    }

    /**
     * Stiffness seen from axes turned by {@code angle} (radians, e1 towards e2) against the present ones.
     *
     * <p>A, B and D are exactly those of the laminate with its plies turned back. S turns as a tensor; computed anew for
     * the turned plies it differs a little, because {@link TransverseShear} bends the laminate along its axes (some
     * 2 % for a sandwich, up to 15 % for a stack of tapes, measured). For one laminate keep to one way.
     */
    public ShellStiffness turnedBy(double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        // Strain in the old axes from strain in the turned ones: ε = T ε'.
        double[] plane = {c * c, s * s, -c * s, s * s, c * c, c * s, 2 * c * s, -2 * c * s, c * c - s * s};
        double[] t = new double[SIZE * SIZE];
        for (int r = 0; r < 3; r++) {
            for (int k = 0; k < 3; k++) {
                t[SIZE * r + k] = plane[3 * r + k];
                t[SIZE * (r + 3) + k + 3] = plane[3 * r + k];
            }
        }
        t[SIZE * 6 + 6] = c;
        t[SIZE * 6 + 7] = -s;
        t[SIZE * 7 + 6] = s;
        t[SIZE * 7 + 7] = c;
        double[] ct = new double[SIZE * SIZE];
        double[] result = new double[SIZE * SIZE];
        for (int i = 0; i < SIZE; i++) {
            for (int k = 0; k < SIZE; k++) {
                double v = matrix[SIZE * i + k];
                for (int j = 0; v != 0 && j < SIZE; j++) {
                    ct[SIZE * i + j] += v * t[SIZE * k + j];
                }
            }
        }
        for (int i = 0; i < SIZE; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = 0;
                for (int k = 0; k < SIZE; k++) {
                    sum += t[SIZE * k + i] * ct[SIZE * k + j];
                }
                result[SIZE * i + j] = sum;
                result[SIZE * j + i] = sum;
            }
        }
        return new ShellStiffness(result, thickness, zOuter, arealMass, firstMassMoment, secondMassMoment);
    }

    /** All of it, 8 × 8 row-major, order (εx, εy, γxy, κx, κy, κxy, γxz, γyz). Shared: not to be modified. */
    public double[] matrix() {
        return matrix;
    }

    /** Inverse of {@link #matrix()} by Cholesky, 8 × 8 row-major. */
    public double[] compliance() {
        // Curvatures in units of 1/h balance the entries before factorising.
        double[] scale = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            scale[i] = i >= 3 && i < 6 ? 1 / thickness : 1;
        }
        double[] scaled = new double[SIZE * SIZE];
        for (int i = 0; i < SIZE * SIZE; i++) {
            scaled[i] = matrix[i] * scale[i / SIZE] * scale[i % SIZE];
        }
        double[] l = SmallSymmetric.factor(scaled, SIZE)
                .orElseThrow(() -> new IllegalStateException("shell stiffness is not positive definite"));
        double[] inverse = SmallSymmetric.inverse(l, SIZE);
        for (int i = 0; i < SIZE * SIZE; i++) {
            inverse[i] *= scale[i / SIZE] * scale[i % SIZE];
        }
        return inverse;
    }

    private double[] block(int row, int column) {
        double[] block = new double[9];
        for (int i = 0; i < 9; i++) {
            block[i] = matrix[SIZE * (row + i / 3) + column + i % 3];
        }
        return block;
    }

    /** A, 3 × 3 row-major, N/m. */
    public double[] membrane() {
        return block(0, 0);
    }

    /** B, 3 × 3 row-major, N. */
    public double[] coupling() {
        return block(0, 3);
    }

    /** D, 3 × 3 row-major, N·m. */
    public double[] bending() {
        return block(3, 3);
    }

    /** S, 2 × 2 row-major in the order (xz, yz), N/m. */
    public double[] shear() {
        return new double[] {matrix[SIZE * 6 + 6], matrix[SIZE * 6 + 7], matrix[SIZE * 7 + 6], matrix[SIZE * 7 + 7]};
    }

    /** Total thickness, m. */
    public double thickness() {
        return thickness;
    }

    /** z of the outer surface, m. */
    public double zOuter() {
        return zOuter;
    }

    /** z of the inner surface, m. */
    public double zInner() {
        return zOuter - thickness;
    }

    /** ∫ρ dz, kg/m². */
    public double arealMass() {
        return arealMass;
    }

    /** ∫ρ z dz, kg/m: the centre of mass lies at this over the areal mass. */
    public double firstMassMoment() {
        return firstMassMoment;
    }

    /** ∫ρ z² dz, kg. */
    public double secondMassMoment() {
        return secondMassMoment;
    }
}
