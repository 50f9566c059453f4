// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

/**
 * Scratch memory and the latest strain points of one shell element. One object per thread; reused from element to
 * element so that forming stiffness allocates nothing.
 *
 * <p>After {@link ShellQuad#strainPoints} or {@link ShellTriangle#strainPoints} the object holds, for every strain
 * point p, the weight w_p (m², the reference-surface area the point stands for) and the strain operator B_p (9 rows by
 * {@link #freedoms()} columns, row-major). The rows are the generalised strains in the element's material axes: εx, εy,
 * γxy (1), κx, κy, κxy (1/m), γxz, γyz (1) and the drilling strain (1). A positive κ stretches the side the normal
 * points to. B_p does not depend on the laminate, so energy = ½ Σ w_p (B_p u)ᵀ C (B_p u) is linear in C.
 */
public final class ShellWorkspace {
    /** Generalised strains of a point: eight of the laminate and the drilling strain. */
    public static final int STRAINS = 9;

    static final int MAX_POINTS = 4;
    static final int MAX_FREEDOMS = 24;

    int points;
    int freedoms;
    double centreArea;
    final double[] weight = new double[MAX_POINTS];
    final double[][] strain = new double[MAX_POINTS][STRAINS * MAX_FREEDOMS];
    /** Position and material axes (rows e1, e2, n) of each point; the entry after the last point is the centre. */
    final double[][] position = new double[MAX_POINTS + 1][3];

    final double[][] axes = new double[MAX_POINTS + 1][9];
    /** Components of the two covariant base vectors along e1 and e2, inverted: (r,x) (s,x) (r,y) (s,y). */
    final double[][] inverse = new double[MAX_POINTS + 1][4];

    /** Derivatives of nodal and side functions along e1 and e2. */
    final double[][] nodeX = new double[MAX_POINTS + 1][4];

    final double[][] nodeY = new double[MAX_POINTS + 1][4];
    final double[][] sideX = new double[MAX_POINTS + 1][4];
    final double[][] sideY = new double[MAX_POINTS + 1][4];
    /** Side bow vector per unit normal rotation difference, and the shared side normal. */
    final double[] bow = new double[12];

    final double[] sideNormal = new double[12];
    /** Most natural membrane strains an element has: sides, shear of the middle, bows. */
    static final int NATURAL = 9;

    /** Natural membrane strains as rows on the nodal freedoms. */
    final double[] natural = new double[NATURAL * MAX_FREEDOMS];

    final double[] twist = new double[5];
    /** Membrane strain on the natural strains, 3 rows a point: compatible; its mean; the one used. */
    final double[][] compatible = new double[MAX_POINTS][3 * NATURAL];

    final double[] mean = new double[3 * NATURAL];
    final double[] assumed = new double[3 * NATURAL];
    final double[][] stressShape = new double[MAX_POINTS][12];
    final double[] moments = new double[4 * 16];
    final double[] flexibility = new double[16];
    final double[] compliance = new double[9];
    final double[] shearTies = new double[4 * MAX_FREEDOMS];
    final double[] product = new double[STRAINS * MAX_FREEDOMS];

    /** Number of strain points of the latest element. */
    public int points() {
        return points;
    }

    /** Number of freedoms of the latest element: 24 for a quad, 18 for a triangle. */
    public int freedoms() {
        return freedoms;
    }

    /** Weight of strain point p in m². */
    public double weight(int p) {
        return weight[p];
    }

    /** Strain operator of point p, 9 by {@link #freedoms()}, row-major. Not to be modified; valid until the next call. */
    public double[] strainOperator(int p) {
        return strain[p];
    }

    /** Position of point p on the reference surface (m). Not to be modified. */
    public double[] position(int p) {
        return position[p];
    }

    /** Material axes of point p: e1 (0..2), e2 (3..5) and the surface normal (6..8). Not to be modified. */
    public double[] axes(int p) {
        return axes[p];
    }

    /**
     * Generalised strains at point p.
     *
     * @param p strain point
     * @param displacements nodal displacements of the element: ux, uy, uz (m), rx, ry, rz (rad) for each node
     * @param strains nine values written: εx, εy, γxy, κx, κy, κxy, γxz, γyz, drilling
     */
    public void strainAt(int p, double[] displacements, double[] strains) {
        double[] b = strain[p];
        int n = freedoms;
        // Three sums side by side: one alone waits for its own last addition.
        for (int r = 0; r < STRAINS; r += 3) {
            double first = 0;
            double second = 0;
            double third = 0;
            int at = r * n;
            for (int j = 0; j < n; j++) {
                double u = displacements[j];
                first += b[at + j] * u;
                second += b[at + n + j] * u;
                third += b[at + 2 * n + j] * u;
            }
            strains[r] = first;
            strains[r + 1] = second;
            strains[r + 2] = third;
        }
    }

    /**
     * What a mode's slopes do with membrane forces at point p: with N = (Nx, Ny, Nxy) the density of φᵀK_Gφ is N · these.
     *
     * @param p strain point
     * @param displacements nodal displacements φ of the element
     * @param products three values written: Σ (∂φ/∂x)², Σ (∂φ/∂y)², 2 Σ ∂φ/∂x ∂φ/∂y, summed over the displacements
     */
    public void slopeProducts(int p, double[] displacements, double[] products) {
        java.util.Arrays.fill(products, 0, 3, 0);
        for (int c = 0; c < 3; c++) {
            double dx = 0;
            double dy = 0;
            for (int i = 0; i < freedoms / 6; i++) {
                dx += nodeX[p][i] * displacements[6 * i + c];
                dy += nodeY[p][i] * displacements[6 * i + c];
            }
            products[0] += dx * dx;
            products[1] += dy * dy;
            products[2] += 2 * dx * dy;
        }
    }
}
