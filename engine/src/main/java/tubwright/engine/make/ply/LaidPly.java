// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.ply;

import java.util.List;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.material.Material;
import tubwright.engine.material.Ply;

/**
 * One cut piece of cloth, tape, film or core as it is laid.
 *
 * @param name unique: {@code "lower shell 03 R"}
 * @param piece what comes out of the mould it is laid in
 * @param sequence place in that piece's order of laying, from 1 at the mould
 * @param material what it is cut from
 * @param thickness m
 * @param angle nominal angle from the reference direction, as on the right-hand half, rad; mirrored on the left
 * @param role ply, core or film
 * @param patch name of the patch it belongs to, or ""
 * @param zones zones it runs through
 * @param elements of the mesh it covers
 * @param depths per element, how far its outer face lies under the mould surface, m
 */
public record LaidPly(
        String name,
        String piece,
        int sequence,
        Material material,
        double thickness,
        double angle,
        LayerRole role,
        String patch,
        List<String> zones,
        int[] elements,
        double[] depths) {
    public LaidPly {
        zones = List.copyOf(zones);
    }

    /** Whether it is woven and so drapes by shear; tape, film and core do not. */
    public boolean cloth() {
        return material instanceof Ply ply && ply.form() == Ply.Form.CLOTH;
    }

    /** Whether it is unidirectional tape. */
    public boolean tape() {
        return material instanceof Ply ply && ply.form() == Ply.Form.UNIDIRECTIONAL;
    }
}
