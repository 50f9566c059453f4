// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.MeshQuality;
import tubwright.engine.mesh.MeshSettings;
import tubwright.engine.mesh.Mesher;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.StrainEnergy;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/** Answers a tub's cases on a few mesh sizes and carries the stiffness to size zero. */
public final class Study {
    /** Mesh sizes of an ordinary run, as multiples of the design's own size, coarsest first. */
    public static final List<Double> USUAL_SIZES = List.of(2.0, Math.sqrt(2), 1.0);

    private final DirectSolver solver;
    private final List<Double> sizes;
    private final Progress progress;
    private final StabilityAsk ask;
    private final StepTimes times = new StepTimes();

    /**
     * @param solver backend
     * @param sizes multiples of the design's mesh size, coarsest first
     * @param progress hears of each step
     */
    public Study(DirectSolver solver, List<Double> sizes, Progress progress) {
        this(solver, sizes, progress, StabilityAsk.NONE);
    }

    /** As {@link #Study(DirectSolver, List, Progress)}, with stability and vibration answered as asked. */
    public Study(DirectSolver solver, List<Double> sizes, Progress progress, StabilityAsk ask) {
        this.ask = ask;
        this.solver = solver;
        this.sizes = List.copyOf(sizes);
        this.progress = progress;
    }

    /** Seconds spent so far, by kind of work. */
    public StepTimes times() {
        return times;
    }

    /**
     * Answers every variant.
     *
     * @throws CancellationException when the progress listener says stop
     * @throws StructureException where the tub cannot carry its cases
     */
    public List<VariantAnswer> answer(List<Tub> variants) {
        List<VariantAnswer> answers = new ArrayList<>();
        for (int v = 0; v < variants.size(); v++) {
            answers.add(answer(variants.get(v), v, variants.size()));
        }
        return answers;
    }

    private VariantAnswer answer(Tub tub, int index, int count) {
        if (tub.cases().isEmpty()) {
            throw new StructureException(
                    "there is no case in variant '" + tub.variant() + "'",
                    "write under \"cases\" what is held and what pushes; \"tubwright check\" tells mass and areas without");
        }
        int steps = sizes.size() * count;
        List<List<Converged.Sample>> samples = new ArrayList<>();
        List<Case> read =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        read.forEach(c -> samples.add(new ArrayList<>()));
        List<Stability> stabilities = new ArrayList<>();
        List<Optional<SheetState>> sheets = List.of();
        Structure structure = null;
        List<Solution> solutions = List.of();
        List<Solution> loads = List.of();
        for (int s = 0; s < sizes.size(); s++) {
            double size = sizes.get(s) * tub.meshSize();
            boolean finest = s == sizes.size() - 1;
            boolean stability = ask.any() && s >= sizes.size() - 2;
            if (read.isEmpty() && !finest && !stability) {
                continue; // load cases are answered on the finest mesh alone
            }
            if (progress.cancelled()) {
                throw new CancellationException("stopped");
            }
            progress.step(tub.variant(), "mesh and solution", size, index * sizes.size() + s, steps);
            long start = System.nanoTime();
            Mesh mesh = mesh(tub, size);
            times.mesh += since(start);
            start = System.nanoTime();
            structure = Structure.of(tub, mesh);
            times.build += since(start);
            List<Case> asked = new ArrayList<>(read);
            boolean bolted = Installation.wanted(tub);
            if ((finest || stability) && !bolted) {
                tub.cases().stream().filter(Case.Loads.class::isInstance).forEach(asked::add);
            }
            List<Solution> solved = asked.isEmpty() ? List.of() : StaticSolver.solve(structure, asked, solver, times);
            solutions = solved.subList(0, read.size());
            loads = solved.subList(read.size(), solved.size());
            if (sheets.isEmpty() && !solutions.isEmpty()) {
                SheetBuckling buckling = new SheetBuckling(tub, structure);
                sheets = solutions.stream()
                        .map(each -> buckling.under(each, solver, times))
                        .toList();
            }
            SkinSections sections = new SkinSections(structure.mesh());
            for (int c = 0; c < solutions.size(); c++) {
                double stiffness = stiffness(solutions.get(c), sections);
                samples.get(c).add(new Converged.Sample(size, structure.unknowns(), stiffness));
            }
            if (stability) {
                Structure loadedOn = bolted ? Structure.fitted(tub, mesh) : structure;
                List<Solution> loaded = bolted ? StaticSolver.solve(loadedOn, tub.cases(), solver, times) : solved;
                Stability found = stability(tub, structure, loadedOn, loaded, size, index * sizes.size() + s, steps);
                Stability before = stabilities.isEmpty() ? found : stabilities.getLast();
                stabilities.add(
                        s > 0 && !stabilities.isEmpty()
                                ? found.against(before, sizes.get(s - 1) / sizes.get(s))
                                : found);
            }
        }
        Optional<Installation> installation = Optional.empty();
        Structure loaded = structure;
        if (Installation.wanted(tub)) {
            installation = Optional.of(Installation.solve(tub, structure.mesh(), solver, times));
            loaded = installation.get().structure();
            loads = installation.get().loads();
        }
        progress.step(tub.variant(), "answers", tub.meshSize(), (index + 1) * sizes.size(), steps);
        long start = System.nanoTime();
        SkinSections sections = new SkinSections(structure.mesh());
        List<CaseAnswer> cases = new ArrayList<>();
        for (int c = 0; c < solutions.size(); c++) {
            cases.add(caseAnswer(tub, structure, sections, solutions.get(c), samples.get(c), sheets.get(c)));
        }
        Mesh mesh = structure.mesh();
        MassAnswer mass = MassRollUp.of(structure);
        Laminate[] laminates = mesh.regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        ReserveTable reserves = Reserves.of(loaded, laminates, loads, tub.strength(), SheetPanels.of(tub, loaded));
        Optional<Solution> bare = solutions.stream()
                .filter(c -> c.solved() instanceof Case.Torsion)
                .findFirst();
        Structure alone = structure;
        Optional<InstalledAnswer> installed =
                installation.map(i -> i.answer(bare, alone, mass.whole().mass()));
        times.answers += since(start);
        return new VariantAnswer(
                tub.variant(),
                tub.construction(),
                mass,
                cases,
                (int) mesh.regions().stream().map(r -> r.piece()).distinct().count(),
                structure.bodies() + structure.bars(),
                structure.jointRuns().stream().mapToInt(r -> r.fasteners()).sum(),
                structure.jointRuns().stream().mapToDouble(r -> r.length()).sum(),
                mesh,
                MeshQuality.of(mesh, tub.shape()),
                reserves,
                stabilities.isEmpty() ? Stability.NONE : stabilities.getLast(),
                installed);
    }

