// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;

/** The curve of mass against stiffness on a small tube against every layup there is, each solved whole. */
class ExchangeCurveTest {
    private static final LayupRules RULES = LayupRules.USUAL.withFewest(2);
    private static final Lighten.Budget AMPLE = new Lighten.Budget(500, 100_000, Double.POSITIVE_INFINITY, 0);

    private record Built(double mass, double stiffness) {}

    @Test
    void everyPointAndEveryReadingIsWhatEnumerationFinds() {
        TreeMap<String, List<Laminate>> candidates = new TreeMap<>();
        CertificateTest.NOMINAL
                .zones()
                .forEach((zone, laminate) -> candidates.put(zone, Candidates.of(zone, laminate, RULES)));
        List<Site> sites = new ArrayList<>();
        candidates.forEach((zone, stacks) -> sites.add(new Site(
                new Owner.Zone(zone),
                stacks.stream().<Candidate>map(Candidate.Stack::new).toList())));
        try (LoadedTub tub = CertificateTest.loaded()) {
            List<Layup> layups = List.of(CertificateTest.NOMINAL);
            for (String zone : candidates.keySet()) {
                List<Layup> next = new ArrayList<>();
                for (Layup layup : layups) {
                    candidates.get(zone).forEach(l -> next.add(layup.withZone(zone, l)));
                }
                layups = next;
            }
            List<Built> all = layups.stream()
                    .map(l -> new Built(tub.mass(l), CertificateTest.solvedAnew(l)))
                    .toList();
            double nominal = tub.stiffness(tub.compliance());
            List<Double> asked = List.of(0.7 * nominal, 0.8 * nominal, 0.9 * nominal, 3 * nominal);
            ExchangeCurve curve = ExchangeCurve.of(
                    LightenProblem.of(List.of(tub), sites, Neighbours.FREE),
                    tub,
                    asked,
                    List.of(),
                    AMPLE,
                    ExchangeCurve.Listener.NONE);
            // What nothing reaches is left out.
            assertEquals(
                    asked.subList(0, 3),
                    curve.points().stream().map(ExchangeCurve.Point::asked).toList());
            for (ExchangeCurve.Point point : curve.points()) {
                double lightest = all.stream()
                        .filter(b -> b.stiffness >= point.asked())
                        .mapToDouble(Built::mass)
                        .min()
                        .orElseThrow();
                assertEquals(lightest, point.found().mass(), 1e-9 * lightest);
                assertTrue(point.found().bound() <= lightest * (1 + 1e-12));
            }
            for (double share = 0.75; share < 1; share += 0.02) {
                double mass = share * tub.mass(tub.nominal());
                ExchangeCurve.Reading reading = curve.at(mass);
                double stiffest = all.stream()
                        .filter(b -> b.mass <= mass)
                        .mapToDouble(Built::stiffness)
                        .max()
                        .orElse(0);
                assertTrue(stiffest < reading.atMost(), share + ": " + stiffest + " but " + reading);
                reading.stiffest().ifPresent(p -> assertTrue(p.reached().low() <= stiffest * (1 + 1e-9)));
            }
        }
    }
}
