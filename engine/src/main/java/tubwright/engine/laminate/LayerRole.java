// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import tubwright.engine.material.Adhesive;
import tubwright.engine.material.Core;
import tubwright.engine.material.Material;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Ply;

/** What a layer is there for. */
public enum LayerRole {
    /** A ply of a skin. */
    PLY,
    /** Keeps the skins apart. */
    CORE,
    /** Bonds core to skin; no ply in the sense of layup rules. */
    FILM,
    /** Metal sheet. */
    SHEET;

    /** The usual role of a material. */
    public static LayerRole of(Material material) {
        return switch (material) {
            case Ply _ -> PLY;
            case Core _ -> CORE;
            case Adhesive _ -> FILM;
            case Metal _ -> SHEET;
        };
    }
}
