// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.trim.LayupRules.Demand;

/** Buildable stacks, what empties a zone of them, and what neighbours allow each other. */
class RulesTest {
    private static final Laminate OWN = CertificateTest.NOMINAL.zones().get("floor");

    private static LayupRules rules(Demand balance, double share, int grouped, int fewest) {
        LayupRules u = LayupRules.USUAL;
        return new LayupRules(
                fewest,
                0,
                List.of(),
                u.symmetry(),
                balance,
                share,
                grouped,
                true,
                u.mostDropped(),
                u.mostCoreStep(),
                0,
                u.mostStacks(),
                false,
                false);
    }

    @Test
    void theRuleThatLeavesNothingIsNamed() {
        Laminate lopsided = CertificateTest.NOMINAL.zones().get("flank");
        assertEmpties(lopsided, rules(Demand.AS_DESIGNED, 0.4 / 2, 4, 4), "20 % of the fibres");
        assertEmpties(OWN, rules(Demand.AS_DESIGNED, 0, 4, 9), "at least 9 plies a skin");
        // Tape at 30° goes with -30°; keeping four plies a skin keeps it in.
        assertEmpties(lopsided, rules(Demand.REQUIRED, 0, 4, 4), "balance or at least");
    }

    private static void assertEmpties(Laminate laminate, LayupRules rules, String words) {
        Exception refused = assertThrows(IllegalArgumentException.class, () -> Candidates.of("flank", laminate, rules));
        assertTrue(refused.getMessage().contains("zone 'flank'"), refused.getMessage());
        for (String word : words.split(" or ")) {
            assertTrue(refused.getMessage().contains(word), refused.getMessage());
        }
    }

    @Test
    void stacksKeepEveryRule() {
        List<Laminate> thinned = Candidates.of("floor", OWN, rules(Demand.AS_DESIGNED, 0.1, 1, 2));
        assertFalse(thinned.isEmpty());
        for (Laminate each : thinned) {
            assertTrue(each.isSymmetric() && each.isBalanced());
            assertTrue(Skins.of(each.layers()).leastShare() >= 0.1);
            for (int i = 1; i < each.layers().size(); i++) {
                Layer before = each.layers().get(i - 1);
                Layer layer = each.layers().get(i);
                boolean plies = before.role() == LayerRole.PLY && layer.role() == LayerRole.PLY;
                assertFalse(plies && before.degrees() == layer.degrees(), "two of one direction");
            }
        }
    }

    @Test
    void pliesMayComeOnTopWhereTheRulesSaySo() {
        List<Laminate> stacks = Candidates.of("floor", OWN, LayupRules.of(2, 1, List.of(0.01)));
        double own = OWN.arealMass();
        assertTrue(stacks.stream().anyMatch(l -> l.arealMass() > own * 1.05));
        int most = stacks.stream()
                .mapToInt(l -> Skins.of(l.layers()).plies().getFirst().size())
                .max()
                .orElseThrow();
        // One more of each of 45 cloth, 0 cloth and 0 tape than the four there are.
        assertEquals(7, most);
        assertEquals(OWN, stacks.getFirst());
    }

    @Test
    void neighboursDropNoMoreThanTheyMayAndKeepWhatRunsThrough() {
        List<Laminate> stacks = Candidates.of("floor", OWN, LayupRules.of(1, 0, List.of(0.01)));
        Site a = new Site(
                new Owner.Zone("a"),
                stacks.stream().<Candidate>map(Candidate.Stack::new).toList());
        Site b = new Site(new Owner.Zone("b"), a.candidates());
        Borders borders = new Borders(List.of(new Borders.Pair("a", "b")), List.of());
        LayupRules rules = LayupRules.USUAL.withNeighbours(1, 0.005, 1, 9);
        Neighbours neighbours = borders.neighbours(List.of(a, b), rules);
        assertEquals(9, neighbours.mostStacks());
        boolean[][] together = neighbours.pairs().getFirst().together();
        int forbidden = 0;
        for (int i = 0; i < stacks.size(); i++) {
            for (int j = 0; j < stacks.size(); j++) {
                long less = Math.abs(
                        outer(stacks.get(i)).size() - outer(stacks.get(j)).size());
                List<Layer> common = new ArrayList<>(outer(stacks.get(i)));
                List<Layer> rest = new ArrayList<>(outer(stacks.get(j)));
                common.removeIf(l -> !rest.remove(l));
                double step = Math.abs(core(stacks.get(i)) - core(stacks.get(j)));
                assertEquals(less <= 1 && step <= 0.005 + 1e-9 && !common.isEmpty(), together[i][j]);
                forbidden += together[i][j] ? 0 : 1;
            }
        }
        assertTrue(forbidden > 0);
    }

    private static List<Layer> outer(Laminate laminate) {
        return laminate.layers().stream()
                .takeWhile(l -> l.role() != LayerRole.CORE)
                .filter(l -> l.role() == LayerRole.PLY)
                .toList();
    }

    private static double core(Laminate laminate) {
        return laminate.layersWith(LayerRole.CORE).getFirst().thickness();
    }

    @Test
    void zonesOfOnePieceMeetAndWallsStandAlone() {
        Borders borders = Borders.of(SmallTub.structure().mesh());
        assertEquals(List.of(new Borders.Pair("flank", "floor")), borders.pairs());
        assertEquals(List.of("deck", "walls"), borders.alone());
    }
}
