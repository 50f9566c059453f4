// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.build;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.kit.CutPiece;
import tubwright.engine.make.kit.Hours;
import tubwright.engine.make.kit.ShopData;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.LaidTub;
import tubwright.engine.mesh.Mesh;

/**
 * Work on one piece of the first tub.
 *
 * @param piece name
 * @param area of its mould's face, m²
 * @param cutting of its kit, s
 * @param stages from one cure to the next: one of a solid piece, of a sandwich three (outer skin, core, inner skin)
 */
public record PieceWork(String piece, double area, double cutting, List<Stage> stages) {
    /**
     * What is laid before a cure.
     *
     * @param name of it
     * @param laying s
     * @param plies cut pieces in it
     */
    public record Stage(String name, double laying, int plies) {}

    public PieceWork {
        stages = List.copyOf(stages);
    }

    /**
     * Of all pieces, in the order of their first ply.
     *
     * @param laid all plies as they lie
     * @param cut what they are cut as; a ply without a pattern is cut to fit and laid like one of its area
     */
    public static List<PieceWork> of(LaidTub laid, List<CutPiece> cut, ShopData.Times times) {
        Map<String, List<DrapedPly>> byPiece = new LinkedHashMap<>();
        laid.plies()
                .forEach(p -> byPiece.computeIfAbsent(p.ply().piece(), _ -> new ArrayList<>())
                        .add(p));
        Map<DrapedPly, List<CutPiece>> patterns = new java.util.IdentityHashMap<>();
        cut.forEach(
                c -> patterns.computeIfAbsent(c.ply(), _ -> new ArrayList<>()).add(c));
        return byPiece.entrySet().stream()
                .map(e -> of(e.getKey(), e.getValue(), laid.mesh(), patterns, times))
                .toList();
    }

    private static PieceWork of(
            String piece,
            List<DrapedPly> plies,
            Mesh mesh,
            Map<DrapedPly, List<CutPiece>> patterns,
            ShopData.Times times) {
        boolean sandwich = plies.stream().anyMatch(p -> p.ply().role() == LayerRole.CORE);
        String[] names = sandwich ? new String[] {"outer skin", "core", "inner skin"} : new String[] {"plies"};
        double[] laying = new double[names.length];
        int[] count = new int[names.length];
        double cutting = 0;
        double area = plies.stream()
                .flatMapToInt(p -> Arrays.stream(p.ply().elements()))
                .distinct()
                .mapToDouble(mesh::area)
                .sum();
        // Zones differ in where their core comes: every zone's plies after its own core belong to the inner skin.
        int lastCore = plies.stream()
                .filter(p -> p.ply().role() == LayerRole.CORE)
                .mapToInt(p -> p.ply().sequence())
                .max()
                .orElse(Integer.MAX_VALUE);
        int firstCore = plies.stream()
                .filter(p -> p.ply().role() == LayerRole.CORE)
                .mapToInt(p -> p.ply().sequence())
                .min()
                .orElse(Integer.MAX_VALUE);
        for (DrapedPly ply : plies) {
            int step = ply.ply().sequence();
            int stage = !sandwich
                    ? 0
                    : ply.ply().role() != LayerRole.PLY ? 1 : step < firstCore ? 0 : step > lastCore ? 2 : 1;
            List<CutPiece> own = patterns.getOrDefault(ply, List.of());
            for (CutPiece each : own) {
                cutting += Hours.cutting(each.pattern(), times);
                laying[stage] +=
                        Hours.laying(ply.ply().material(), each.pattern().area(), times);
                count[stage]++;
            }
            if (own.isEmpty()) {
                cutting += times.cutEach().si();
                laying[stage] +=
                        Hours.laying(ply.ply().material(), ply.figures().area(), times);
                count[stage]++;
            }
        }
        List<Stage> stages = new ArrayList<>();
        for (int i = 0; i < names.length; i++) {
            stages.add(new Stage(names[i], laying[i], count[i]));
        }
        return new PieceWork(piece, area, cutting, stages);
    }
}
