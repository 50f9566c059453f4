// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.damage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.response.PlaceReserves;
import tubwright.engine.response.Progress;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.Study;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.strength.KnockDowns;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.SolvedCases;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Tearing;
import tubwright.engine.structure.Torn;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;
import tubwright.numerics.multifrontal.LocalInverses;

/**
 * A tub solved once, from which any patch can be taken away: its stiffness cases on the bare tub, its load cases with all
 * that is bolted on. Every patch is exact for the finite-element model (see {@link Redistribution}); nothing is solved anew.
 */
public final class DamageModel {
    private final Tub tub;
    private final Structure structure;
    private final Patches patches;
    private final List<Part> parts = new ArrayList<>();
    private final Map<String, Double> stiffness = new LinkedHashMap<>();
    private final PlaceReserves sound;
    private final PlaceReserves bruised;
    private final PlaceReserves weakened;
    private final Weakened[] left;
    /** One field a case for each thread. */
    private final ThreadLocal<Map<Integer, double[]>> scratch = ThreadLocal.withInitial(HashMap::new);

    /** Cases on one structure. */
    private record Part(
            SolvedCases solved,
            Tearing tearing,
            List<Redistribution> ways,
            List<Redistribution> refined,
            List<LocalInverses> inverses) {}

    private DamageModel(Tub tub, double size, DirectSolver solver) {
        this.tub = tub;
        if (tub.cases().isEmpty()) {
            throw new StructureException(
                    "there is no case in variant '" + tub.variant() + "'",
                    "write under \"cases\" what is held and what pushes");
        }
        structure = Structure.of(tub, Study.mesh(tub, size));
        patches = new Patches(structure);
        List<Case> read =
                tub.cases().stream().filter(c -> !(c instanceof Case.Loads)).toList();
        List<Case> loads =
                tub.cases().stream().filter(Case.Loads.class::isInstance).toList();
        Structure loaded = structure.with(tub.fittings());
        if (loaded == structure) {
            add(structure, tub.cases(), solver);
        } else {
            add(structure, read, solver);
            add(loaded, loads, solver);
        }
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        StrengthBasis basis = tub.strength();
        left = Arrays.stream(laminates).map(Weakened::of).toArray(Weakened[]::new);
        sound = new PlaceReserves(structure, laminates, basis);
        bruised = new PlaceReserves(structure, laminates, with(basis, KnockDowns.BARELY_VISIBLE_DAMAGE));
        weakened = new PlaceReserves(
                structure,
                Arrays.stream(left).map(Weakened::layers).toArray(Laminate[]::new),
                with(basis, KnockDowns.OPEN_HOLE),
                false);
    }

    private static StrengthBasis with(StrengthBasis basis, KnockDown more) {
        return new StrengthBasis(
                basis.unidirectional(),
                basis.cloth(),
                basis.knockDown().and(more),
                basis.inSitu(),
                basis.serviceTemperature(),
                basis.gaps());
    }

    private void add(Structure on, List<Case> cases, DirectSolver solver) {
        if (cases.isEmpty()) {
            return;
        }
        SolvedCases solved = SolvedCases.of(on, cases, solver, new StepTimes());
        solved.solutions().stream()
                .filter(s -> !(s.solved() instanceof Case.Loads))
                .forEach(s -> stiffness.put(s.solved().name(), Study.stiffness(on, s)));
        parts.add(new Part(
                solved,
                new Tearing(on, solved.diagonal()),
                solved.bases().stream().map(b -> new Redistribution(solved, b)).toList(),
                solved.bases().stream()
                        .map(b -> new Redistribution(solved, b, true))
                        .toList(),
                solved.bases().stream().map(b -> LocalInverses.of(b.matrix())).toList()));
    }

    /**
     * Solves a tub.
     *
     * @param size mesh size, m
     * @throws StructureException where the tub cannot carry its cases as it is
     */
    public static DamageModel of(Tub tub, double size, DirectSolver solver) {
        return new DamageModel(tub, size, solver);
    }

    /** The bare tub. */
    public Structure structure() {
        return structure;
    }

    /** Finds patches on it. */
    public Patches patches() {
        return patches;
    }

    /** The tub. */
    public Tub tub() {
        return tub;
    }

    /** What a hole in place of a patch does beyond its border; solved anew. */
    public Aftermath aftermath(Patch patch, DirectSolver solver) {
        return Aftermath.of(tub, structure.with(tub.fittings()), patch, solver);
    }

