// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.MemberWork;
import tubwright.engine.structure.Part;
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
 * their inserts and the skin around them; read between skin sections the same tub is stiffer. To be closed after use.
 * Safe to use from several threads, which take turns at the factor.
 */
public final class LoadedTub implements AutoCloseable {
    private final Structure structure;
    private final Case loading;
    private final Layup nominal;
    private final Blocks blocks;
    private final MemberWork members;
    private final double[][] laminates;
    private final double[][] inverses;
    private final double[] arealMasses;
    private final double[] loads;
    private final boolean[] fixed;
    private final double[] displacements;
    private final double compliance;
    private final Factorisation factor;
    private final ShellVisits visits;
    private final double sectionStiffness;
    private final AtomicInteger substitutions = new AtomicInteger();

    private LoadedTub(Structure structure, Case loading, Layup nominal, DirectSolver solver) {
        this.structure = structure;
        this.loading = loading;
        this.nominal = nominal;
        Mesh mesh = structure.mesh();
        blocks = Blocks.of(mesh);
        members = new MemberWork(structure);
        visits = new ShellVisits(structure, blocks);
        laminates = new double[blocks.all().size()][];
        inverses = new double[laminates.length][];
        arealMasses = new double[laminates.length];
        for (int b = 0; b < laminates.length; b++) {
            laminates[b] = stiffness(nominal, b);
            inverses[b] = Constitutive.inverse(laminates[b]);
            arealMasses[b] = nominal.laminate(blocks.all().get(b)).arealMass();
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
        sectionStiffness = !(loading instanceof Case.Loads)
                        && mesh.regions().stream()
                                .anyMatch(r -> r.surface() == tubwright.engine.mesh.Region.Surface.SKIN)
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
        return substitutions.get();
    }

    /** Mass of laminates, joints, stiffeners and inserts with a layup, kg. */
    public double mass(Layup layup) {
        double lumps =
                structure.lumpedMasses().stream().mapToDouble(m -> m.mass()).sum();
        return layup.mass(blocks) + lumps;
    }

    /** The same by piece, in the order of their names; joints, stiffeners and inserts count where they are made. */
    public SortedMap<String, Double> massByPiece(Layup layup) {
        SortedMap<String, Double> masses = new TreeMap<>();
        for (int b = 0; b < laminates.length; b++) {
            double areal = arealMass(layup, b);
            blocks.areaByPiece(b).forEach((piece, area) -> masses.merge(piece, area * areal, Double::sum));
        }
        structure.lumpedMasses().forEach(m -> masses.merge(m.piece(), m.mass(), Double::sum));
        return masses;
    }

    private double arealMass(Layup layup, int b) {
        Blocks.Block block = blocks.all().get(b);
        boolean untouched = layup.zones().get(block.zone()) == nominal.zones().get(block.zone())
                && (block.patches().isEmpty() || layup.patches() == nominal.patches());
        return untouched ? arealMasses[b] : layup.laminate(block).arealMass();
    }

    /** Zones, patches and joints that there are on this mesh, each once. */
    List<Owner> owners() {
        List<Owner> owners = new ArrayList<>();
        new TreeSet<>(nominal.zones().keySet()).forEach(zone -> owners.add(new Owner.Zone(zone)));
        nominal.patchesByName().keySet().forEach(patch -> owners.add(new Owner.Patch(patch)));
        owners.removeIf(o -> blocks.area(o) == 0);
        joints().forEach(joint -> owners.add(new Owner.Joint(joint)));
        return owners;
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
            partOf(owner).forEach(part -> joints.put(part, layup.joints().getOrDefault(owner.name(), 1.0)));
            blocksOf(owner).forEach(b -> changed.computeIfAbsent(b, _ -> stiffness(layup, b)));
        }
        return new Change(changed, joints);
    }

    /** The blocks that a zone's laminate or a patch's plies are part of. */
    List<Integer> blocksOf(Owner owner) {
        return IntStream.range(0, laminates.length)
                .filter(b -> blocks.all().get(b).carries(owner))
                .boxed()
                .toList();
    }

