// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;

/** Every entry of a ledger against the tub assembled, factorised and solved anew without the ply. */
class LedgerTest {
    private final Layup nominal = Layup.of(SmallTub.tub());

    @Test
    void everyPlyCoreAndJointIsListedOnceCheapestFirst() {
        try (LoadedTub tub = SmallTub.loaded()) {
            Ledger ledger = Ledger.of(tub);
            // Four zones of six plies and a core, a patch of two plies, three joints.
            assertEquals(4 * 7 + 2 + 3, ledger.entries().size());
            List<LedgerEntry> weighing =
                    ledger.entries().stream().filter(e -> e.mass() > 0).toList();
            assertEquals(ledger.entries().subList(0, 30), weighing);
            for (int i = 1; i < weighing.size(); i++) {
                assertTrue(
                        weighing.get(i - 1).lostPerKilogram() <= weighing.get(i).lostPerKilogram());
            }
        }
    }

    @Test
    void whatAnEntrySaysIsWhatTheTubDoesWithoutThePly() {
        try (LoadedTub tub = SmallTub.loaded()) {
            Ledger ledger = Ledger.of(tub);
            for (LedgerEntry entry : ledger.entries()) {
                assertTrue(entry.firstOrder().low() <= entry.solved().low());
                assertTrue(entry.firstOrder().high() >= entry.solved().high());
                if (entry.owner() instanceof Owner.Joint) {
                    continue;
                }
                Layup without = without(entry);
                double left = tub.stiffness(SmallTub.solvedAnew(without));
                assertTrue(entry.solved().contains(left), entry + " but solved anew " + left);
                double lost = ledger.stiffness() - left;
                assertEquals(lost, entry.lost(), 2e-3 * Math.abs(lost), entry.toString());
                assertEquals(tub.mass(nominal) - tub.mass(without), entry.mass(), 1e-12);
            }
        }
    }

    @Test
    void aJointIsWorthMoreThanNothingAndLessThanAllItsEnergy() {
        try (LoadedTub tub = SmallTub.loaded()) {
            for (LedgerEntry entry : Ledger.of(tub).entries()) {
                if (entry.kind() == LedgerEntry.Kind.JOINT) {
                    assertTrue(entry.lost() > 0, entry.toString());
                    assertTrue(entry.firstOrder().contains(entry.solved().low()));
                }
            }
        }
    }

    private Layup without(LedgerEntry entry) {
        List<Layer> layers = new ArrayList<>(
                switch (entry.owner()) {
                    case Owner.Zone(String name) -> nominal.zones().get(name).layers();
                    case Owner.Patch(String name) -> nominal.patchesByName().get(name);
                    case Owner.Joint _ -> throw new AssertionError();
                });
        Layer layer = layers.get(entry.place() - 1);
        if (entry.kind() == LedgerEntry.Kind.CORE) {
            layers.set(
                    entry.place() - 1,
                    new Layer(layer.material(), layer.thickness() - entry.thickness(), layer.angle(), layer.role()));
        } else {
            layers.remove(entry.place() - 1);
        }
        String name = entry.owner().name();
        return entry.owner() instanceof Owner.Patch
                ? nominal.withPatch(name, layers)
                : nominal.withZone(
                        name, new Laminate(layers, nominal.zones().get(name).reference()));
    }
}
