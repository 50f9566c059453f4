// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.Reserves;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Buckling;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.numerics.solver.Solvers;

/** What an entry of the ledger protects, against the tub built, solved and checked anew without it. */
class LoadWatchTest {
    private static final Mesh MESH = SmallTub.structure().mesh();

    /** A push down and back on a front leg, held at the rear as in the torsion case. */
    private static final Case.Loads KERB = new Case.Loads(
            "kerb",
            SmallTub.tub().cases().getFirst().hold(),
            List.of(new Case.Force("front leg L", new double[] {-4000, 500, 9000}, new double[3])),
            new double[3],
            "invented");

    private static Laminate[] laminates(Layup layup) {
        return MESH.regions().stream()
                .map(r -> {
                    Laminate whole = layup.laminate(new Blocks.Block(r.zone(), r.patches(), false, 0));
                    return r.mirrored() ? whole.mirrored() : whole;
                })
                .toArray(Laminate[]::new);
    }

    /** Other laminates on the same strain operators, assembled and factorised anew. */
    private static Structure structure(Layup layup) {
        double[][] matrices =
                Arrays.stream(laminates(layup)).map(l -> l.stiffness().matrix()).toArray(double[][]::new);
        return SmallTub.structure().withLaminates(matrices);
    }

    private static List<Solution> solved(Structure structure) {
        return StaticSolver.solve(structure, List.of(KERB), Solvers.pureJava(), new StepTimes());
    }

    private static double lowestReserve(Layup layup, String zone) {
        Structure structure = structure(layup);
        return Reserves.of(structure, laminates(layup), solved(structure), StrengthBasis.USUAL).rows().stream()
                .filter(r -> r.zone().equals(zone) && !r.local())
                .mapToDouble(Reserve::value)
                .min()
                .orElseThrow();
    }

    private static double lowestBuckling(Layup layup) {
        Structure structure = structure(layup);
        return Buckling.solve(structure, solved(structure), 1, 0, Solvers.pureJava())
                .getFirst()
                .modes()
                .getFirst()
                .factor();
    }

    private static Layup without(Layup layup, LedgerEntry entry) {
        Laminate laminate = layup.zones().get(entry.owner().name());
        List<Layer> layers = new ArrayList<>(laminate.layers());
        layers.remove(entry.place() - 1);
        return layup.withZone(entry.owner().name(), new Laminate(layers, laminate.reference()));
    }

    @Test
    void aPlyProtectsWhatTheTubKeepsWithItAndLosesWithoutIt() {
        try (LoadedTub tub = SmallTub.loaded()) {
            Ledger ledger = Ledger.of(
                    tub,
                    Optional.of(new LoadWatch(List.of(KERB), StrengthBasis.USUAL, true, Solvers.pureJava(), _ -> {})));
            assertEquals(List.of("kerb"), ledger.watched());
            List<LedgerEntry> flank = ledger.entries().stream()
                    .filter(e -> e.owner().equals(new Owner.Zone("flank")) && e.kind() == LedgerEntry.Kind.PLY)
                    .sorted(Comparator.comparingInt(LedgerEntry::place))
                    .limit(3)
                    .toList();
            assertEquals(3, flank.size());
            double before = lowestReserve(tub.nominal(), "flank");
            double stable = lowestBuckling(tub.nominal());
            for (LedgerEntry entry : flank) {
                Layup thinner = without(tub.nominal(), entry);
                Guard reserve = entry.lowestReserve().orElseThrow();
                double after = lowestReserve(thinner, "flank");
                assertEquals(before, reserve.before(), 1e-6 * before);
                // The work of the case is known to a thousandth of its change.
                assertEquals(
                        after,
                        reserve.after(),
                        0.02 * Math.abs(after - before),
                        before + " -> " + after + " but " + reserve);
                Guard buckling = entry.lowestBuckling().orElseThrow();
                double unstable = lowestBuckling(thinner);
                assertEquals(stable, buckling.before(), 1e-6 * stable);
                assertTrue(unstable < stable && buckling.after() < stable);
                // To first order: with a third of a skin gone the slope tells more than half of the fall.
                assertEquals(
                        unstable,
                        buckling.after(),
                        0.5 * (stable - unstable),
                        stable + " -> " + unstable + " but " + buckling);
                assertFalse(reserve.what().isEmpty());
            }
            ledger.entries().stream()
                    .filter(e -> e.kind() == LedgerEntry.Kind.JOINT)
                    .forEach(e -> assertTrue(
                            e.reserves().isEmpty() && e.lowestBuckling().isPresent()));
        }
    }

    @Test
    void withoutLoadCasesNothingIsWatched() {
        try (LoadedTub tub = SmallTub.loaded()) {
            Ledger ledger = Ledger.of(tub);
            assertTrue(ledger.watched().isEmpty());
            ledger.entries().forEach(e -> assertTrue(e.lowestReserve().isEmpty()));
        }
    }
}
