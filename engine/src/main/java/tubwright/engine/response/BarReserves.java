// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.joint.BarStrength;
import tubwright.engine.strength.Check;
import tubwright.engine.strength.KnockDown;
import tubwright.engine.structure.BarForce;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.Structure;

/** Reserves of bars: the tubes bolted on, the stiffeners along the sheet and what the folds of buckled sheet do to those. */
final class BarReserves {
    private final Structure structure;
    private final SheetPanels sheets;
    private final List<Set<Integer>> nodesOfPanels;

    BarReserves(Structure structure, SheetPanels sheets) {
        this.structure = structure;
        this.sheets = sheets;
        nodesOfPanels = sheets.panels().stream()
                .map(p -> nodes(structure, p.elements()))
                .toList();
    }

    private static Set<Integer> nodes(Structure structure, int[] elements) {
        Set<Integer> nodes = new HashSet<>();
        for (int e : elements) {
            for (int c = 0; c < structure.mesh().cornerCount(e); c++) {
                nodes.add(structure.mesh().elementNodes()[4 * e + c]);
            }
        }
        return nodes;
    }

    private record Key(String name, String mode) {}

    private record Worst(BarForce at, Check.Reserve check) {}

    /**
     * Adds the worst of each check over each tube and stiffener.
     *
     * @param stresses mean shear stress of each panel of sheet in the case, Pa
     */
    void add(String load, double[] u, double[] stresses, List<Reserve> rows, Set<Check.NotChecked> notChecked) {
        Map<Key, Worst> worst = new LinkedHashMap<>();
        Map<Integer, Map<BarStrength, Check>> folds = new HashMap<>();
        boolean tubes = false;
        for (BarForce bar : structure.barForces(u)) {
            if (bar.part().kind() != Part.Kind.TUBE && bar.part().kind() != Part.Kind.STIFFENER) {
                continue;
            }
            boolean alone = bar.part().kind() == Part.Kind.TUBE;
            tubes |= alone;
            if (bar.strength().isEmpty()) {
                notChecked.add(new Check.NotChecked(bar.part().name(), List.of("the metal and size of its section")));
                continue;
            }
            BarStrength strength = bar.strength().get();
            keep(
                    bar,
                    strength.checks(bar.load(), alone ? Optional.of(bar.length()) : Optional.empty()),
                    worst,
                    notChecked);
            for (int p = 0; p < stresses.length && !alone; p++) {
                var panel = sheets.panels().get(p).shear();
                double tau = Math.abs(stresses[p]);
                if (tau > panel.bucklingStress()
                        && nodesOfPanels.get(p).contains(bar.nodes()[0])
                        && nodesOfPanels.get(p).contains(bar.nodes()[1])) {
                    Check check = folds.computeIfAbsent(p, k -> new HashMap<>())
                            .computeIfAbsent(strength, s -> s.crippling(panel, tau));
                    keep(bar, List.of(check), worst, notChecked);
                }
            }
        }
        if (tubes) {
            notChecked.add(new Check.NotChecked(
                    "welds of tubes", List.of("tests or data of the welded joint: tubes are judged as drawn")));
        }
        worst.forEach((key, found) -> rows.add(new Reserve(
                load,
                key.mode(),
                "",
                false,
                key.name(),
                "",
                found.at().place(),
                found.check().reserveFactor(),
                KnockDown.NONE.name(),
                false,
                0,
                found.check().basis())));
    }

    private static void keep(
            BarForce bar, List<Check> checks, Map<Key, Worst> worst, Set<Check.NotChecked> notChecked) {
        for (Check check : checks) {
            switch (check) {
                case Check.NotChecked not -> notChecked.add(not);
                case Check.Reserve made -> {
                    if (made.reserveFactor() < Double.POSITIVE_INFINITY) {
                        worst.merge(
                                new Key(bar.part().name(), made.mode()),
                                new Worst(bar, made),
                                (a, b) -> b.check().reserveFactor() < a.check().reserveFactor() ? b : a);
                    }
                }
            }
        }
    }
}
