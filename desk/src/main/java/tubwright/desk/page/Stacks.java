// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.List;
import tubwright.desk.work.Laminates;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;

/** Laminates as the page draws them. */
final class Stacks {
    private Stacks() {}

    /** A laminate. */
    static TubView.StackView of(Laminate laminate) {
        return new TubView.StackView(
                Laminates.code(laminate), laminate.thickness(), laminate.arealMass(), layers(laminate.layers()));
    }

    /** The plies of a patch, which may be none. */
    static TubView.StackView of(List<Layer> plies) {
        return plies.isEmpty()
                ? new TubView.StackView("", 0, 0, List.of())
                : of(Laminate.of(plies.toArray(Layer[]::new)));
    }

    private static List<TubView.LayerView> layers(List<Layer> layers) {
        return layers.stream()
                .map(l -> new TubView.LayerView(l.material().name(), kind(l.material()), l.degrees(), l.thickness()))
                .toList();
    }

    /** How a layer of a material is drawn. */
    static TubView.LayerKind kind(Material material) {
        return switch (material) {
            case Ply ply when ply.form() == Ply.Form.CLOTH -> TubView.LayerKind.CLOTH;
            case Ply _ -> TubView.LayerKind.TAPE;
            case Core core when core.form() == Core.Form.HONEYCOMB -> TubView.LayerKind.HONEYCOMB;
            case Core _ -> TubView.LayerKind.FOAM;
            case Adhesive _ -> TubView.LayerKind.FILM;
            case Metal _ -> TubView.LayerKind.SHEET;
        };
    }
}
