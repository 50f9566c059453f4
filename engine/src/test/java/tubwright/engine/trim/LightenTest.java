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
            new LayupRules(2, Integer.getInteger("tubwright.layups", 0) < 10_000 ? List.of() : List.of(0.01));

    private static Map<String, List<Laminate>> candidates() {
        Map<String, List<Laminate>> result = new TreeMap<>();
        CertificateTest.NOMINAL.zones().forEach((zone, laminate) -> result.put(zone, RULES.thinned(laminate)));
        return result;
    }

    /** The driver's weight, so to speak: down at the front, held at the rear. */
    private static final Case.Bending BENDING = new Case.Bending(
            "bending", TubeOfZones.torsion().hold(), TubeOfZones.torsion().loaded(), new double[] {0, 0, -1000}, 0.3);

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
                Lightened answer = Lighten.lightest(List.of(new Lighten.Target(tub, wanted)), candidates, 60);
                assertEquals(lightest, answer.mass(), 1e-9 * lightest, "target " + share);
                assertTrue(answer.bound() <= lightest && answer.gap() < 2e-6, answer.toString());
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
            Lightened answer = Lighten.lightest(
                    List.of(new Lighten.Target(torsion, twist), new Lighten.Target(bending, bend)), candidates, 60);
            assertEquals(lightest, answer.mass(), 1e-9 * lightest);
            assertTrue(answer.bound() <= lightest && answer.gap() < 2e-6, answer.toString());
            assertTrue(answer.stiffness().getFirst().low() >= twist);
            assertTrue(answer.stiffness().getLast().low() >= bend);
        }
    }

    @Test
    void aTargetOutOfReachIsRefusedWithWhatIsReachable() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            double twice = 2 * tub.stiffness(tub.compliance());
            Exception refused = assertThrows(
                    IllegalArgumentException.class,
                    () -> Lighten.lightest(List.of(new Lighten.Target(tub, twice)), candidates(), 10));
            assertTrue(refused.getMessage().contains("reaches 50.0 %"), refused.getMessage());
        }
    }

    @Test
    void aZoneWithoutCandidatesIsNamed() {
        try (LoadedTub tub = CertificateTest.loaded()) {
            Lighten.Target target = new Lighten.Target(tub, 1);
            Exception refused = assertThrows(
                    IllegalArgumentException.class,
                    () -> Lighten.lightest(List.of(target), Map.of("deck", List.of()), 10));
            assertTrue(refused.getMessage().contains("deck"));
        }
    }

    @Test
    void candidatesKeepToTheRules() {
        for (Laminate nominal : CertificateTest.NOMINAL.zones().values()) {
            List<Laminate> thinned = RULES.thinned(nominal);
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
