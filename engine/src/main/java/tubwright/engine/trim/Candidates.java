// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;

/**
 * The buildable stacks a zone may take: the design's own with plies taken out, or laid in beside their like, and cores in
 * stock, as far as the rules allow. Of stacks with the same plies in each skin, in another order only, one is offered: in
 * skins far thinner than the core their order hardly counts.
 */
public final class Candidates {
    /** More orders of plies than this are not tried. */
    private static final int MOST_TRIED = 20_000;

    private record Rule(String name, Predicate<Laminate> kept) {}

    private Candidates() {}

    /**
     * The stacks for a zone, its own first where it keeps the rules.
     *
     * @param zone name, for messages
     * @throws IllegalArgumentException where the rules leave none; the message says which rule is to blame
     */
    public static List<Laminate> of(String zone, Laminate laminate, LayupRules rules) {
        List<Rule> all = rules(laminate, rules);
        List<Laminate> stacks = tried(laminate, rules);
        List<Laminate> kept = kept(stacks, all);
        if (kept.isEmpty()) {
            List<String> blamed = new ArrayList<>();
            for (Rule rule : all) {
                if (!kept(stacks, all.stream().filter(r -> r != rule).toList()).isEmpty()) {
                    blamed.add(rule.name);
                }
            }
            if (blamed.isEmpty()) {
                all.stream().filter(r -> stacks.stream().noneMatch(r.kept)).forEach(r -> blamed.add(r.name));
            }
            throw new IllegalArgumentException("zone '" + zone + "': no stack keeps the layup rules; "
                    + (blamed.isEmpty()
                            ? "they contradict each other: "
                                    + String.join(
                                            ", ", all.stream().map(Rule::name).toList())
                            : "what leaves none is " + String.join(" or ", blamed)));
        }
        return cored(kept, rules);
    }

    /** The plies a patch may keep: its own, and all that are left when some are taken out; never none. */
    public static List<List<Layer>> ofPatch(List<Layer> plies) {
        Set<List<Layer>> result = new LinkedHashSet<>(List.of(plies));
        Set<List<java.util.Map<Skins.Kind, Integer>>> seen = new HashSet<>();
        for (List<Layer> each : List.copyOf(subsets(plies))) {
            if (!each.isEmpty() && seen.add(Skins.of(each).composition())) {
                result.add(each);
            }
        }
        return List.copyOf(result);
    }

    private static List<List<Layer>> subsets(List<Layer> plies) {
        List<List<Layer>> result = new ArrayList<>(List.of(List.of()));
        for (Layer ply : plies) {
            for (List<Layer> each : List.copyOf(result)) {
                if (result.size() < 256) {
                    List<Layer> with = new ArrayList<>(each);
                    with.add(ply);
                    result.add(with);
                }
            }
        }
        return result.reversed();
    }

    private static List<Rule> rules(Laminate own, LayupRules rules) {
        List<Rule> list = new ArrayList<>();
        list.add(new Rule("at least " + rules.fewestPlies() + " plies a skin", l -> enough(l, rules.fewestPlies())));
        if (holds(rules.symmetry(), own.isSymmetric())) {
            list.add(new Rule("symmetry", Laminate::isSymmetric));
        }
        if (holds(rules.balance(), own.isBalanced())) {
            list.add(new Rule("balance", Laminate::isBalanced));
        }
        if (rules.leastShare() > 0) {
            list.add(new Rule(
                    "at least " + Math.round(100 * rules.leastShare())
                            + " % of the fibres in each of 0, 45, -45 and 90",
                    l -> Skins.of(l.layers()).leastShare() >= rules.leastShare() - 1e-9));
        }
        list.add(new Rule(
                "at most " + rules.mostGrouped() + " plies of one direction on one another",
                l -> Skins.grouped(l.layers()) <= rules.mostGrouped()));
        if (rules.keepFaces()) {
            list.add(new Rule(
                    "the outer and inner plies kept",
                    l -> l.layers().getFirst().equals(own.layers().getFirst())
                            && l.layers().getLast().equals(own.layers().getLast())));
        }
        return list;
    }