    /** Buckling with all that is bolted on, since loads come in through it; frequencies of the tub alone. */
    private Stability stability(
            Tub tub, Structure alone, Structure loadedOn, List<Solution> solved, double size, int done, int steps) {
        long start = System.nanoTime();
        Consumer<String> told = step -> {
            if (progress.cancelled()) {
                throw new CancellationException("stopped");
            }
            progress.step(tub.variant(), step, size, done, steps);
        };
        StabilityAsk factors = new StabilityAsk(ask.factors(), 0, List.of());
        StabilityAsk frequencies = new StabilityAsk(0, ask.frequencies(), ask.hold());
        Stability buckling = StabilityAnalysis.of(loadedOn, solved, factors, solver, told);
        Stability vibration = StabilityAnalysis.of(alone, List.of(), frequencies, solver, told);
        times.stability += since(start);
        return new Stability(buckling.buckling(), vibration.free(), vibration.held());
    }

    private static double since(long start) {
        return (System.nanoTime() - start) * 1e-9;
    }

    /**
     * Meshes a tub as coarsely as a run does at first and sees whether every case finds what it acts on. Solves nothing.
     *
     * @throws StructureException if one does not
     * @throws tubwright.engine.shape.ShapeException if the tub cannot be meshed
     */
    public static void check(Tub tub) {
        Mesh mesh = mesh(tub, USUAL_SIZES.getFirst() * tub.meshSize());
        Structure bare = Structure.of(tub, mesh);
        Structure loadedOn = Installation.wanted(tub) ? Structure.fitted(tub, mesh) : bare;
        for (Case each : tub.cases()) {
            StaticSolver.check(each instanceof Case.Loads ? loadedOn : bare, List.of(each));
        }
    }

    /**
     * The tub's mesh of one size, finer at its hardpoints.
     *
     * @throws StructureException if the design asks for elements that are too large to follow the tub at all
     */
    public static Mesh mesh(Tub tub, double size) {
        double half = tub.shape().narrowestHalf();
        if (tub.meshSize() > half) {
            throw new StructureException(
                    String.format(
                            Locale.ROOT,
                            "a mesh size of %.0f mm is too coarse for a tub that measures %.0f mm where it is smallest",
                            tub.meshSize() * 1e3,
                            half * 2e3),
                    String.format(Locale.ROOT, "try %.0f mm or less", half * 2e2));
        }
        List<MeshSettings.Spot> spots = tub.hardpoints().stream()
                .map(h -> new MeshSettings.Spot(h.position()[0], h.position()[1], h.position()[2], h.footprintRadius()))
                .toList();
        return Mesher.mesh(
                tub.shape(), tub.layout(), new MeshSettings(tub.meshSize(), spots).refined(tub.meshSize() / size));
    }

