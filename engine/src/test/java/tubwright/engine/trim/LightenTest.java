// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.TubeOfZones;

/** The lightest layup of a small tube against every layup there is, each solved whole. */
class LightenTest {
    /** Seven candidates a zone, 343 layups; -Dtubwright.layups=10000 doubles the candidates. */
    private static final LayupRules RULES =
            LayupRules.of(2, 0, Integer.getInteger("tubwright.layups", 0) < 10_000 ? List.of() : List.of(0.01));

    private static Map<String, List<Laminate>> candidates() {
        Map<String, List<Laminate>> result = new TreeMap<>();
        CertificateTest.NOMINAL
                .zones()
                .forEach((zone, laminate) -> result.put(zone, Candidates.of(zone, laminate, RULES)));
        return result;
    }

    /** The driver's weight, so to speak: down at the front, held at the rear. */
    private static final Case.Bending BENDING = new Case.Bending(
            "bending", TubeOfZones.torsion().hold(), TubeOfZones.torsion().loaded(), new double[] {0, 0, -1000}, 0.3);

    /** Nothing here hangs on the clock. */
    private static final Lighten.Budget AMPLE = new Lighten.Budget(500, 100_000, Double.POSITIVE_INFINITY, 0);

    private static Lightened lightest(List<Lighten.Target> targets, Map<String, List<Laminate>> candidates) {
        List<LoadedTub> tubs = targets.stream().map(Lighten.Target::tub).toList();
        List<Site> sites = new ArrayList<>();
        candidates.forEach((zone, stacks) -> sites.add(new Site(
                new Owner.Zone(zone),
                stacks.stream().<Candidate>map(Candidate.Stack::new).toList())));
        return Lighten.run(LightenProblem.of(tubs, sites, Neighbours.FREE), targets, AMPLE, Lighten.Listener.NONE);
    }

    private record Built(Layup layup, double mass, double stiffness) {}

    private static List<Built> everyLayup(LoadedTub tub, Map<String, List<Laminate>> candidates) {
        List<Layup> layups = List.of(CertificateTest.NOMINAL);
        for (String zone : candidates.keySet()) {
            List<Layup> next = new ArrayList<>();
            for (Layup layup : layups) {
                candidates.get(zone).forEach(l -> next.add(layup.withZone(zone, l)));
            }
            layups = next;
        }
        return layups.stream()
                .map(l -> new Built(l, tub.mass(l), CertificateTest.solvedAnew(l)))
                .toList();
    }

