// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tubwright.desk.answer.MouldAnswer;
import tubwright.engine.make.cure.CureLibrary;
import tubwright.engine.make.cure.Tool;
import tubwright.engine.make.mould.PullSearch;
import tubwright.engine.mesh.Region;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Tub;

/** What has to be made before a part can be: patterns, moulds, plates, pressure strips, jigs. */
final class ToolingList {
    /** Flange round a mould, m: common practice, no source. */
    private static final double FLANGE = 0.050;

    /** A bag bridges an inside corner tighter than this, m: from memory. */
    private static final double BRIDGES = 0.010;

    /** Shorter bends take no strip of their own, m. */
    private static final double SHORT = 0.050;

    /** Less than this is no radius, m. */
    private static final double NONE = 0.001;

    private static final String PATTERN = "epoxy-block";

    private final Tub tub;
    private final Tool tool;
    private final CureLibrary library;

    ToolingList(Tub tub, Tool tool, CureLibrary library) {
        this.tub = tub;
        this.tool = tool;
        this.library = library;
    }

    List<MouldAnswer.Tooling> of(List<MouldAnswer.Piece> pieces, List<MouldAnswer.Bend> bends) {
        List<MouldAnswer.Tooling> list = new ArrayList<>();
        for (MouldAnswer.Piece piece : pieces) {
            if (piece.draft().isEmpty()) {
                plate(piece, list);
            } else {
                mould(piece, list);
                bends.stream()
                        .filter(b -> b.piece().startsWith(piece.name()) && b.inside() < BRIDGES)
                        .filter(b -> b.bend().most() > Math.toRadians(10))
                        .filter(b -> b.bend().to() - b.bend().from() > SHORT)
                        .forEach(b -> strip(piece, b, list));
            }
        }
        jigs(pieces, list);
        return list;
    }

    private void mould(MouldAnswer.Piece piece, List<MouldAnswer.Tooling> list) {
        double[] size = {piece.size()[0] + 2 * FLANGE, piece.size()[1] + 2 * FLANGE, piece.size()[2]};
        String cold = Double.isNaN(piece.factor())
                ? "cold size not known: the laminates' expansion is missing"
                : String.format(
                        Locale.ROOT,
                        "face %.5f of the part when cold: %.1f × %.1f × %.1f mm",
                        piece.factor(),
                        1e3 * piece.factor() * piece.size()[0],
                        1e3 * piece.factor() * piece.size()[1],
                        1e3 * piece.factor() * piece.size()[2]);
        if (library.tools().containsKey(PATTERN)) {
            double wall = library.tool(PATTERN).thickness().si();
            list.add(new MouldAnswer.Tooling(
                    piece.name(),
                    "pattern",
                    new double[] {size[0], size[1], size[2] + wall},
                    Double.NaN,
                    library.tool(PATTERN).description() + ", cut to the mould's " + cold));
        }
        double rim =
                piece.edges().values().stream().mapToDouble(Double::doubleValue).sum();
        double mass = (piece.area() + rim * FLANGE)
                * tool.thickness().si()
                * tool.properties().density();
        int parts = PullSearch.parts(piece.face(), piece.draft().orElseThrow().pull())
                .size();
        list.add(new MouldAnswer.Tooling(
                piece.name(),
                "mould",
                size,
                mass,
                String.format(
                        Locale.ROOT,
                        "%s, wall %.0f mm, flange %.0f mm round; %s%s",
                        tool.description(),
                        1e3 * tool.thickness().si(),
                        1e3 * FLANGE,
                        cold,
                        piece.advice().isEmpty() || parts == 1
                                ? ""
                                : "; in " + parts + " parts, unless the undercut is taken away")));
    }

    private static void strip(MouldAnswer.Piece piece, MouldAnswer.Bend bend, List<MouldAnswer.Tooling> list) {
        double length = bend.bend().to() - bend.bend().from();
        if (bend.inside() < NONE) {
            list.add(new MouldAnswer.Tooling(
                    piece.name(),
                    "pressure strip, 2 off",
                    new double[] {length, bend.leastRadius(), 0},
                    Double.NaN,
                    String.format(
                            Locale.ROOT,
                            "silicone, for the outer skin in the corner of %s from x = %.0f to %.0f mm; the laminate, %.1f mm, is"
                                    + " thicker than the corner's radius: no radius is left under the bag, so end the core before"
                                    + " the corner or make the radius larger",
                            bend.bend().between(),
                            1e3 * bend.bend().from(),
                            1e3 * bend.bend().to(),
                            1e3 * bend.thickness())));
            return;
        }
        list.add(new MouldAnswer.Tooling(
                piece.name(),
                "pressure strip, 2 off",
                new double[] {length, bend.inside(), bend.inside()},
                Double.NaN,
                String.format(
                        Locale.ROOT,
                        "silicone, in the corner of %s from x = %.0f to %.0f mm, inside radius %.1f mm, where a bag would bridge;"
                                + " it grows by some 4 %% when hot (from memory): leave that free at its ends",
                        bend.bend().between(),
                        1e3 * bend.bend().from(),
                        1e3 * bend.bend().to(),
                        1e3 * bend.inside())));
    }

    private void plate(MouldAnswer.Piece piece, List<MouldAnswer.Tooling> list) {
        list.add(new MouldAnswer.Tooling(
                piece.name(),
                "plate",
                new double[] {
                    piece.size()[0] + 2 * FLANGE,
                    piece.size()[1] + 2 * FLANGE,
                    tool.thickness().si()
                },
                Double.NaN,
                "flat, " + tool.description() + "; one plate may serve several walls"));
    }

    private void jigs(List<MouldAnswer.Piece> pieces, List<MouldAnswer.Tooling> list) {
        Map<String, String> pieceOf = new HashMap<>();
        pieces.forEach(p -> {
            for (int e : p.face().elements()) {
                Region region = p.face().mesh().region(e);
                pieceOf.putIfAbsent(region.part(), p.name());
            }
        });
        for (MouldAnswer.Piece piece : pieces) {
            List<Hardpoint> on = tub.hardpoints().stream()
                    .filter(h -> piece.name().equals(pieceOf.get(h.part())))
                    .toList();
            if (!on.isEmpty()) {
                list.add(new MouldAnswer.Tooling(
                        piece.name(),
                        "drill jig",
                        piece.size(),
                        Double.NaN,
                        on.size() + " holes and inserts, placed from the mould's face"));
            }
        }
        if (pieces.size() > 1) {
            double[] all = {tub.shape().rear() - tub.shape().front(), 0, 0};
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (MouldAnswer.Piece piece : pieces) {
                double[] nodes = piece.face().alone().nodes();
                for (int i = 0; i < nodes.length; i += 3) {
                    all[1] = Math.max(all[1], 2 * Math.abs(nodes[i + 1]));
                    low = Math.min(low, nodes[i + 2]);
                    high = Math.max(high, nodes[i + 2]);
                }
            }
            all[2] = high - low;
            list.add(new MouldAnswer.Tooling(
                    "",
                    "bonding frame",
                    all,
                    Double.NaN,
                    "holds " + pieces.size() + " pieces to each other while their joints cure"));
        }
    }
}
