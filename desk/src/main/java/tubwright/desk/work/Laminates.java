// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tubwright.desk.answer.RunAnswer;
import tubwright.desk.text.Figures;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.laminate.OrientationCode;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Tub;

/** The laminates that lie on a mesh, in words. */
public final class Laminates {
    private Laminates() {}

    /** The laminates of a tub with the area each covers on {@code mesh}: zones, then patches, as the design has them. */
    static List<RunAnswer.Layup> on(Tub tub, Mesh mesh) {
        double[] areas = new double[mesh.regions().size()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            areas[mesh.elementRegions()[e]] += mesh.area(e);
        }
        Map<String, Double> byZone = new LinkedHashMap<>();
        Map<String, Double> byPatch = new LinkedHashMap<>();
        tub.layout().zones().forEach(z -> byZone.put(z.name(), 0.0));
        tub.layout().patches().forEach(p -> byPatch.put(p.name(), 0.0));
        for (int r = 0; r < areas.length; r++) {
            Region region = mesh.regions().get(r);
            byZone.merge(region.zone(), areas[r], Double::sum);
            for (String patch : region.patches()) {
                byPatch.merge(patch, areas[r], Double::sum);
            }
        }
        List<RunAnswer.Layup> result = new ArrayList<>();
        byZone.forEach((zone, area) -> {
            Laminate laminate = tub.laminates().get(zone);
            if (area > 0 && laminate != null) {
                result.add(new RunAnswer.Layup(tub.variant(), zone, false, code(laminate), area, laminate));
            }
        });
        byPatch.forEach((patch, area) -> {
            List<Layer> plies = tub.patchPlies().getOrDefault(patch, List.of());
            if (area > 0 && !plies.isEmpty()) {
                Laminate laminate = Laminate.of(plies.toArray(Layer[]::new));
                result.add(new RunAnswer.Layup(tub.variant(), patch, true, code(laminate), area, laminate));
            }
        });
        return result;
    }

    /** Every material of the laminates, in the order in which they are met. */
    static List<Material> materials(List<RunAnswer.Layup> layups) {
        return layups.stream()
                .flatMap(l -> l.laminate().layers().stream())
                .map(Layer::material)
                .distinct()
                .toList();
    }

    /** The orientation code of a stack: cloths marked c, cores and sheets by word, films left out. */
    public static String code(Laminate laminate) {
        List<OrientationCode.Item> items = new ArrayList<>();
        for (Layer layer : laminate.layers()) {
            // Films bond core to skin; a reader of the code knows they are there.
            if (layer.role() == LayerRole.FILM && laminate.layers().size() > 1) {
                continue;
            }
            items.add(
                    switch (layer.role()) {
                        case PLY ->
                            new OrientationCode.PlyItem(
                                    layer.degrees(),
                                    layer.material() instanceof Ply ply && ply.form() == Ply.Form.CLOTH ? "c" : "");
                        case CORE ->
                            new OrientationCode.WordItem(
                                    "core", layer.material() instanceof Core ? layer.degrees() : 0);
                        case FILM -> new OrientationCode.WordItem("film", 0);
                        case SHEET -> new OrientationCode.WordItem("sheet", 0);
                    });
        }
        if (items.size() == 1
                && items.getFirst() instanceof OrientationCode.WordItem word
                && word.word().equals("sheet")) {
            return Figures.significant(1000 * laminate.thickness(), 2, "") + " mm sheet";
        }
        return new OrientationCode(items).toString();
    }
}
