// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.StructureException;

/** The starts a designer chose, held against the plies there are. Faults name the start as the design's places know it. */
final class LayStarts {
    private final Mesh mesh;
    private final List<LayStart> starts;

    /**
     * @throws StructureException for a start of no piece and no cloth of the skin, or one that lies on none of its plies
     */
    LayStarts(Mesh mesh, List<LayStart> starts, List<LaidPly> plies) {
        this.mesh = mesh;
        this.starts = starts;
        for (LayStart start : starts) {
            List<LaidPly> own =
                    plies.stream().filter(p -> names(start, p) && drapes(p)).toList();
            if (own.isEmpty()) {
                Set<String> pieces = new TreeSet<>();
                plies.stream().filter(this::drapes).map(LaidPly::piece).forEach(pieces::add);
                throw new StructureException(
                        "\"start of " + start.of() + "\": there is no piece and no cloth ply of the skin of that name",
                        "pieces with such cloth: " + String.join(", ", pieces)
                                + "; \"tubwright drape DIR --all\" lists the plies");
            }
            if (own.stream().noneMatch(p -> away(nearest(p, start), start) <= LayStart.NEAR)) {
                double[] best = own.stream()
                        .map(p -> Mould.centre(mesh, nearest(p, start)))
                        .min((a, b) -> Double.compare(away(a, start), away(b, start)))
                        .orElseThrow();
                throw new StructureException(
                        String.format(
                                Locale.ROOT,
                                "\"start of %s\": %s lies %.0f mm beside it, nothing can be laid from there",
                                start.of(),
                                start.words(),
                                1e3 * away(best, start)),
                        String.format(
                                Locale.ROOT,
                                "nearest to it is %.0f, %.0f, %.0f mm",
                                1e3 * best[0],
                                1e3 * best[1],
                                1e3 * best[2]));
            }
        }
    }

    /** A start that was chosen for a ply, and the element it is in. */
    record Chosen(LayStart start, int element, boolean byName) {}

    /** The start chosen for a ply: by its own name before that of its piece; none where it does not lie there. */
    Optional<Chosen> of(LaidPly ply) {
        return starts.stream()
                .filter(s -> names(s, ply))
                .map(s -> new Chosen(s, nearest(ply, s), s.of().equals(ply.name())))
                .filter(c -> away(c.element(), c.start()) <= LayStart.NEAR)
                .min((a, b) -> Boolean.compare(b.byName(), a.byName()));
    }

    private boolean drapes(LaidPly ply) {
        return ply.cloth() && mesh.region(ply.elements()[0]).surface() == Region.Surface.SKIN;
    }

    private static boolean names(LayStart start, LaidPly ply) {
        return start.of().equals(ply.piece()) || start.of().equals(ply.name());
    }

    private int nearest(LaidPly ply, LayStart start) {
        int best = ply.elements()[0];
        for (int e : ply.elements()) {
            best = away(e, start) < away(best, start) ? e : best;
        }
        return best;
    }

    private double away(int element, LayStart start) {
        return away(Mould.centre(mesh, element), start);
    }

    private static double away(double[] p, LayStart start) {
        double[] at = start.at();
        return Math.hypot(Math.hypot(p[0] - at[0], p[1] - at[1]), p[2] - at[2]);
    }
}
