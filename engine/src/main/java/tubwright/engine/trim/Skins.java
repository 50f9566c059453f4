// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;

/** The plies of a stack before and behind its core; those of a solid laminate all in the first. */
record Skins(List<List<Layer>> plies, OptionalDouble core) {
    /** A cloth or tape at an angle. */
    record Kind(Material material, double degrees) {
        static Kind of(Layer layer) {
            return new Kind(layer.material(), layer.degrees());
        }
    }

    static Skins of(List<Layer> layers) {
        List<List<Layer>> skins = new ArrayList<>(List.of(new ArrayList<>()));
        double core = 0;
        for (Layer layer : layers) {
            if (layer.role() == LayerRole.CORE) {
                core += layer.thickness();
                skins.add(new ArrayList<>());
            } else if (layer.role() == LayerRole.PLY) {
                skins.getLast().add(layer);
            }
        }
        return new Skins(skins, skins.size() > 1 ? OptionalDouble.of(core) : OptionalDouble.empty());
    }

    boolean solid() {
        return core.isEmpty();
    }

    int count() {
        return plies.stream().mapToInt(List::size).sum();
    }

    /** Plies of each kind, skin by skin. */
    List<Map<Kind, Integer>> composition() {
        return plies.stream().map(Skins::kinds).toList();
    }

    static Map<Kind, Integer> kinds(List<Layer> skin) {
        Map<Kind, Integer> result = new HashMap<>();
        skin.forEach(l -> result.merge(Kind.of(l), 1, Integer::sum));
        return result;
    }

    /** The least share of the fibres in one of 0, 45, -45 and 90, counted within 15 degrees; a cloth counts both ways. */
    double leastShare() {
        double[] main = {0, 45, -45, 90};
        double[] share = new double[4];
        double total = 0;
        for (List<Layer> skin : plies) {
            for (Layer layer : skin) {
                total += layer.thickness();
                boolean cloth = layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
                double[] ways =
                        cloth ? new double[] {layer.degrees(), layer.degrees() + 90} : new double[] {layer.degrees()};
                for (double way : ways) {
                    for (int k = 0; k < 4; k++) {
                        if (Math.abs(Math.IEEEremainder(way - main[k], 180)) <= 15) {
                            share[k] += layer.thickness() / ways.length;
                        }
                    }
                }
            }
        }
        double least = Double.POSITIVE_INFINITY;
        for (double s : share) {
            least = Math.min(least, s / total);
        }
        return least;
    }

    /** The most plies of one direction on one another. */
    static int grouped(List<Layer> layers) {
        int run = 0;
        int most = 0;
        Layer before = layers.getFirst();
        for (Layer layer : layers) {
            boolean ply = layer.role() == LayerRole.PLY;
            boolean same = before.role() == LayerRole.PLY
                    && Math.abs(Math.IEEEremainder(layer.degrees() - before.degrees(), 180)) < 1e-6;
            run = !ply ? 0 : same ? run + 1 : 1;
            most = Math.max(most, run);
            before = layer;
        }
        return most;
    }

    /** The most plies by which a skin differs from another's; a solid laminate is held against both skins together. */
    static int dropped(Skins a, Skins b) {
        if (a.plies.size() != b.plies.size()) {
            return (Math.abs(a.count() - b.count()) + 1) / 2;
        }
        if (a.solid()) {
            return (Math.abs(a.count() - b.count()) + 1) / 2;
        }
        int most = 0;
        for (int i = 0; i < a.plies.size(); i++) {
            most = Math.max(
                    most, Math.abs(a.plies.get(i).size() - b.plies.get(i).size()));
        }
        return most;
    }

    /** By how much cores differ, m; where one has none its end is a matter of its own. */
    static double coreStep(Skins a, Skins b) {
        return a.solid() || b.solid() ? 0 : Math.abs(a.core.getAsDouble() - b.core.getAsDouble());
    }

    /** The fewest plies that a skin has in common with the other's. */
    static int through(Skins a, Skins b) {
        if (a.plies.size() != b.plies.size()) {
            return common(all(a), all(b)) / 2;
        }
        int fewest = Integer.MAX_VALUE;
        for (int i = 0; i < a.plies.size(); i++) {
            int common = common(a.plies.get(i), b.plies.get(i));
            fewest = Math.min(fewest, a.solid() ? common / 2 : common);
        }
        return fewest;
    }

    private static List<Layer> all(Skins s) {
        return s.plies.stream().flatMap(List::stream).toList();
    }

    private static int common(List<Layer> a, List<Layer> b) {
        Map<Kind, Integer> other = kinds(b);
        int sum = 0;
        for (Map.Entry<Kind, Integer> each : kinds(a).entrySet()) {
            sum += Math.min(each.getValue(), other.getOrDefault(each.getKey(), 0));
        }
        return sum;
    }
}
