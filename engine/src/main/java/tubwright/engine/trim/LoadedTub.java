// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.MemberWork;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.ShellKernel;
import tubwright.engine.structure.ShellWorkspace;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.Structure;
import tubwright.numerics.ConstrainedSystem;
import tubwright.numerics.Definiteness;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.Factorisation;

/**
 * A tub under one case, solved and with its factor kept: the nominal state from which changes are judged.
 *
 * <p>Its measure is the compliance c = fᵀu (J), twice the work of the case's loads at the hardpoints they act on. The
 * stiffness that goes with it, load squared over c, is therefore that between loaded and held hardpoints and takes in
 * their inserts and the skin around them; read between skin sections the same tub is stiffer. To be closed after use;
 * not thread-safe.
 */
public final class LoadedTub implements AutoCloseable {
    private static final int STRAINS = ShellWorkspace.STRAINS;

    private final Structure structure;
    private final Case loading;
    private final Layup nominal;
    private final Blocks blocks;
    private final MemberWork members;
    private final double[][] laminates;
    private final double[] loads;
    private final boolean[] fixed;
    private final double[] displacements;
    private final double compliance;
    private final Factorisation factor;
    private final ThreadLocal<ShellKernel> kernels;
    private final boolean[] mirrored;
    private final double sectionStiffness;
    private int substitutions;

    private LoadedTub(Structure structure, Case loading, Layup nominal, DirectSolver solver) {
        this.structure = structure;
        this.loading = loading;
        this.nominal = nominal;
        Mesh mesh = structure.mesh();
        blocks = Blocks.of(mesh);
        members = new MemberWork(structure);
        kernels = ThreadLocal.withInitial(() -> new ShellKernel(structure));
        mirrored = new boolean[mesh.regions().size()];
        for (int r = 0; r < mirrored.length; r++) {
            mirrored[r] = mesh.regions().get(r).mirrored();
        }
        laminates = new double[blocks.all().size()][];
        for (int b = 0; b < laminates.length; b++) {
            laminates[b] = stiffness(nominal, b);
        }
        StaticSolver.LinearSystem system = StaticSolver.system(structure, loading);
        ConstrainedSystem constrained = system.stiffness();
        loads = system.loads().clone();
        fixed = new boolean[loads.length];
        for (int i = 0; i < fixed.length; i++) {
            fixed[i] = constrained.isFixed(i);
            loads[i] = fixed[i] ? 0 : loads[i];
        }
        factor = solver.factorise(constrained.matrix(), Definiteness.POSITIVE_DEFINITE);
        displacements = factor.solve(loads);
        double[] residual = constrained.matrix().multiply(displacements);
        for (int i = 0; i < residual.length; i++) {
            residual[i] = loads[i] - residual[i];
        }
        factor.solveInPlace(residual);
        for (int i = 0; i < residual.length; i++) {
            displacements[i] += residual[i];
        }
        compliance = dot(loads, displacements);
        Solution solution = new Solution(loading, displacements, new double[0], 0.5 * compliance, 0);
        sectionStiffness =
                mesh.regions().stream().anyMatch(r -> r.surface() == tubwright.engine.mesh.Region.Surface.SKIN)
                        ? Study.stiffness(structure, solution)
                        : Double.NaN;
    }

    /**
     * Solves a case and keeps the factor.
     *
     * @param structure the tub's, with the layup's laminates
     * @param loading the case
     * @param nominal layup the structure was built with
     * @param solver backend
     */
    public static LoadedTub solve(Structure structure, Case loading, Layup nominal, DirectSolver solver) {
        return new LoadedTub(structure, loading, nominal, solver);
    }

    /** The structure. */
    public Structure structure() {
        return structure;
    }

    /** The case. */
    public Case loading() {
        return loading;
    }

    /** The layup the tub was solved with. */
    public Layup nominal() {
        return nominal;
    }

    /** Its shells by laminate. */
    public Blocks blocks() {
        return blocks;
    }

    /** c = fᵀu of the nominal tub, J. */
    public double compliance() {
        return compliance;
    }

    /** Stiffness between loaded and held hardpoints for a compliance: N·m/rad in torsion, N/m in bending. */
    public double stiffness(double compliance) {
        double load = switch (loading) {
            case Case.Torsion torsion -> torsion.couple();
            case Case.Bending bending -> Math.hypot(bending.force()[1], bending.force()[2]);
            case Case.Loads loads -> throw new IllegalArgumentException(loads.name() + " has no stiffness");
        };
        return load * load / compliance;
    }

    /** The nominal stiffness between the skin sections of the case's stations, in the same unit. */
    public double sectionStiffness() {
        return sectionStiffness;
    }

    /** Number of back-substitutions made so far. */
    public int substitutions() {
        return substitutions;
    }

    /** Mass of laminates, joints, stiffeners and inserts with a layup, kg. */
    public double mass(Layup layup) {
        double lumps =
                structure.lumpedMasses().stream().mapToDouble(m -> m.mass()).sum();
        return layup.mass(blocks) + lumps;
    }

    /** The parts that are joints, by name. */
    public List<String> joints() {
        List<String> names = new ArrayList<>();
        for (int p = 0; p < structure.parts().size(); p++) {
            Part part = structure.parts().get(p);
            if (part.kind() == Part.Kind.JOINT && members.present(p)) {
                names.add(part.name());
            }
        }
        return names;
    }

    /** How a layup differs in stiffness from the nominal one. */
    Change change(Layup layup) {
        return change(layup, nominal.differences(layup));
    }

