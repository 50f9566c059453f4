// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.nest.Nest;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.make.nest.Nester;
import tubwright.engine.make.nest.Outline;
import tubwright.engine.make.nest.Piece;
import tubwright.engine.make.nest.Roll;
import tubwright.engine.material.Material;

/**
 * The patterns of one material of one piece on a roll: a kit in the order of laying.
 *
 * @param piece what comes out of the mould
 * @param material what is cut
 * @param nest where each pattern lies; empty if none of them fits
 * @param patterns area of all patterns that were nested, m²
 * @param areal mass per area, kg/m²
 * @param left out patterns that cannot be nested, each with why and what would help
 */
public record KitNest(
        String piece, Material material, Optional<Nest> nest, double patterns, double areal, List<String> left) {
    /**
     * Outlines are simplified by at least so much, m, and by more until they have few corners; gap and margin grow by as
     * much on both sides, so that patterns as drawn keep their gap.
     */
    public static final double LEAST_SIMPLIFIED = 1e-3;

    private static final double MOST_SIMPLIFIED = 8e-3;
    private static final int FEW_CORNERS = 28;

    /** Keeps a list of its own. */
    public KitNest {
        left = List.copyOf(left);
    }

    /** A pattern to be nested. */
    public record Cut(String piece, Material material, double thickness, FlatPattern flat) {}

    /** Mass of what is cut, kg. */
    public double used() {
        return patterns * areal;
    }

    /** Mass of the roll it takes, kg. */
    public double bought() {
        return nest.map(n -> n.length() * n.roll().width() * areal).orElse(0.0);
    }

    /**
     * Nests patterns, a kit for each piece and material, in the order in which they come.
     *
     * @param moves of single patterns to spend on each kit
     */
    public static List<KitNest> of(
            List<Cut> cuts, Map<Stock, Roll> rolls, long seed, long moves, Nester.Listener listener) {
        Map<String, List<Cut>> kits = new LinkedHashMap<>();
        cuts.forEach(cut -> kits.computeIfAbsent(
                        cut.piece + "\n" + cut.material.name() + "\n" + cut.thickness, _ -> new ArrayList<>())
                .add(cut));
        return kits.values().stream()
                .map(kit -> kit(kit, rolls.get(Stock.of(kit.getFirst().material)), seed, moves, listener))
                .toList();
    }

    private static KitNest kit(List<Cut> cuts, Roll stock, long seed, long moves, Nester.Listener listener) {
        Cut first = cuts.getFirst();
        double simplified = tolerance(cuts);
        Roll roll = new Roll(stock.width() - 2 * simplified, stock.gap() + 2 * simplified);
        Piece.Turns turns = Stock.of(first.material).turns();
        List<Piece> pieces = new ArrayList<>();
        List<String> left = new ArrayList<>();
        double area = 0;
        for (Cut cut : cuts) {
            try {
                Piece piece = new Piece(cut.flat.name(), outline(cut.flat, simplified), 1, turns);
                Nester.bottomLeft(List.of(piece), roll);
                pieces.add(piece);
                area += cut.flat.area();
            } catch (NestException e) {
                left.add(
                        e.getMessage().contains(cut.flat.name())
                                ? e.getMessage()
                                : "'" + cut.flat.name() + "': " + e.getMessage());
            }
        }
        Optional<Nest> nest = pieces.isEmpty()
                ? Optional.empty()
                : Optional.of(Nester.search(pieces, roll, seed, moves, listener))
                        .map(n -> new Nest(
                                stock, n.pieces(), moved(n.placements(), simplified), n.length() + 2 * simplified));
        return new KitNest(first.piece, first.material, nest, area, first.thickness * first.material.density(), left);
    }

    /** The least tolerance, doubled until every pattern of the kit has few corners or it is at its most. */
    private static double tolerance(List<Cut> cuts) {
        double tolerance = LEAST_SIMPLIFIED;
        for (Cut cut : cuts) {
            while (tolerance < MOST_SIMPLIFIED && corners(cut.flat, tolerance) > FEW_CORNERS) {
                tolerance *= 2;
            }
        }
        return tolerance;
    }

    private static int corners(FlatPattern flat, double tolerance) {
        try {
            return outline(flat, tolerance).corners();
        } catch (NestException e) {
            // Told when it is nested; it has no say in the tolerance.
            return 0;
        }
    }

    /** Into the middle of the margin. */
    private static List<Nest.Placement> moved(List<Nest.Placement> placements, double by) {
        return placements.stream()
                .map(p -> new Nest.Placement(p.piece(), p.quarters(), p.x() + by, p.y() + by))
                .toList();
    }

    private static Outline outline(FlatPattern flat, double tolerance) {
        if (flat.outlines().isEmpty()) {
            throw new NestException("'" + flat.name() + "' has no outline: it could not be flattened");
        }
        return Simplified.of(flat.outlines().getFirst(), tolerance);
    }
}
