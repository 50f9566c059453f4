// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.make.ply.PlyPlan;

/**
 * Mass of every cut piece: area of the surface it covers times thickness times density, as the structural model counts
 * it; without overlaps, and without what shear adds.
 *
 * @param plies piece by piece in the order of laying
 */
public record PlyMass(List<Entry> plies) {
    /**
     * One cut piece.
     *
     * @param ply which
     * @param area covered on the mould surface, m²
     * @param mass kg
     */
    public record Entry(LaidPly ply, double area, double mass) {}

    /** Keeps a list of its own. */
    public PlyMass {
        plies = List.copyOf(plies);
    }

    /** Of all plies of a plan. */
    public static PlyMass of(PlyPlan plan) {
        return new PlyMass(plan.plies().stream()
                .map(ply -> {
                    double area = 0;
                    for (int element : ply.elements()) {
                        area += plan.mesh().area(element);
                    }
                    return new Entry(ply, area, mass(ply, area));
                })
                .toList());
    }

    /** Mass of a ply that covers this area, m², kg. */
    public static double mass(LaidPly ply, double area) {
        return area * ply.thickness() * ply.material().density();
    }

    /** All of them, kg. */
    public double total() {
        return plies.stream().mapToDouble(Entry::mass).sum();
    }

    /** kg by material, in the order of names. */
    public Map<String, Double> byMaterial() {
        return sums(e -> e.ply().material().name());
    }

    /** kg by piece, in the order of names. */
    public Map<String, Double> byPiece() {
        return sums(e -> e.ply().piece());
    }

    private Map<String, Double> sums(Function<Entry, String> key) {
        Map<String, Double> result = new TreeMap<>();
        plies.forEach(e -> result.merge(key.apply(e), e.mass(), Double::sum));
        return result;
    }
}
