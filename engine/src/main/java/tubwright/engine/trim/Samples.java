// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;

/**
 * The changes whose derivative fields make a reduced basis: real removals, which serve ten times better than the
 * derivatives by single stiffness entries, because a removed ply moves A, B, D and S together.
 */
final class Samples {
    /** Samples of one zone or patch on a tub of few, where each moves much of the answer. */
    private static final int MOST = 8;
    /** The same on a tub of many. */
    private static final int LEAST = 5;
    /** Samples that zones and patches share between those limits: about as dear as six whole solutions. */
    private static final int TOGETHER = 130;

    private Samples() {}

    /** Layups that differ from the nominal one in this owner only. */
    static List<Layup> of(Layup nominal, Owner owner) {
        return switch (owner) {
            case Owner.Zone(String name) -> {
                Laminate laminate = nominal.zones().get(name);
                yield ofLayers(laminate.layers(), 1).stream()
                        .limit(most(nominal))
                        .map(l -> nominal.withZone(name, new Laminate(l, laminate.reference())))
                        .toList();
            }
            case Owner.Patch(String name) ->
                ofLayers(nominal.patchesByName().get(name), 0).stream()
                        .limit(most(nominal))
                        .map(l -> nominal.withPatch(name, l))
                        .toList();
            case Owner.Joint(String name) -> List.of(nominal.withJoint(name, 0.5));
        };
    }

    private static int most(Layup nominal) {
        int owners = nominal.zones().size() + nominal.patchesByName().size();
        return Math.clamp(TOGETHER / Math.max(1, owners), LEAST, MOST);
    }

    private static List<List<Layer>> ofLayers(List<Layer> layers, int least) {
        int core = layers.size();
        for (int i = 0; i < layers.size(); i++) {
            if (layers.get(i).role() == LayerRole.CORE) {
                core = i;
            }
        }
        boolean solid = core == layers.size();
        int middle = solid ? layers.size() / 2 : core;
        List<Integer> outer = kinds(layers, 0, middle);
        List<Integer> inner = kinds(layers, solid ? middle : core + 1, layers.size());
        Set<List<Layer>> result = new LinkedHashSet<>();
        // The most telling first: there may be no room for all.
        if (!solid) {
            result.add(thinner(layers, core, 0.75));
        }
        for (int k = 0; k < Math.max(outer.size(), inner.size()); k++) {
            for (List<Integer> skin : List.of(outer, inner)) {
                if (k < skin.size()) {
                    result.add(without(layers, Set.of(skin.get(k))));
                }
            }
        }
        if (outer.size() > 1) {
            result.add(without(layers, Set.copyOf(outer)));
        }
        if (inner.size() > 1) {
            result.add(without(layers, Set.copyOf(inner)));
        }
        if (!solid) {
            result.add(thinner(layers, core, 0.5));
        }
        Set<Integer> all = new HashSet<>(outer);
        all.addAll(inner);
        result.add(without(layers, all));
        return result.stream()
                .filter(l -> l.stream().filter(x -> x.role() != LayerRole.FILM).count() >= least)
                .toList();
    }

    /** First layer of each material and angle, films and cores apart. */
    private static List<Integer> kinds(List<Layer> layers, int from, int to) {
        record Kind(String material, double degrees) {}
        Set<Kind> seen = new HashSet<>();
        List<Integer> result = new ArrayList<>();
        for (int i = from; i < to; i++) {
            Layer layer = layers.get(i);
            boolean ply = layer.role() == LayerRole.PLY || layer.role() == LayerRole.SHEET;
            if (ply && seen.add(new Kind(layer.material().name(), layer.degrees()))) {
                result.add(i);
            }
        }
        return result;
    }

    private static List<Layer> without(List<Layer> layers, Set<Integer> places) {
        List<Layer> rest = new ArrayList<>();
        for (int i = 0; i < layers.size(); i++) {
            if (!places.contains(i)) {
                rest.add(layers.get(i));
            }
        }
        return rest;
    }

    private static List<Layer> thinner(List<Layer> layers, int core, double factor) {
        List<Layer> result = new ArrayList<>(layers);
        Layer was = layers.get(core);
        result.set(core, new Layer(was.material(), factor * was.thickness(), was.angle(), was.role()));
        return result;
    }
}
