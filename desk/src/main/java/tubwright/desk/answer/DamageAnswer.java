// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.desk.text.Figures;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.safety.damage.Aftermath;
import tubwright.engine.safety.damage.DamageMap;
import tubwright.engine.safety.damage.Degree;
import tubwright.engine.safety.damage.PatchAnswer;

/**
 * What hits cost a tub, variant beside variant.
 *
 * @param tub name
 * @param size diameter of the patch, m
 * @param at where one patch was taken away, as asked; empty for a scan of the whole tub
 * @param degree of a scan
 * @param variants each by itself
 * @param stamp time
 * @param version of the program
 */
public record DamageAnswer(
        String tub,
        double size,
        Optional<String> at,
        Degree degree,
        List<PerVariant> variants,
        String stamp,
        String version) {
    /** How to read it. */
    public static final String ASIDE =
            "Linear and static: the load finds its way round at once, nothing tears further. Beside a hole"
                    + " stress depends on the mesh; compare places and variants rather than trust the figure."
                    + " Buckling, joints and inserts with the patch gone are looked at for a single hole and for the weakest places"
                    + " of a scan that are asked for, not all over it.";

    /** A smaller share is rounding. */
    private static final double NOTHING = 1e-7;

    public DamageAnswer {
        variants = List.copyOf(variants);
    }

    /**
     * One variant.
     *
     * @param name of the variant
     * @param construction in words
     * @param mesh on which it was computed
     * @param unknowns of it
     * @param patches one a position of a scan; one a degree for a single patch
     * @param aftermath of a single hole
     * @param hotSpots weakest places of a scan, looked at beyond the border of the hole, weakest first
     */
    public record PerVariant(
            String name,
            String construction,
            Mesh mesh,
            int unknowns,
            List<PatchAnswer> patches,
            Optional<Aftermath> aftermath,
            List<HotSpot> hotSpots) {
        public PerVariant {
            patches = List.copyOf(patches);
            hotSpots = List.copyOf(hotSpots);
        }

        /** Without a look beyond the border of a hole. */
        public PerVariant(String name, String construction, Mesh mesh, int unknowns, List<PatchAnswer> patches) {
            this(name, construction, mesh, unknowns, patches, Optional.empty(), List.of());
        }

        /** Positions whose lowest reserve factor falls below one by the hit, as a share of those that had one above it. */
        public double spreading() {
            long sound = patches.stream().filter(p -> before(p) >= 1).count();
            long falling = patches.stream()
                    .filter(p -> before(p) >= 1 && DamageMap.reserve(p) < 1)
                    .count();
            return sound == 0 ? Double.NaN : (double) falling / sound;
        }

        /** Positions with the lowest reserve factors first. */
        public List<PatchAnswer> weakest() {
            return patches.stream()
                    .sorted(Comparator.comparingDouble(DamageMap::reserve))
                    .toList();
        }

        /** Positions that cost most torsional stiffness first; those of which it is not known left out. */
        public List<PatchAnswer> dearest() {
            return patches.stream()
                    .filter(p -> !Double.isNaN(p.torsionLost()))
                    .sorted(Comparator.comparingDouble(p -> -p.torsionLost()))
                    .toList();
        }

        /** The share of torsional stiffness that half of the positions cost at most. */
        public double usualLoss() {
            List<PatchAnswer> known = dearest();
            return known.isEmpty() ? Double.NaN : known.get(known.size() / 2).torsionLost();
        }
    }

    /**
     * A weak place of a scan.
     *
     * @param patch as the scan found it
     * @param aftermath what a hole there does beyond its border
     */
    public record HotSpot(PatchAnswer patch, Aftermath aftermath) {}

    /** The lowest reserve factor at the places looked at before the hit. */
    public static double before(PatchAnswer answer) {
        return answer.loads().stream()
                .flatMap(l -> l.before().stream())
                .mapToDouble(r -> r.value())
                .min()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** A share of stiffness lost for a reader. */
    public static String lost(PatchAnswer answer) {
        return answer.stiffness().isEmpty() ? "–" : lost(answer.torsionLost());
    }

    /** A share of stiffness for a reader. */
    public static String lost(double share) {
        if (Double.isNaN(share)) {
            return "not known";
        }
        if (Math.abs(share) < NOTHING) {
            return "none";
        }
        return share >= 1 ? "all" : Figures.significant(100 * share, 2, Figures.NARROW_SPACE) + " %";
    }

    /** What else there is to say of a patch: loads without a path, ties lost; empty where nothing. */
    public static String aside(PatchAnswer answer) {
        StringBuilder words = new StringBuilder();
        if (answer.loose()) {
            words.append("leaves something loose. ");
        }
        if (!answer.disconnected().isEmpty()) {
            words.append("no path left for the load at ")
                    .append(String.join(", ", answer.disconnected()))
                    .append(". ");
        }
        answer.lost().entrySet().stream()
                .sorted(Map.Entry.comparingByKey())
                .forEach(e -> words.append(e.getKey())
                        .append(" loses ")
                        .append(Figures.significant(100 * e.getValue(), 2, Figures.NARROW_SPACE))
                        .append(" %. "));
        return words.toString().strip();
    }
}
