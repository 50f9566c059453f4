// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.mesh.Mesh;

/**
 * Where zones meet within a piece, so that plies may run from one into the other; found from the edges their elements
 * share. Across a joint no ply runs, and no rule holds.
 *
 * @param pairs names of zones that meet, each pair once, in alphabetical order
 * @param alone zones without a neighbour in their piece
 */
public record Borders(List<Pair> pairs, List<String> alone) {
    public Borders {
        pairs = List.copyOf(pairs);
        alone = List.copyOf(alone);
    }

    /** Two zones that meet. */
    public record Pair(String a, String b) {}

    /** The borders of a mesh. */
    public static Borders of(Mesh mesh) {
        record Edge(int a, int b, String piece) {}
        Map<Edge, Set<String>> zones = new HashMap<>();
        Set<String> all = new TreeSet<>();
        for (int e = 0; e < mesh.elementCount(); e++) {
            int n = mesh.cornerCount(e);
            all.add(mesh.region(e).zone());
            for (int c = 0; c < n; c++) {
                int p = mesh.elementNodes()[4 * e + c];
                int q = mesh.elementNodes()[4 * e + (c + 1) % n];
                Edge edge =
                        new Edge(Math.min(p, q), Math.max(p, q), mesh.region(e).piece());
                zones.computeIfAbsent(edge, _ -> new TreeSet<>())
                        .add(mesh.region(e).zone());
            }
        }
        Set<Pair> pairs = new HashSet<>();
        Set<String> alone = new TreeSet<>(all);
        zones.values().forEach(meet -> {
            List<String> names = List.copyOf(meet);
            for (int i = 0; i < names.size(); i++) {
                for (int j = i + 1; j < names.size(); j++) {
                    pairs.add(new Pair(names.get(i), names.get(j)));
                    alone.remove(names.get(i));
                    alone.remove(names.get(j));
                }
            }
        });
        List<Pair> sorted = new ArrayList<>(pairs);
        sorted.sort(java.util.Comparator.comparing(Pair::a).thenComparing(Pair::b));
        return new Borders(sorted, List.copyOf(alone));
    }

    /** The rules between the candidates of sites; pairs where everything may lie beside everything are left out. */
    public Neighbours neighbours(List<Site> sites, LayupRules rules) {
        Map<String, Integer> index = new HashMap<>();
        for (int s = 0; s < sites.size(); s++) {
            if (sites.get(s).owner() instanceof Owner.Zone(String name)) {
                index.put(name, s);
            }
        }
        List<Neighbours.Pair> result = new ArrayList<>();
        for (Pair pair : pairs) {
            if (index.containsKey(pair.a) && index.containsKey(pair.b)) {
                boolean[][] together =
                        together(skins(sites.get(index.get(pair.a))), skins(sites.get(index.get(pair.b))), rules);
                boolean free = true;
                for (boolean[] row : together) {
                    for (boolean each : row) {
                        free &= each;
                    }
                }
                if (!free) {
                    result.add(new Neighbours.Pair(index.get(pair.a), index.get(pair.b), together));
                }
            }
        }
        return new Neighbours(result, rules.mostStacks());
    }

    private static List<Skins> skins(Site site) {
        return site.candidates().stream()
                .map(c -> c instanceof Candidate.Stack(Laminate laminate)
                        ? Skins.of(laminate.layers())
                        : new Skins(List.of(List.of()), java.util.OptionalDouble.empty()))
                .toList();
    }

    /** The first of each are the design's own, or the nearest to it: what they do is allowed. */
    private static boolean[][] together(List<Skins> a, List<Skins> b, LayupRules rules) {
        int dropped = Math.max(rules.mostDropped(), Skins.dropped(a.getFirst(), b.getFirst()));
        double step = Math.max(rules.mostCoreStep(), Skins.coreStep(a.getFirst(), b.getFirst())) + 1e-9;
        int through = Math.min(rules.fewestThrough(), Skins.through(a.getFirst(), b.getFirst()));
        boolean[][] result = new boolean[a.size()][b.size()];
        for (int i = 0; i < a.size(); i++) {
            for (int j = 0; j < b.size(); j++) {
                result[i][j] = Skins.dropped(a.get(i), b.get(j)) <= dropped
                        && Skins.coreStep(a.get(i), b.get(j)) <= step
                        && Skins.through(a.get(i), b.get(j)) >= through;
            }
        }
        return result;
    }
}
