// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Looks for fittings that can move while every hardpoint stands still: tubes pinned into a linkage, a body on mounts that
 * lie on one line, a node at the end of a pinned tube.
 */
public final class Mechanisms {
    /** A pivot below this share of the unknown's own stiffness means that a motion is free. */
    private static final double FREE = 1e-9;

    private Mechanisms() {}

    /**
     * Name of a node or body that is free to move.
     *
     * @param fittings what is bolted on
     * @param hardpoints of the tub, all taken as held
     * @throws StructureException where a name stands for nothing
     */
    public static Optional<String> find(Fittings fittings, List<Hardpoint> hardpoints) {
        Map<String, Rider> riders = new LinkedHashMap<>();
        for (int h = 0; h < hardpoints.size(); h++) {
            Hardpoint each = hardpoints.get(h);
            riders.put(each.name(), Rider.at(h, each.position()));
        }
        List<Part> parts = new ArrayList<>();
        FittingsBuilder builder = new FittingsBuilder(riders, hardpoints.size(), (kind, name) -> {
            Part part = new Part(kind, name);
            if (!parts.contains(part)) {
                parts.add(part);
            }
            return parts.indexOf(part);
        });
        builder.stiffness(fittings);
        int held = hardpoints.size();
        int n = builder.positions().length * 2;
        double[][] k = new double[n][n];
        for (Member member : builder.members()) {
            double[] m = member.matrix();
            int size = 6 * member.nodes().length;
            for (int i = 0; i < size; i++) {
                int row = 6 * (member.nodes()[i / 6] - held) + i % 6;
                for (int j = 0; j < size && row >= 0; j++) {
                    int column = 6 * (member.nodes()[j / 6] - held) + j % 6;
                    if (column >= 0) {
                        k[row][column] += m[i * size + j];
                    }
                }
            }
        }
        return freeUnknown(k)
                .flatMap(i -> riders.entrySet().stream()
                        .filter(e -> e.getValue().node() == held + i / 6)
                        .map(Map.Entry::getKey)
                        .findFirst());
    }

    /** First unknown that those before it leave without stiffness, by elimination. */
    private static Optional<Integer> freeUnknown(double[][] k) {
        int n = k.length;
        double[] own = new double[n];
        Arrays.setAll(own, i -> k[i][i]);
        for (int p = 0; p < n; p++) {
            if (!(k[p][p] > FREE * own[p])) {
                return Optional.of(p);
            }
            for (int i = p + 1; i < n; i++) {
                double factor = k[i][p] / k[p][p];
                for (int j = p; factor != 0 && j < n; j++) {
                    k[i][j] -= factor * k[p][j];
                }
            }
        }
        return Optional.empty();
    }
}