    @Test
    void theLightestLayupIsTheLightestOfAll() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            Map<String, List<Laminate>> candidates = candidates();
            List<Built> all = everyLayup(tub, candidates);
            double nominal = tub.stiffness(tub.compliance());
            for (double share : new double[] {0.9, 0.8, 0.7}) {
                double wanted = share * nominal;
                double lightest = all.stream()
                        .filter(b -> b.stiffness >= wanted)
                        .mapToDouble(Built::mass)
                        .min()
                        .orElseThrow();
                Lightened answer = lightest(List.of(new Lighten.Target(tub, wanted)), candidates);
                assertEquals(lightest, answer.mass(), 1e-9 * lightest, "target " + share);
                assertTrue(answer.bound() <= lightest && answer.gap() < 1e-9, answer.toString());
                double stiffness = CertificateTest.solvedAnew(answer.layup());
                assertTrue(stiffness >= wanted && answer.stiffness().getFirst().contains(stiffness));
                assertEquals(answer.mass(), tub.mass(answer.layup()), 1e-9);
            }
        }
    }

    @Test
    void twoTargetsAreMetTogetherByTheLightestOfAll() {
        Structure structure = CertificateTest.structure(CertificateTest.NOMINAL);
        try (LoadedTub torsion = CertificateTest.loaded(structure, TubeOfZones.torsion());
                LoadedTub bending = CertificateTest.loaded(structure, BENDING)) {
            Map<String, List<Laminate>> candidates = candidates();
            double twist = 0.75 * torsion.stiffness(torsion.compliance());
            double bend = 0.85 * bending.stiffness(bending.compliance());
            double lightest = everyLayup(torsion, candidates).stream()
                    .filter(b -> b.stiffness >= twist)
                    .filter(b -> bending.stiffness(CertificateTest.complianceAnew(b.layup, BENDING)) >= bend)
                    .mapToDouble(Built::mass)
                    .min()
                    .orElseThrow();
            Lightened answer = lightest(
                    List.of(new Lighten.Target(torsion, twist), new Lighten.Target(bending, bend)), candidates);
            assertEquals(lightest, answer.mass(), 1e-9 * lightest);
            assertTrue(answer.bound() <= lightest && answer.gap() < 1e-9, answer.toString());
            assertTrue(answer.stiffness().getFirst().low() >= twist * (1 - 3e-9));
            assertTrue(answer.stiffness().getLast().low() >= bend * (1 - 3e-9));
        }
    }

    /** Every choice of a problem, solved whole: what it weighs and how stiff it is. */
    private static List<int[]> everyChoice(LightenProblem problem) {
        List<int[]> choices = List.of(new int[0]);
        for (Site site : problem.sites()) {
            List<int[]> next = new ArrayList<>();
            for (int[] choice : choices) {
                for (int k = 0; k < site.candidates().size(); k++) {
                    int[] longer = java.util.Arrays.copyOf(choice, choice.length + 1);
                    longer[choice.length] = k;
                    next.add(longer);
                }
            }
            choices = next;
        }
        return choices;
    }

    private static List<Site> sites(Map<String, List<Laminate>> candidates) {
        List<Site> sites = new ArrayList<>();
        candidates.forEach((zone, stacks) -> sites.add(new Site(
                new Owner.Zone(zone),
                stacks.stream().<Candidate>map(Candidate.Stack::new).toList())));
        return sites;
    }

    /** Zones and a patch, rules between neighbours, few stacks, and a demand that is only verified. */
    @Test
    void withRulesPatchesAndDemandsItIsStillTheLightestOfAll() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            List<Site> sites = sites(candidates());
            sites.add(new Site(
                    new Owner.Patch("doubler"),
                    Candidates.ofPatch(CertificateTest.NOMINAL.patchesByName().get("doubler")).stream()
                            .<Candidate>map(Candidate.Plies::new)
                            .toList()));
            Borders borders = new Borders(
                    List.of(new Borders.Pair("deck", "flank"), new Borders.Pair("flank", "floor")), List.of());
            Neighbours neighbours = borders.neighbours(sites, LayupRules.USUAL.withNeighbours(1, 1, 2, 2));
            // Asks for a heavy floor, which no stiffness row knows of.
            LayupCheck check = layup -> List.of(new LayupCheck.Finding(
                    "areal mass of the floor",
                    layup.zones().get("floor").arealMass(),
                    2.5,
                    "floor",
                    List.of(new Owner.Zone("floor"))));
            double nominal = tub.stiffness(tub.compliance());
            LightenProblem problem = LightenProblem.of(List.of(tub), sites, neighbours);
            List<int[]> all = everyChoice(problem);
            double[] stiffness = all.stream()
                    .mapToDouble(c -> CertificateTest.solvedAnew(problem.layup(c)))
                    .toArray();
            for (double share : new double[] {0.92, 0.8, 0.65}) {
                double lightest = Double.POSITIVE_INFINITY;
                double free = Double.POSITIVE_INFINITY;
                for (int i = 0; i < all.size(); i++) {
                    Layup layup = problem.layup(all.get(i));
                    boolean few = layup.zones().values().stream().distinct().count() <= 2;
                    if (stiffness[i] >= share * nominal && neighbours.kept(all.get(i)) && few) {
                        free = Math.min(free, tub.mass(layup));
                        if (check.check(layup).getFirst().met()) {
                            lightest = Math.min(lightest, tub.mass(layup));
                        }
                    }
                }
                List<Lighten.Target> targets = List.of(new Lighten.Target(tub, share * nominal));
                Lightened answer = Lighten.run(problem, targets, check, AMPLE, Lighten.Listener.NONE);
                assertEquals(lightest, answer.mass(), 1e-9 * lightest, "target " + share);
                assertEquals(lightest, answer.bound(), 1e-9 * lightest);
                assertTrue(answer.verified().getFirst().met());
                Lightened without = Lighten.run(problem, targets, AMPLE, Lighten.Listener.NONE);
                assertEquals(free, without.mass(), 1e-9 * free, "without the demand, target " + share);
            }
        }
    }

    @Test
    void theSameBudgetGivesTheSameAnswerAndAnyBoundHolds() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            double wanted = 0.8 * tub.stiffness(tub.compliance());
            List<Lighten.Target> targets = List.of(new Lighten.Target(tub, wanted));
            double lightest = lightest(targets, candidates()).mass();
            for (int nodes : new int[] {0, 1, 3, 10}) {
                Lighten.Budget budget = new Lighten.Budget(6, nodes, Double.POSITIVE_INFINITY, 0);
                Lightened[] twice = new Lightened[2];
                for (int i = 0; i < 2; i++) {
                    twice[i] = Lighten.run(
                            LightenProblem.of(List.of(tub), sites(candidates()), Neighbours.FREE),
                            targets,
                            budget,
                            Lighten.Listener.NONE);
                    assertTrue(twice[i].bound() <= lightest * (1 + 1e-9) && twice[i].mass() >= lightest * (1 - 1e-9));
                    assertTrue(twice[i].solves() <= 6 && twice[i].nodes() <= nodes);
                }
                assertEquals(twice[0].mass(), twice[1].mass());
                assertEquals(twice[0].bound(), twice[1].bound());
                assertEquals(twice[0].layup(), twice[1].layup());
            }
        }
    }

    @Test
    void whoStopsItGetsTheBestSoFarWithItsBound() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            double wanted = 0.8 * tub.stiffness(tub.compliance());
            List<Lighten.Target> targets = List.of(new Lighten.Target(tub, wanted));
            double lightest = lightest(targets, candidates()).mass();
            int[] steps = new int[1];
            Lightened stopped = Lighten.run(
                    LightenProblem.of(List.of(tub), sites(candidates()), Neighbours.FREE),
                    targets,
                    AMPLE,
                    new Lighten.Listener() {
                        @Override
                        public void step(Lightened.Step step) {
                            steps[0]++;
                        }

                        @Override
                        public boolean stop() {
                            return steps[0] >= 2;
                        }
                    });
            assertEquals(Lightened.End.STOPPED, stopped.ended());
            assertTrue(stopped.stiffness().getFirst().high() >= wanted);
            assertTrue(stopped.mass() >= lightest * (1 - 1e-9) && stopped.bound() <= lightest * (1 + 1e-9));
        }
    }

    @Test
    void aTargetOutOfReachIsRefusedWithWhatIsReachable() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            double twice = 2 * tub.stiffness(tub.compliance());
            Exception refused = assertThrows(
                    OutOfReach.class, () -> lightest(List.of(new Lighten.Target(tub, twice)), candidates()));
            assertTrue(refused.getMessage().contains("reaches 50.0 %"), refused.getMessage());
        }
    }

    @Test
    void aZoneWithoutCandidatesIsNamed() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            Lighten.Target target = new Lighten.Target(tub, 1);
            Exception refused = assertThrows(
                    IllegalArgumentException.class, () -> lightest(List.of(target), Map.of("deck", List.of())));
            assertTrue(refused.getMessage().contains("deck"));
        }
    }

    @Test
    void candidatesKeepToTheRules() {
        for (Laminate nominal : CertificateTest.NOMINAL.zones().values()) {
            List<Laminate> thinned = Candidates.of("any", nominal, RULES);
            assertEquals(nominal, thinned.getFirst());
            assertEquals(thinned.size(), thinned.stream().distinct().count());
            for (Laminate each : thinned) {
                assertEquals(nominal.isSymmetric(), each.isSymmetric());
                assertEquals(nominal.layers().getFirst(), each.layers().getFirst());
                assertEquals(nominal.layers().getLast(), each.layers().getLast());
                int core = 0;
                while (each.layers().get(core).role() != LayerRole.CORE) {
                    core++;
                }
                assertTrue(plies(each.layers().subList(0, core)) >= 2);
                assertTrue(plies(each.layers().subList(core, each.layers().size())) >= 2);
            }
            assertFalse(thinned.size() < 6, "few candidates: " + thinned.size());
        }
    }

    private static long plies(List<Layer> layers) {
        return layers.stream().filter(l -> l.role() == LayerRole.PLY).count();
    }
}