    private Change change(Layup layup, List<Owner> owners) {
        SortedMap<Integer, double[]> changed = new TreeMap<>();
        SortedMap<Integer, Double> joints = new TreeMap<>();
        for (Owner owner : owners) {
            if (owner instanceof Owner.Joint(String name)) {
                int part = structure.parts().indexOf(new Part(Part.Kind.JOINT, name));
                if (part < 0) {
                    throw new IllegalArgumentException("there is no joint '" + name + "'");
                }
                joints.put(part, layup.joints().getOrDefault(name, 1.0));
            }
            for (int b = 0; b < laminates.length; b++) {
                if (blocks.all().get(b).carries(owner) && !changed.containsKey(b)) {
                    changed.put(b, stiffness(layup, b));
                }
            }
        }
        return new Change(changed, joints);
    }

    private double[] stiffness(Layup layup, int block) {
        return Constitutive.of(
                layup.laminate(blocks.all().get(block)).stiffness().matrix());
    }

    /** Nominal stiffness of a block, 41 numbers. */
    double[] laminate(int block) {
        return laminates[block];
    }

    double[] loads() {
        return loads;
    }

    /** Displacements of the nominal tub, 6 per node. Not to be modified. */
    public double[] displacements() {
        return displacements;
    }

    MemberWork members() {
        return members;
    }

    /** Overwrites right-hand sides with K₀⁻¹ times them. */
    void substitute(double[][] vectors) {
        factor.solveInPlace(vectors);
        substitutions += vectors.length;
    }

    /** ΔK u of a change, nothing on held unknowns. */
    double[] forces(Change change, double[] u) {
        double[] forces = new double[u.length];
        double[] strain = new double[STRAINS];
        double[] stress = new double[STRAINS];
        ShellKernel kernel = kernels.get();
        int[] nodes = structure.mesh().elementNodes();
        change.laminates().forEach((block, stiffness) -> {
            double[] d = Constitutive.minus(stiffness, laminates[block]);
            for (int e : blocks.elements(block)) {
                ShellWorkspace points = kernel.strainPoints(e);
                double[] local = kernel.displacements(e, u);
                int n = points.freedoms();
                double flip = mirrored[structure.mesh().elementRegions()[e]] ? -1 : 1;
                for (int p = 0; p < points.points(); p++) {
                    points.strainAt(p, local, strain);
                    mirror(strain, 0, flip);
                    java.util.Arrays.fill(stress, 0);
                    for (int k = 0; k < Constitutive.ENTRIES; k++) {
                        stress[Constitutive.ROW[k]] += d[k] * strain[Constitutive.COLUMN[k]];
                    }
                    mirror(stress, 0, flip);
                    double[] operator = points.strainOperator(p);
                    for (int r = 0; r < STRAINS; r++) {
                        double s = points.weight(p) * stress[r];
                        for (int j = 0; j < n; j++) {
                            forces[6 * nodes[4 * e + j / 6] + j % 6] += s * operator[r * n + j];
                        }
                    }
                }
            }
        });
        change.joints().forEach((part, factor) -> members.addForces(part, factor - 1, u, forces));
        for (int i = 0; i < forces.length; i++) {
            if (fixed[i]) {
                forces[i] = 0;
            }
        }
        return forces;
    }

    /**
     * Strain Gramians of a block: for every pair of fields i ≤ j, pairs in rows, the 41 numbers of Σ w ε_i ε_jᵀ in the
     * axes of the right-hand side of the car.
     */
    double[] gramians(int block, double[]... fields) {
        int m = fields.length;
        double[] sums = new double[m * (m + 1) / 2 * Constitutive.ENTRIES];
        double[] strains = new double[m * STRAINS];
        double[] one = new double[STRAINS];
        ShellKernel kernel = kernels.get();
        for (int e : blocks.elements(block)) {
            ShellWorkspace points = kernel.strainPoints(e);
            double flip = mirrored[structure.mesh().elementRegions()[e]] ? -1 : 1;
            for (int p = 0; p < points.points(); p++) {
                double root = Math.sqrt(points.weight(p));
                for (int i = 0; i < m; i++) {
                    points.strainAt(p, kernel.displacements(e, fields[i]), one);
                    mirror(one, 0, flip);
                    for (int r = 0; r < STRAINS; r++) {
                        strains[STRAINS * i + r] = root * one[r];
                    }
                }
                int at = 0;
                for (int i = 0; i < m; i++) {
                    for (int j = i; j < m; j++) {
                        accumulate(strains, STRAINS * i, STRAINS * j, sums, at);
                        at += Constitutive.ENTRIES;
                    }
                }
            }
        }
        return sums;
    }

    /** Gramians of several blocks, side by side. */
    double[][] gramians(int[] of, double[]... fields) {
        double[][] result = new double[of.length][];
        IntStream.range(0, of.length).parallel().forEach(k -> result[k] = gramians(of[k], fields));
        return result;
    }

    private static void accumulate(double[] strains, int i, int j, double[] sums, int at) {
        int k = at;
        for (int r = 0; r < 6; r++) {
            double s = strains[i + r];
            for (int c = 0; c < 6; c++) {
                sums[k++] += s * strains[j + c];
            }
        }
        for (int r = 6; r < 8; r++) {
            sums[k++] += strains[i + r] * strains[j + 6];
            sums[k++] += strains[i + r] * strains[j + 7];
        }
        sums[k] += strains[i + 8] * strains[j + 8];
    }

    /** Across the car γxy, κxy and γyz change sign (and drilling, which only counts squared). */
    private static void mirror(double[] s, int at, double flip) {
        s[at + 2] *= flip;
        s[at + 5] *= flip;
        s[at + 7] *= flip;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    @Override
    public void close() {
        factor.close();
    }
}
