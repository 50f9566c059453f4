// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Material;

/**
 * What a stack must keep to when plies are taken out of it.
 *
 * @param fewestPlies of each skin of a sandwich, and of each half of a solid laminate
 * @param coreThicknesses stocked, m; a core keeps its own thickness besides
 */
public record LayupRules(int fewestPlies, List<Double> coreThicknesses) {
    /** Two plies a skin, cores as designed. */
    public static final LayupRules USUAL = new LayupRules(2, List.of());

    public LayupRules {
        coreThicknesses = List.copyOf(coreThicknesses);
        if (fewestPlies < 1) {
            throw new IllegalArgumentException("a skin keeps at least one ply");
        }
    }

    /**
     * The stacks a laminate may be thinned to, itself first.
     *
     * <p>Plies leave whole; the outer and the inner face keep their first ply, because it is chosen for its surface. A
     * symmetric laminate stays symmetric and a balanced one balanced. Of stacks with the same plies in each skin, in
     * another order only, one is offered: in skins far thinner than the core their order hardly counts.
     */
    public List<Laminate> thinned(Laminate laminate) {
        List<Layer> layers = laminate.layers();
        boolean symmetric = laminate.isSymmetric();
        boolean balanced = laminate.isBalanced();
        Set<List<Map<Kind, Integer>>> found = new HashSet<>(List.of(composition(layers)));
        Set<Laminate> result = new LinkedHashSet<>(List.of(laminate));
        List<List<Layer>> open = List.of(layers);
        // One ply (or mirrored pair) at a time, so that every number of removals is reached once.
        while (!open.isEmpty()) {
            List<List<Layer>> next = new ArrayList<>();
            for (List<Layer> each : open) {
                for (int i = 1; i < each.size() - 1; i++) {
                    if (each.get(i).role() != LayerRole.PLY || symmetric && i >= each.size() / 2) {
                        continue;
                    }
                    List<Layer> rest = new ArrayList<>(each);
                    if (symmetric) {
                        rest.remove(each.size() - 1 - i);
                    }
                    rest.remove(i);
                    if (enough(rest) && found.add(composition(rest))) {
                        next.add(rest);
                        Laminate thinner = new Laminate(rest, laminate.reference());
                        if (!balanced || thinner.isBalanced()) {
                            result.add(thinner);
                        }
                    }
                }
            }
            open = next;
        }
        for (Laminate each : List.copyOf(result)) {
            for (double thickness : coreThicknesses) {
                List<Layer> cored = each.layers().stream()
                        .map(l -> l.role() == LayerRole.CORE
                                ? new Layer(l.material(), thickness, l.angle(), l.role())
                                : l)
                        .toList();
                result.add(new Laminate(cored, each.reference()));
            }
        }
        return List.copyOf(result);
    }

    private record Kind(Material material, double degrees) {}

    /** How many plies of each kind lie before and behind the core, or in the whole of a solid laminate. */
    private static List<Map<Kind, Integer>> composition(List<Layer> layers) {
        List<Map<Kind, Integer>> skins = new ArrayList<>(List.of(new HashMap<>()));
        for (Layer layer : layers) {
            if (layer.role() == LayerRole.CORE) {
                skins.add(new HashMap<>());
            }
            skins.getLast().merge(new Kind(layer.material(), layer.degrees()), 1, Integer::sum);
        }
        return skins;
    }

    private boolean enough(List<Layer> layers) {
        int core = -1;
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).role() == LayerRole.CORE) {
                core = i;
            }
        }
        long all = plies(layers);
        if (core < 0) {
            return all >= 2L * fewestPlies;
        }
        return plies(layers.subList(0, core)) >= fewestPlies
                && plies(layers.subList(core + 1, layers.size())) >= fewestPlies;
    }

    private static long plies(List<Layer> layers) {
        return layers.stream().filter(l -> l.role() == LayerRole.PLY).count();
    }
}
