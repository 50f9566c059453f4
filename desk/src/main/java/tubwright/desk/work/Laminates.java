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
import tubwright.engine.laminate.OrientationCode;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Tub;

/** The laminates that lie on a mesh, in words. */
final class Laminates {
    private Laminates() {}

    /** The laminates of a tub with the area each covers on {@code mesh}, zones first in the order of the design. */
    static List<RunAnswer.Layup> on(Tub tub, Mesh mesh) {
        double[] areas = new double[mesh.regions().size()];
        for (int e = 0; e < mesh.elementCount(); e++) {
            areas[mesh.elementRegions()[e]] += mesh.area(e);
        }
        List<String> zones =
                tub.layout().zones().stream().map(z -> z.name()).toList();
        Map<String, RunAnswer.Layup> found = new LinkedHashMap<>();
        List<Integer> order = new ArrayList<>();
        for (int r = 0; r < areas.length; r++) {
            order.add(r);
        }
        order.sort(java.util.Comparator.comparingInt((Integer r) -> zones.indexOf(mesh.regions().get(r).zone()))
                .thenComparingInt(r -> mesh.regions().get(r).patches().size()));
        for (int r : order) {
            Region region = mesh.regions().get(r);
            Laminate laminate = laminate(tub, region);
            String name = name(region);
            RunAnswer.Layup known = found.get(name);
            double area = areas[r] + (known == null ? 0 : known.area());
            found.put(name, new RunAnswer.Layup(tub.variant(), name, code(laminate), area, laminate));
        }
        return List.copyOf(found.values());
    }

    /** Every material of the laminates, in the order in which they are met. */
    static List<Material> materials(List<RunAnswer.Layup> layups) {
        return layups.stream()
                .flatMap(l -> l.laminate().layers().stream())
                .map(Layer::material)
                .distinct()
                .toList();
    }

    private static String name(Region region) {
        return region.patches().isEmpty() ? region.zone() : region.zone() + " + " + String.join(" + ", region.patches());
    }

    /** The zone's laminate with the plies of its patches on the inner face. */
    private static Laminate laminate(Tub tub, Region region) {
        Laminate zone = tub.laminates().get(region.zone());
        List<Layer> layers = new ArrayList<>(zone.layers());
        region.patches().forEach(p -> layers.addAll(tub.patchPlies().getOrDefault(p, List.of())));
        return new Laminate(layers, zone.reference());
    }

    /** The orientation code of a stack: cloths marked c, cores, films and sheets by word. */
    private static String code(Laminate laminate) {
        List<OrientationCode.Item> items = new ArrayList<>();
        for (Layer layer : laminate.layers()) {
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
        if (items.size() == 1 && items.getFirst() instanceof OrientationCode.WordItem word && word.word().equals("sheet")) {
            return Figures.significant(1000 * laminate.thickness(), 2, "") + " mm sheet";
        }
        return new OrientationCode(items).toString();
    }
}