    /**
     * The part that a joint is; nothing for a zone or a patch.
     *
     * @throws IllegalArgumentException if there is no such joint
     */
    List<Integer> partOf(Owner owner) {
        if (!(owner instanceof Owner.Joint(String name))) {
            return List.of();
        }
        int part = structure.parts().indexOf(new Part(Part.Kind.JOINT, name));
        if (part < 0) {
            throw new IllegalArgumentException("there is no joint '" + name + "'");
        }
        return List.of(part);
    }

    private double[] stiffness(Layup layup, int block) {
        return Constitutive.of(
                layup.laminate(blocks.all().get(block)).stiffness().matrix());
    }

    /** Nominal stiffness of a block, 41 numbers. */
    double[] laminate(int block) {
        return laminates[block];
    }

    /** Its inverse. */
    double[] inverse(int block) {
        return inverses[block];
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
        synchronized (factor) {
            factor.solveInPlace(vectors);
        }
        substitutions.addAndGet(vectors.length);
    }

    /** ΔK u of a change, nothing on held unknowns. */
    double[] forces(Change change, double[] u) {
        double[] forces = new double[u.length];
        forces(change, Map.of(), u, forces);
        return forces;
    }

    /**
     * Adds ΔK u of a change to forces, nothing on held unknowns.
     *
     * @param weights 41 numbers for each changed block; none counts as nought
     * @return Σ w εᵀ weight ε of the same field over the changed blocks
     */
    double forces(Change change, Map<Integer, double[]> weights, double[] u, double[] forces) {
        double sum = 0;
        double[] nothing = new double[Constitutive.ENTRIES];
        for (Map.Entry<Integer, double[]> each : change.laminates().entrySet()) {
            int block = each.getKey();
            double[] step = Constitutive.minus(each.getValue(), laminates[block]);
            sum += visits.forces(block, step, weights.getOrDefault(block, nothing), u, forces);
        }
        change.joints().forEach((part, factor) -> members.addForces(part, factor - 1, u, forces));
        release(forces);
        return sum;
    }

    /**
     * Strain Gramians of a block: for every pair of fields i ≤ j, pairs in rows, the 41 numbers of Σ w ε_i ε_jᵀ in the
     * axes of the right-hand side of the car.
     */
    double[] gramians(int block, double[]... fields) {
        return visits.gramians(block, fields);
    }

    /** The shells' visits, for what is asked of single blocks. */
    ShellVisits visits() {
        return visits;
    }

    /** Clears what held unknowns would carry. */
    void release(double[] forces) {
        for (int i = 0; i < forces.length; i++) {
            if (fixed[i]) {
                forces[i] = 0;
            }
        }
    }

    /**
     * Strain Gramians of a block between one field and many: for each of the others, in their order, the 41 numbers of
     * Σ w ε_other ε_fieldᵀ.
     */
    double[] gramiansWith(int block, double[] field, List<double[]> others) {
        return visits.gramiansWith(block, field, others);
    }

    /** K₀u of a solved field: what is left of the load when the change and the residual are taken away. */
    double[] nominalForces(Change change, Resolve.Solved solved) {
        double[] forces = forces(change, solved.displacements());
        for (int i = 0; i < forces.length; i++) {
            forces[i] = loads[i] - solved.residual()[i] - forces[i];
        }
        return forces;
    }

    /** Gramians of several blocks, side by side. */
    double[][] gramians(int[] of, double[]... fields) {
        return visits.gramians(of, fields);
    }

    static double dot(double[] a, double[] b) {
        // Four sums side by side: one alone waits for itself.
        double w = 0;
        double x = 0;
        double y = 0;
        double z = 0;
        int i = 0;
        for (; i + 4 <= a.length; i += 4) {
            w += a[i] * b[i];
            x += a[i + 1] * b[i + 1];
            y += a[i + 2] * b[i + 2];
            z += a[i + 3] * b[i + 3];
        }
        for (; i < a.length; i++) {
            w += a[i] * b[i];
        }
        return w + x + (y + z);
    }

    @Override
    public void close() {
        factor.close();
    }
}
