// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Straight two-node beam with shear flexibility, exact for loads at its ends (Timoshenko theory; stiffness as in
 * Przemieniecki 1968, Theory of Matrix Structural Analysis, §5.6), its ends carried by rigid arms from the nodes.
 *
 * <p>Local axes: x from end 1 to end 2; z the part of the given orientation square to x; y = z × x. Freedoms of each
 * node in global axes: ux, uy, uz, rx, ry, rz. Stiffness is linear in E and G when their ratio to the shear areas is
 * kept.
 */
public final class Beam {
    /** Freedoms of the element. */
    public static final int FREEDOMS = 12;

    static final double[] GAUSS = {
        0.069431844202973712, 0.330009478207571868, 0.669990521792428132, 0.930568155797026287
    };
    static final double[] GAUSS_WEIGHT = {
        0.173927422568726929, 0.326072577431273071, 0.326072577431273071, 0.173927422568726929
    };

    private final BeamSection section;
    private final double length;
    /** Local end motions (12) from nodal freedoms (12): rotation to local axes and rigid arms. */
    private final double[] transform;

    /**
     * Places a beam.
     *
     * @param nodes coordinates of its two nodes, m, 6 numbers
     * @param arms rigid arms from node to beam end, global, m, 6 numbers; zeros where the beam ends at the nodes
     * @param orientation direction that local z follows, 3 numbers
     * @param section section and material
     * @throws IllegalArgumentException if the ends coincide or the orientation lies along the beam
     */
    public Beam(double[] nodes, double[] arms, double[] orientation, BeamSection section) {
        this.section = section;
        double[] x = new double[3];
        for (int c = 0; c < 3; c++) {
            x[c] = nodes[3 + c] + arms[3 + c] - nodes[c] - arms[c];
        }
        length = norm(x);
        if (!(length > 0)) {
            throw new IllegalArgumentException("beam ends coincide; move its nodes apart");
        }
        double along = 0;
        for (int c = 0; c < 3; c++) {
            x[c] /= length;
            along += x[c] * orientation[c];
        }
        double[] z = new double[3];
        for (int c = 0; c < 3; c++) {
            z[c] = orientation[c] - along * x[c];
        }
        double size = norm(z);
        if (!(size > 1e-9 * norm(orientation))) {
            throw new IllegalArgumentException("beam orientation lies along the beam; choose another direction");
        }
        for (int c = 0; c < 3; c++) {
            z[c] /= size;
        }
        double[][] axes = {x, {z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]}, z};
        transform = new double[144];
        for (int end = 0; end < 2; end++) {
            for (int a = 0; a < 3; a++) {
                double[] e = axes[a];
                int row = 6 * end + a;
                // e · (u + θ × arm) = e·u + θ · (arm × e)
                double ax = arms[3 * end];
                double ay = arms[3 * end + 1];
                double az = arms[3 * end + 2];
                for (int c = 0; c < 3; c++) {
                    transform[12 * row + 6 * end + c] = e[c];
                    transform[12 * (row + 3) + 6 * end + 3 + c] = e[c];
                }
                transform[12 * row + 6 * end + 3] = ay * e[2] - az * e[1];
                transform[12 * row + 6 * end + 4] = az * e[0] - ax * e[2];
                transform[12 * row + 6 * end + 5] = ax * e[1] - ay * e[0];
            }
        }
    }

    /** Length between the beam's ends, m. */
    public double length() {
        return length;
    }

    /** Writes the 12×12 stiffness, row-major, full symmetric. */
    public void stiffness(double[] out) {
        congruence(localStiffness(), out);
    }

    /**
     * End forces on the beam in its local axes for given nodal displacements.
     *
     * @param displacements 12 nodal values, global
     * @return N1, Vy1, Vz1, T1, My1, Mz1 and the same at end 2 (N, N·m), as they act on the beam's ends
     */
    public double[] endForces(double[] displacements) {
        double[] local = new double[12];
        for (int i = 0; i < 12; i++) {
            for (int j = 0; j < 12; j++) {
                local[i] += transform[12 * i + j] * displacements[j];
            }
        }
        double[] k = localStiffness();
        double[] f = new double[12];
        for (int i = 0; i < 12; i++) {
            for (int j = 0; j < 12; j++) {
                f[i] += k[12 * i + j] * local[j];
            }
        }
        return f;
    }

    /** Its section and material. */
    BeamSection section() {
        return section;
    }

    /** Writes the consistent 12×12 mass, rotary inertia included. */
    public void mass(double[] out) {
        double[] m = new double[144];
        double rho = section.density();
        double[] w = new double[8];
        for (int g = 0; g < 4; g++) {
            double s = GAUSS[g];
            double f = GAUSS_WEIGHT[g] * length * rho;
            double[] axial = {1 - s, s};
            for (int i = 0; i < 2; i++) {
                for (int j = 0; j < 2; j++) {
                    m[12 * 6 * i + 6 * j] += f * section.area() * axial[i] * axial[j];
                    m[12 * (6 * i + 3) + 6 * j + 3] +=
                            f * (section.inertiaY() + section.inertiaZ()) * axial[i] * axial[j];
                }
            }
            bendingShapes(s, shearRatio(section.inertiaZ(), section.shearAreaY()), w);
            addBending(m, w, f, section.inertiaZ(), new int[] {1, 5, 7, 11}, 1);
            bendingShapes(s, shearRatio(section.inertiaY(), section.shearAreaZ()), w);
            addBending(m, w, f, section.inertiaY(), new int[] {2, 4, 8, 10}, -1);
        }
        congruence(m, out);
    }

    /**
     * Adds the consistent load of a uniform acceleration field.
     *
     * @param acceleration three components, m/s²
     * @param load 12 values added to
     */
    public void weight(double[] acceleration, double[] load) {
        double[] m = new double[144];
        mass(m);
        // A uniform field is the rigid translation of both nodes.
        for (int i = 0; i < 12; i++) {
            for (int c = 0; c < 3; c++) {
                load[i] += (m[12 * i + c] + m[12 * i + 6 + c]) * acceleration[c];
            }
        }
    }

    /**
     * Writes the 12×12 geometric stiffness for the end forces of a state of displacement; see
     * {@link BeamGeometricStiffness}.
     *
     * @param displacements 12 nodal values, global
     */
    public void geometricStiffness(double[] displacements, double[] out) {
        congruence(BeamGeometricStiffness.local(this, section, endForces(displacements)), out);
    }

    private void addBending(double[] m, double[] w, double f, double inertia, int[] at, double sign) {
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                double flip = (i % 2 == 0 ? 1 : sign) * (j % 2 == 0 ? 1 : sign);
                m[12 * at[i] + at[j]] += flip * f * (section.area() * w[i] * w[j] + inertia * w[4 + i] * w[4 + j]);
            }
        }
    }

    /** Exact static shapes: deflection (0..3) and section rotation (4..7) for end deflections and rotations. */
    void bendingShapes(double s, double phi, double[] w) {
        double d = 1 / (1 + phi);
        double q = s * s;
        double c = q * s;
        w[0] = d * (1 - 3 * q + 2 * c + phi * (1 - s));
        w[1] = d * length * (s - 2 * q + c + phi / 2 * (s - q));
        w[2] = d * (3 * q - 2 * c + phi * s);
        w[3] = d * length * (c - q - phi / 2 * (s - q));
        w[4] = d * 6 * (q - s) / length;
        w[5] = d * (1 - 4 * s + 3 * q + phi * (1 - s));
        w[6] = -w[4];
        w[7] = d * (3 * q - 2 * s + phi * s);
    }

    double shearRatio(double inertia, double shearArea) {
        return 12 * section.youngsModulus() * inertia / (section.shearModulus() * shearArea * length * length);
    }

    private double[] localStiffness() {
        double[] k = new double[144];
        double e = section.youngsModulus();
        double ea = e * section.area() / length;
        double gj = section.shearModulus() * section.torsionConstant() / length;
        pair(k, 0, 6, ea);
        pair(k, 3, 9, gj);
        bend(
                k,
                e * section.inertiaZ(),
                shearRatio(section.inertiaZ(), section.shearAreaY()),
                new int[] {1, 5, 7, 11},
                1);
        bend(
                k,
                e * section.inertiaY(),
                shearRatio(section.inertiaY(), section.shearAreaZ()),
                new int[] {2, 4, 8, 10},
                -1);
        return k;
    }

    private static void pair(double[] k, int i, int j, double v) {
        k[12 * i + i] = v;
        k[12 * j + j] = v;
        k[12 * i + j] = -v;
        k[12 * j + i] = -v;
    }

    private void bend(double[] k, double ei, double phi, int[] at, double sign) {
        double f = ei / (length * length * length * (1 + phi));
        double l = length * sign;
        double far = (2 - phi) * length * length;
        double near = (4 + phi) * length * length;
        double[][] b = {
            {12, 6 * l, -12, 6 * l}, {6 * l, near, -6 * l, far}, {-12, -6 * l, 12, -6 * l}, {6 * l, far, -6 * l, near}
        };
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                k[12 * at[i] + at[j]] = f * b[i][j];
            }
        }
    }

    /** out = Tᵀ k T. */
    private void congruence(double[] k, double[] out) {
        double[] kt = new double[144];
        for (int i = 0; i < 12; i++) {
            for (int m = 0; m < 12; m++) {
                double v = k[12 * i + m];
                for (int j = 0; j < 12; j++) {
                    kt[12 * i + j] += v * transform[12 * m + j];
                }
            }
        }
        for (int i = 0; i < 12; i++) {
            for (int j = 0; j < 12; j++) {
                double sum = 0;
                for (int m = 0; m < 12; m++) {
                    sum += transform[12 * m + i] * kt[12 * m + j];
                }
                out[12 * i + j] = sum;
            }
        }
    }

    private static double norm(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }
}