    /**
     * Stiffness read between the skin sections at a case's stations: N·m/rad in torsion, N/m in bending.
     *
     * @param structure that was solved
     * @param solution of one case
     */
    public static double stiffness(Structure structure, Solution solution) {
        return stiffness(solution, new SkinSections(structure.mesh()));
    }

    private static double stiffness(Solution solution, SkinSections sections) {
        double[] u = solution.displacements();
        return switch (solution.solved()) {
            case Case.Torsion torsion -> {
                double[] twist = TwistLines.between(sections, u, torsion.frontStation(), torsion.rearStation());
                yield torsion.couple() / (twist[0] - twist[1]);
            }
            case Case.Bending bending -> {
                double[] f = bending.force();
                SkinSections.Motion motion = TwistLines.motion(sections, u, bending.station());
                double force = Math.hypot(f[1], f[2]);
                yield force * force / (f[1] * motion.y() + f[2] * motion.z());
            }
            case Case.Loads loads -> throw new IllegalArgumentException(loads.name() + " has no stiffness");
        };
    }

    private static CaseAnswer caseAnswer(
            Tub tub,
            Structure structure,
            SkinSections sections,
            Solution solution,
            List<Converged.Sample> samples,
            Optional<SheetState> sheet) {
        double[] u = solution.displacements();
        double[] ofElements = StrainEnergy.ofElements(structure, u);
        double[] ofParts = StrainEnergy.ofParts(structure, u, ofElements);
        double whole = solution.work();
        if (!(whole > 0) || Double.isInfinite(whole)) {
            throw new StructureException(
                    "case '" + solution.solved().name() + "': nothing moves under its load, or too much to be a number",
                    "let the load act on hardpoints that are free to move, with a load of ordinary size");
        }
        List<EnergyShare> shares = new ArrayList<>();
        for (int p = 0; p < ofParts.length; p++) {
            shares.add(new EnergyShare(
                    structure.parts().get(p).kind(), structure.parts().get(p).name(), ofParts[p], ofParts[p] / whole));
        }
        shares.sort(Comparator.comparingDouble(EnergyShare::energy).reversed());
        double[] densities = ofElements.clone();
        for (int e = 0; e < densities.length; e++) {
            densities[e] /= structure.mesh().area(e);
        }
        CaseAnswer.Fields fields = new CaseAnswer.Fields(
                java.util.Arrays.copyOf(u, 6 * structure.mesh().nodeCount()), densities);
        Converged stiffness = Richardson.extrapolate(samples);
        String includes = includes(tub);
        return switch (solution.solved()) {
            case Case.Torsion t ->
                new CaseAnswer(
                        t.name(),
                        CaseAnswer.Kind.TORSION,
                        stiffness,
                        t.frontStation(),
                        t.rearStation(),
                        includes,
                        t.couple(),
                        Optional.of(TwistLines.draw(
                                sections,
                                structure.mesh(),
                                u,
                                t.couple(),
                                meanStation(structure, t.loaded()),
                                meanStation(
                                        structure,
                                        t.hold().stream()
                                                .map(Case.Support::hardpoint)
                                                .toList()))),
                        shares,
                        fields,
                        sheet);
            case Case.Bending b ->
                new CaseAnswer(
                        b.name(),
                        CaseAnswer.Kind.BENDING,
                        stiffness,
                        b.station(),
                        b.station(),
                        includes,
                        Math.hypot(b.force()[1], b.force()[2]),
                        Optional.empty(),
                        shares,
                        fields,
                        sheet);
            case Case.Loads l -> throw new IllegalArgumentException(l.name() + " has no stiffness");
        };
    }

    private static double meanStation(Structure structure, List<String> hardpoints) {
        return hardpoints.stream()
                .mapToDouble(name -> structure.positions()[3 * structure.hardpointNode(name)])
                .average()
                .orElse(Double.NaN);
    }

    private static String includes(Tub tub) {
        StringBuilder text = new StringBuilder("skin, walls");
        if (!tub.joints().isEmpty()) {
            text.append(", joints");
        }
        if (!tub.stiffeners().isEmpty()) {
            text.append(", stiffeners");
        }
        // Twist and movement are read from the skin's sections, which insert and dented panel leave behind.
        return text.append("; not the give of inserts and of the skin beside them; no engine, no suspension, no rig")
                .toString();
    }
}