    private static boolean holds(LayupRules.Demand demand, boolean own) {
        return demand == LayupRules.Demand.REQUIRED || demand == LayupRules.Demand.AS_DESIGNED && own;
    }

    private static boolean enough(Laminate laminate, int fewest) {
        Skins skins = Skins.of(laminate.layers());
        return skins.solid()
                ? skins.count() >= 2 * fewest
                : skins.plies().stream().allMatch(s -> s.size() >= fewest);
    }

    private static List<Laminate> kept(List<Laminate> stacks, List<Rule> rules) {
        Set<List<java.util.Map<Skins.Kind, Integer>>> seen = new HashSet<>();
        List<Laminate> result = new ArrayList<>();
        for (Laminate each : stacks) {
            if (rules.stream().allMatch(r -> r.kept.test(each))
                    && seen.add(Skins.of(each.layers()).composition())) {
                result.add(each);
            }
        }
        return result;
    }

    /** One ply, or mirrored pair of a symmetric stack, after another out of it, or in beside its like. */
    private static List<Laminate> tried(Laminate laminate, LayupRules rules) {
        boolean pairs = laminate.isSymmetric() && rules.symmetry() != LayupRules.Demand.FREE;
        Set<List<Layer>> seen = new LinkedHashSet<>(List.of(laminate.layers()));
        List<List<Layer>> open = new ArrayList<>(seen);
        List<java.util.Map<Skins.Kind, Integer>> own =
                Skins.of(laminate.layers()).composition();
        while (!open.isEmpty() && seen.size() < MOST_TRIED) {
            List<List<Layer>> next = new ArrayList<>();
            for (List<Layer> each : open) {
                int to = pairs ? (each.size() + 1) / 2 : each.size();
                for (int i = 0; i < to; i++) {
                    if (each.get(i).role() != LayerRole.PLY) {
                        continue;
                    }
                    List<Layer> less = new ArrayList<>(each);
                    int twin = each.size() - 1 - i;
                    if (pairs && twin != i) {
                        less.remove(twin);
                    }
                    less.remove(i);
                    add(less, seen, next);
                    if (rules.mostAdded() > 0) {
                        List<Layer> more = new ArrayList<>(each);
                        if (pairs) {
                            more.add(twin, each.get(twin));
                        }
                        more.add(i, each.get(i));
                        if (within(Skins.of(more).composition(), own, rules.mostAdded(), pairs)) {
                            add(more, seen, next);
                        }
                    }
                }
            }
            open = next;
        }
        return seen.stream().map(l -> new Laminate(l, laminate.reference())).toList();
    }

    private static void add(List<Layer> layers, Set<List<Layer>> seen, List<List<Layer>> next) {
        if (layers.stream().anyMatch(l -> l.role() == LayerRole.PLY) && seen.add(layers)) {
            next.add(layers);
        }
    }

    private static boolean within(
            List<java.util.Map<Skins.Kind, Integer>> now,
            List<java.util.Map<Skins.Kind, Integer>> own,
            int added,
            boolean pairs) {
        for (int s = 0; s < now.size(); s++) {
            java.util.Map<Skins.Kind, Integer> was = own.get(s);
            int most = now.size() == 1 && pairs ? 2 * added : added;
            if (now.get(s).entrySet().stream().anyMatch(e -> e.getValue() > was.getOrDefault(e.getKey(), 0) + most)) {
                return false;
            }
        }
        return true;
    }

    private static List<Laminate> cored(List<Laminate> kept, LayupRules rules) {
        Set<Laminate> result = new LinkedHashSet<>(kept);
        for (Laminate each : kept) {
            for (double thickness : rules.coreThicknesses()) {
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
}
