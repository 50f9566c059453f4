// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.page;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tubwright.desk.work.UserMistake;
import tubwright.engine.laminate.Layer;
import tubwright.engine.laminate.LayerRole;

/**
 * Which layer of one stack became which layers of another that was made of it by leaving layers out, laying them again
 * beside their like and changing cores: with the fewest layers touched.
 *
 * @param owner zone or patch
 * @param designed layers of the one, outer face first
 * @param other of the other
 */
record Alignment(String owner, List<Layer> designed, List<Layer> other) {
    /** The layers from a place on, and how many are touched. */
    private record Way(int touched, int count) {}

    /** What becomes of the layers that do not stay as they are. */
    Map<Edits.Spot, Edits.Made> made() {
        Map<Long, Optional<Way>> known = new HashMap<>();
        TreeMap<Edits.Spot, Edits.Made> result = new TreeMap<>();
        int at = 0;
        for (int i = 0; i < designed.size(); i++) {
            Way way = best(i, at, known)
                    .orElseThrow(() -> new UserMistake("the stack of \"" + owner
                            + "\" is not made of the layers of the design's; it cannot be tried"
                            + " here layer by layer"));
            Layer layer = way.count > 0 ? other.get(at) : designed.get(i);
            Edits.Made is = new Edits.Made(way.count, layer);
            if (!is.equals(new Edits.Made(1, designed.get(i)))) {
                result.put(new Edits.Spot(owner, i + 1), is);
            }
            at += way.count;
        }
        return result;
    }

    private Optional<Way> best(int i, int at, Map<Long, Optional<Way>> known) {
        if (i == designed.size()) {
            return at == other.size() ? Optional.of(new Way(0, 0)) : Optional.empty();
        }
        long key = (long) i * (other.size() + 1) + at;
        Optional<Way> before = known.get(key);
        if (before != null) {
            return before;
        }
        Optional<Way> best = Optional.empty();
        boolean core = designed.get(i).role() == LayerRole.CORE;
        int most = core ? 1 : Edits.MOST;
        for (int count = 0; count <= most && at + count <= other.size(); count++) {
            if (count > 0 && !like(designed.get(i), other.get(at + count - 1))) {
                break;
            }
            boolean same = count == 1 && designed.get(i).equals(other.get(at));
            Optional<Way> rest = best(i + 1, at + count, known);
            if (rest.isPresent()) {
                int touched = rest.get().touched + (same ? 0 : 1);
                if (best.isEmpty() || touched < best.get().touched) {
                    best = Optional.of(new Way(touched, count));
                }
            }
        }
        known.put(key, best);
        return best;
    }

    private static boolean like(Layer designed, Layer other) {
        return designed.role() == LayerRole.CORE
                ? other.role() == LayerRole.CORE && other.material().equals(designed.material())
                : other.equals(designed);
    }
}