    /** Takes one patch away, to the last digit: what its border lacks for balance is looked up and put right. */
    public PatchAnswer answer(Patch patch, Degree degree) {
        return answer(List.of(patch), degree, true, Progress.silent()).getFirst();
    }

    /**
     * Takes patches away, each by itself; where little is left to carry, displacements are good to some 1e-7.
     *
     * @param progress hears how many are done
     * @return one a patch, in their order
     * @throws CancellationException when the progress listener says stop
     */
    public List<PatchAnswer> answer(List<Patch> where, Degree degree, Progress progress) {
        return answer(where, degree, false, progress);
    }

    private List<PatchAnswer> answer(List<Patch> where, Degree degree, boolean refined, Progress progress) {
        Collected[] collected = new Collected[where.size()];
        for (int k = 0; k < collected.length; k++) {
            collected[k] = new Collected();
        }
        AtomicInteger done = new AtomicInteger();
        int all = where.size() * parts.size();
        for (Part part : parts) {
            Torn[] torn = where.parallelStream().map(p -> torn(part, p, degree)).toArray(Torn[]::new);
            int[][] beside =
                    where.parallelStream().map(p -> looked(part, p, degree)).toArray(int[][]::new);
            for (int b = 0; b < part.ways().size(); b++) {
                Redistribution way = (refined ? part.refined() : part.ways()).get(b);
                boolean loads = part.solved().bases().get(b).held().stream()
                        .flatMap(h -> h.cases().stream())
                        .anyMatch(c -> part.solved().solutions().get(c).solved() instanceof Case.Loads);
                List<LocalInverses.Place> places = new ArrayList<>();
                for (int k = 0; k < torn.length; k++) {
                    int[] read = loads ? part.tearing().nodesOf(beside[k]) : new int[0];
                    if (refined) {
                        read = IntStream.concat(
                                        IntStream.of(read),
                                        IntStream.of(part.tearing().joined(torn[k].nodes())))
                                .sorted()
                                .distinct()
                                .toArray();
                    }
                    places.add(Redistribution.place(torn[k], read));
                }
                part.inverses().get(b).visit(places, (k, inverse) -> {
                    if (progress.cancelled()) {
                        throw new CancellationException("stopped");
                    }
                    List<Redistribution.Outcome> outcomes = way.of(torn[k], places.get(k), inverse);
                    collect(part, where.get(k), degree, torn[k], beside[k], places.get(k), outcomes, collected[k]);
                    int now = done.incrementAndGet();
                    if (now % 50 == 0 || now == all) {
                        progress.step(tub.variant(), "patches", tub.meshSize(), now, all);
                    }
                });
            }
        }
        List<PatchAnswer> answers = new ArrayList<>();
        for (int k = 0; k < collected.length; k++) {
            Collected c = collected[k];
            answers.add(new PatchAnswer(where.get(k), degree, c.lost, c.stiffness, c.loads));
        }
        return answers;
    }

    private static final class Collected {
        private final Map<String, Double> lost = new LinkedHashMap<>();
        private final List<PatchAnswer.Stiffness> stiffness = new ArrayList<>();
        private final List<PatchAnswer.UnderLoad> loads = new ArrayList<>();
    }

    private Torn torn(Part part, Patch patch, Degree degree) {
        return switch (degree) {
            case HOLE -> part.tearing().tear(patch.elements());
            case VISIBLE -> part.tearing().soften(patch.elements(), r -> left[r].stiffness());
            case BARELY_VISIBLE ->
                part.tearing().soften(patch.elements(), part.solved().structure()::laminate);
        };
    }

    /** Elements looked at: those beside a hole; on and beside a patch that is weakened; on one that is bruised. */
    private static int[] looked(Part part, Patch patch, Degree degree) {
        if (degree == Degree.BARELY_VISIBLE) {
            return patch.elements();
        }
        int[] beside = part.tearing().beside(patch.elements());
        if (degree == Degree.HOLE) {
            return beside;
        }
        TreeSet<Integer> both = new TreeSet<>();
        Arrays.stream(patch.elements()).forEach(both::add);
        Arrays.stream(beside).forEach(both::add);
        return both.stream().mapToInt(e -> e).toArray();
    }

