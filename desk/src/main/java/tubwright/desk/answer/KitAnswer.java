// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.KitNest;
import tubwright.engine.make.kit.PlyMass;

/**
 * What a tub takes to make.
 *
 * @param tub name
 * @param stamp when it was computed
 * @param version of the program
 * @param mass ply by ply
 * @param kits patterns nested, one kit for each piece and material
 * @param cures times in the autoclave, over all pieces
 * @param build from pattern to delivery
 */
public record KitAnswer(
        String tub, String stamp, String version, PlyMass mass, List<KitNest> kits, int cures, BuildAnswer build) {
    /** Numbers of tubs of which the work is told. */
    public static final List<Integer> NUMBERS = List.of(1, 2, 5, 10);

    /** Keeps a list of its own. */
    public KitAnswer {
        kits = List.copyOf(kits);
    }

    /**
     * One material over all kits.
     *
     * @param inTub mass by the plies' areas, kg
     * @param used mass of the patterns nested, kg
     * @param bought mass of the rolls they take, kg
     * @param length of roll, m
     */
    public record Bought(double inTub, double used, double bought, double length) {
        /** Used over bought. */
        public double utilisation() {
            return bought > 0 ? used / bought : 0;
        }
    }

    /** By material, in the order of names. */
    public Map<String, Bought> materials() {
        Map<String, Bought> result = new TreeMap<>();
        mass.byMaterial().forEach((name, kg) -> {
            double used = 0;
            double bought = 0;
            double length = 0;
            for (KitNest kit : kits) {
                if (kit.material().name().equals(name)) {
                    used += kit.used();
                    bought += kit.bought();
                    length += kit.nest().map(n -> n.length()).orElse(0.0);
                }
            }
            result.put(name, new Bought(kg, used, bought, length));
        });
        return result;
    }

    /** By step, of the first tub. */
    public Hours hours() {
        return build.plan().hours();
    }

    /** Patterns that could not be nested, each with why. */
    public List<String> left() {
        return kits.stream().flatMap(k -> k.left().stream()).toList();
    }
}
