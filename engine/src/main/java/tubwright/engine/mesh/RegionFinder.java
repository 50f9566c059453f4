// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.List;

/** Numbers of regions, remembering the last one: neighbours mostly share theirs. */
final class RegionFinder {
    private final MeshBuilder out;
    private String part = "";
    private String zone = "";
    private String piece = "";
    private long patches = -1;
    private int last = -1;

    RegionFinder(MeshBuilder out) {
        this.out = out;
    }

    int region(
            String newPart,
            Region.Surface surface,
            String newZone,
            long newPatches,
            List<SurfaceLayout.Patch> names,
            String newPiece,
            boolean mirrored) {
        boolean same = last >= 0
                && patches == newPatches
                && part.equals(newPart)
                && zone.equals(newZone)
                && piece.equals(newPiece);
        if (!same) {
            List<String> over = new ArrayList<>();
            for (int i = 0; i < names.size(); i++) {
                if ((newPatches >> i & 1) != 0) {
                    over.add(names.get(i).name());
                }
            }
            last = out.region(new Region(newPart, surface, newZone, over, newPiece, mirrored));
            part = newPart;
            zone = newZone;
            piece = newPiece;
            patches = newPatches;
        }
        return last;
    }
}