    private void collect(
            Part part,
            Patch patch,
            Degree degree,
            Torn torn,
            int[] looked,
            LocalInverses.Place place,
            List<Redistribution.Outcome> outcomes,
            Collected into) {
        torn.parts().forEach((p, share) -> into.lost.merge(p.name(), share, Math::max));
        List<Redistribution.Outcome> loads = new ArrayList<>();
        for (Redistribution.Outcome each : outcomes) {
            Case solved = part.solved().solutions().get(each.index()).solved();
            switch (solved) {
                case Case.Loads _ -> loads.add(each);
                case Case.Torsion t -> into.stiffness.add(stiffness(t.name(), true, t.couple(), each));
                case Case.Bending b ->
                    into.stiffness.add(stiffness(
                            b.name(),
                            false,
                            Math.sqrt(b.force()[0] * b.force()[0]
                                    + b.force()[1] * b.force()[1]
                                    + b.force()[2] * b.force()[2]),
                            each));
            }
        }
        if (!loads.isEmpty()) {
            into.loads.addAll(new LoadsAt(part.solved(), patch, degree, looked, place, loads).answers());
        }
    }

    private PatchAnswer.Stiffness stiffness(String name, boolean torsion, double load, Redistribution.Outcome outcome) {
        double before = stiffness.get(name);
        double after = outcome.loose() ? 0 : 1 / (1 / before + outcome.moreWork() / (load * load));
        return new PatchAnswer.Stiffness(name, torsion, before, after);
    }

    /** The load cases at one patch. */
    private final class LoadsAt {
        private final SolvedCases solved;
        private final Patch patch;
        private final Degree degree;
        private final int[] looked;
        private final LocalInverses.Place place;
        private final List<Redistribution.Outcome> outcomes;

        LoadsAt(
                SolvedCases solved,
                Patch patch,
                Degree degree,
                int[] looked,
                LocalInverses.Place place,
                List<Redistribution.Outcome> outcomes) {
            this.solved = solved;
            this.patch = patch;
            this.degree = degree;
            this.looked = looked;
            this.place = place;
            this.outcomes = outcomes;
        }

        List<PatchAnswer.UnderLoad> answers() {
            List<String> names = outcomes.stream()
                    .map(o -> solved.solutions().get(o.index()).solved().name())
                    .toList();
            List<double[]> before = outcomes.stream()
                    .map(o -> solved.solutions().get(o.index()).displacements())
                    .toList();
            var reservesBefore = sound.lowest(looked, names, before);
            var reservesAfter = after(names);
            List<PatchAnswer.UnderLoad> answers = new ArrayList<>();
            for (int c = 0; c < outcomes.size(); c++) {
                Redistribution.Outcome each = outcomes.get(c);
                answers.add(new PatchAnswer.UnderLoad(
                        names.get(c),
                        reservesBefore.get(c),
                        each.loose() ? Optional.empty() : reservesAfter.get(c),
                        Arrays.stream(each.dropped())
                                .mapToObj(i -> solved.structure().nameAt(i / 6))
                                .filter(n -> !n.isEmpty())
                                .distinct()
                                .toList(),
                        each.loose()));
            }
            return answers;
        }

        private List<Optional<Reserve>> after(List<String> names) {
            List<double[]> fields = new ArrayList<>();
            for (int c = 0; c < outcomes.size(); c++) {
                fields.add(field(outcomes.get(c), c));
            }
            return switch (degree) {
                case HOLE -> sound.lowest(looked, names, fields);
                case BARELY_VISIBLE -> bruised.lowest(looked, names, fields);
                case VISIBLE -> {
                    int[] beside = Arrays.stream(looked)
                            .filter(e -> Arrays.binarySearch(patch.elements(), e) < 0)
                            .toArray();
                    var around = sound.lowest(beside, names, fields);
                    var within = weakened.lowest(patch.elements(), names, fields);
                    List<Optional<Reserve>> lower = new ArrayList<>();
                    for (int c = 0; c < names.size(); c++) {
                        lower.add(PlaceReserves.lower(around.get(c), within.get(c)));
                    }
                    yield lower;
                }
            };
        }

        /** Displacements with the damage at the nodes read; elsewhere anything. */
        private double[] field(Redistribution.Outcome outcome, int c) {
            if (degree == Degree.BARELY_VISIBLE) {
                return solved.solutions().get(outcome.index()).displacements();
            }
            double[] u = scratch.get()
                    .computeIfAbsent(c, _ -> new double[solved.structure().unknowns()]);
            for (int i = 0; i < place.read().length && !outcome.loose(); i++) {
                System.arraycopy(outcome.movement(), 6 * i, u, 6 * place.read()[i], 6);
            }
            return u;
        }
    }
}
