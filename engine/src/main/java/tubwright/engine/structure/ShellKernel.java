// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import tubwright.engine.mesh.Mesh;

/**
 * Runs the element routines on the shells of a structure, one element at a time, without allocating. One object per
 * thread.
 */
public final class ShellKernel {
    private final Structure structure;
    private final Mesh mesh;
    private final ShellWorkspace workspace = new ShellWorkspace();
    private final double[] corners = new double[12];
    private final double[] directors = new double[12];
    private final double[] reference = new double[3];
    private final double[] matrix = new double[24 * 24];
    private final double[] displacements = new double[24];
    private final double[] resultants = new double[3 * ShellWorkspace.MAX_POINTS];
    private final double[] strains = new double[ShellWorkspace.STRAINS];

    public ShellKernel(Structure structure) {
        this.structure = structure;
        mesh = structure.mesh();
    }

    /** Writes the stiffness of element {@code e}, n × n row-major, n = 24 or 18, at {@code offset} of the target. */
    void stiffness(int e, double[] target, int offset) {
        strainPoints(e);
        ShellIntegral.integrate(structure.laminate(mesh.elementRegions()[e]), workspace, matrix);
        int n = workspace.freedoms();
        System.arraycopy(matrix, 0, target, offset, n * n);
    }

    /** Writes the stiffness that element {@code e} loses when its laminate becomes another one, n × n row-major. */
    void taken(int e, double[] left, double[] target) {
        strainPoints(e);
        double[] whole = structure.laminate(mesh.elementRegions()[e]);
        double[] loss = new double[whole.length];
        for (int i = 0; i < loss.length; i++) {
            loss[i] = whole[i] - left[i];
        }
        ShellIntegral.integrate(loss, workspace, target);
    }

    /** Writes the consistent mass of element {@code e}, n × n, at {@code offset} of the target. */
    void mass(int e, double[] target, int offset) {
        gather(e);
        int region = mesh.elementRegions()[e];
        double areal = structure.arealMass(region);
        double first = areal * structure.massOffset(region);
        double second = structure.secondMassMoment(region);
        int n = 6 * mesh.cornerCount(e);
        if (mesh.isTriangle(e)) {
            ShellTriangle.mass(corners, directors, areal, first, second, matrix);
        } else {
            ShellQuad.mass(corners, directors, areal, first, second, matrix);
        }
        System.arraycopy(matrix, 0, target, offset, n * n);
    }

    /** Writes the geometric stiffness of element {@code e} under displacements u, n × n, at {@code offset}. */
    void geometricStiffness(int e, double[] u, double[] target, int offset) {
        strainPoints(e);
        displacements(e, u);
        double[] c = structure.laminate(mesh.elementRegions()[e]);
        for (int p = 0; p < workspace.points(); p++) {
            workspace.strainAt(p, displacements, strains);
            for (int i = 0; i < 3; i++) {
                double resultant = 0;
                for (int j = 0; j < 8; j++) {
                    resultant += c[8 * i + j] * strains[j];
                }
                resultants[3 * p + i] = resultant;
            }
        }
        ShellGeometricStiffness.integrate(resultants, workspace, matrix);
        int n = workspace.freedoms();
        System.arraycopy(matrix, 0, target, offset, n * n);
    }

    /**
     * Computes the strain points of element {@code e}.
     *
     * @return weights and strain operators, valid until the next call
     */
    public ShellWorkspace strainPoints(int e) {
        gather(e);
        double[] nominal = structure.nominal(mesh.elementRegions()[e]);
        if (mesh.isTriangle(e)) {
            ShellTriangle.strainPoints(corners, directors, reference, nominal, workspace);
        } else {
            ShellQuad.strainPoints(corners, directors, reference, nominal, workspace);
        }
        return workspace;
    }

    /** The displacements of the element's nodes, in the order of its strain operators; overwritten by the next call. */
    public double[] displacements(int e, double[] u) {
        for (int c = 0; c < mesh.cornerCount(e); c++) {
            System.arraycopy(u, 6 * mesh.elementNodes()[4 * e + c], displacements, 6 * c, 6);
        }
        return displacements;
    }

    /** Strain energy of element {@code e} in J under displacements u. */
    double energy(int e, double[] u) {
        strainPoints(e);
        return energyAtStrainPoints(e, u);
    }

    /** As {@link #energy}, for the element whose strain points were computed last. */
    double energyAtStrainPoints(int e, double[] u) {
        displacements(e, u);
        double[] c = structure.laminate(mesh.elementRegions()[e]);
        double drilling = ShellIntegral.drilling(c);
        double energy = 0;
        for (int p = 0; p < workspace.points(); p++) {
            workspace.strainAt(p, displacements, strains);
            double density = drilling * strains[8] * strains[8];
            for (int i = 0; i < 8; i++) {
                double resultant = 0;
                for (int j = 0; j < 8; j++) {
                    resultant += c[8 * i + j] * strains[j];
                }
                density += resultant * strains[i];
            }
            energy += 0.5 * workspace.weight(p) * density;
        }
        return energy;
    }

    private void gather(int e) {
        int count = mesh.cornerCount(e);
        for (int c = 0; c < count; c++) {
            System.arraycopy(mesh.nodes(), 3 * mesh.elementNodes()[4 * e + c], corners, 3 * c, 3);
        }
        System.arraycopy(mesh.cornerNormals(), 12 * e, directors, 0, 3 * count);
        System.arraycopy(mesh.referenceDirections(), 3 * e, reference, 0, 3);
    }
}
