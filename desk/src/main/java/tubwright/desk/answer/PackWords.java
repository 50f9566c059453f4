// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.answer;

import java.util.ArrayList;
import java.util.List;
import tubwright.engine.laminate.LayerRole;
import tubwright.engine.make.flat.Mark;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.ply.LaidPly;

/** What the pack for a shop says beside figures. Rules of the workshop are common practice, no source, and so marked. */
public final class PackWords {
    /** Plies between debulks: common practice, no source. */
    private static final int BETWEEN_DEBULKS = 4;

    public static final String REFERENCE = "Angles are from the reference direction of the zone, on the right-hand half"
            + " counted towards the upper edge as seen from outside; the left-hand half is its mirror image. Each drawing shows"
            + " the reference direction (grey) and the warp, fibres or ribbon (dark) at the dot, where laying starts.";

    public static final String DEBULK =
            "Under vacuum of 0.9 bar or better for 10 minutes or more (common practice, no source).";

    public static final List<String> RULES = List.of(
            "Lay in the order of the steps. A pattern is drawn as seen by who lays it; it is never turned over.",
            "A ply wider than the roll is cut in parts along its warp: cloth overlaps by 20 mm, tape, film and core meet; seams of"
                    + " neighbouring plies lie 25 mm apart (common practice, no source). No splice runs across fibres; any that"
                    + " is not drawn here is asked for before it is made.",
            "Where a step says \"Care\", the design has passed a limit of draping there: try that ply dry first and say what"
                    + " you find.");

    public static final List<String> SANDWICH_CURE = List.of(
            "Outer skin: bag, cure at full pressure, cool, weigh",
            "Film, core fitted and spliced, potting: bag, cure at low pressure",
            "Film, inner skin: bag, cure at low pressure",
            "Trim, drill, weigh");

    public static final List<String> SOLID_CURE =
            List.of("All plies: bag, cure at full pressure", "Trim, drill, weigh");

    public static final String CYCLE =
            "Cycles proposed, checked and drawn: cures.pdf; the resin's maker has the last word. Low pressure is what the core bears in its"
                    + " cure; the limit is asked of the core's maker. Thermocouples where the laminate is thickest and where it is"
                    + " thinnest, in the part and in the mould.";

    public static final List<String> BONDING = List.of(
            "Abrade or peel, wipe, dry fit, measure the gap, bond within the paste's open time, clamp, cure as its maker says."
                    + " Keep a lap-shear coupon from every mix (ISO 4587). Glass beads or wire hold the bond line to its"
                    + " thickness (common practice, no source).");

    /** Standards by number, from memory. */
    public static final List<List<String>> PANELS = List.of(
            List.of("each cloth and tape, 0°", "tension", "ISO 527-4, -5", "", ""),
            List.of("each cloth and tape, 0°", "compression", "ISO 14126", "", ""),
            List.of("each cloth and tape, ±45°", "in-plane shear", "ISO 14129", "", ""),
            List.of("each cloth and tape, 0°", "interlaminar shear", "ISO 14130", "", ""),
            List.of("each cloth and tape", "fibre and void content", "ISO 14127", "", ""),
            List.of("each sandwich", "flatwise tension", "ASTM C297", "", ""),
            List.of("each sandwich", "long-beam bending", "ASTM D7249, D7250", "", ""));

    public static final List<List<String>> LIMITS = List.of(
            List.of("edge of a ply", "± 2 mm"),
            List.of("direction of tape; of cloth where it drapes", "± 3°; ± 5°"),
            List.of("gap between tapes; overlap", "at most 2 mm; 1 mm"),
            List.of("core joint and fit", "gap at most 2 mm, filled"),
            List.of("trimmed edge; hole", "± 0.5 mm; ± 0.25 mm"),
            List.of("mass of a piece", "± 5 % of this book"));

    public static final String LIMITS_SOURCE =
            "These limits are common practice, no source; the designer releases others in" + " writing.";

    private PackWords() {}

    /** Whether to debulk after a step: the first, each fourth, before core and at the end. */
    public static boolean debulk(int step, int steps, LaidPly ply) {
        return ply.role() == LayerRole.PLY && (step == 1 || step == steps || step % BETWEEN_DEBULKS == 0);
    }

    /** What the marks on the patterns of a step mean; empty where there is none. */
    public static String marks(List<DrapedPly> here) {
        List<String> words = new ArrayList<>();
        for (Mark.Kind kind : Mark.Kind.values()) {
            if (here.stream().anyMatch(p -> !p.flat().marks(kind).isEmpty())) {
                words.add(
                        switch (kind) {
                            case NOTCH -> "ticks at the edge: notches, on lines of the mould";
                            case CHAMFER -> "dashed: where the ramp of the edge begins, on the bag side";
                            case POTTING -> "circles: potting of inserts";
                        });
            }
        }
        return words.isEmpty() ? "" : "On the pattern, " + String.join("; ", words) + ".";
    }
}
