// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.nest.NestException;
import tubwright.engine.make.nest.Roll;

/**
 * What is cut in one go: a ply, or one of the parts it is spliced from.
 *
 * @param ply it belongs to
 * @param pattern its own
 * @param part which, from 1
 * @param parts of the ply
 */
public record CutPiece(DrapedPly ply, FlatPattern pattern, int part, int parts) {
    /** Room left at the edges of the roll for outlines that are nested a little larger than they are, m. */
    private static final double MARGIN = 0.016;

    /** What all plies are cut as, those wider than their roll in parts; a ply without a pattern is not among them. */
    public static List<CutPiece> of(List<DrapedPly> plies, Map<Stock, Roll> rolls) {
        return plies.stream()
                .filter(CutPiece::hasPattern)
                .flatMap(p -> {
                    double width = rolls.get(Stock.of(p.ply().material())).width();
                    return Splices.usual(width - MARGIN).of(p).stream();
                })
                .toList();
    }

    /** The same as they go to the nest, with the plies that cannot be cut so, which the nest names. */
    public static List<KitNest.Cut> cuts(List<DrapedPly> plies, Map<Stock, Roll> rolls) {
        return plies.stream()
                .flatMap(p -> {
                    try {
                        if (hasPattern(p)) {
                            return of(List.of(p), rolls).stream().map(CutPiece::cut);
                        }
                    } catch (NestException tooNarrow) {
                        // Whole, the nest says why it does not lie on the roll.
                    }
                    return Stream.of(new KitNest.Cut(
                            p.ply().piece(), p.ply().material(), p.ply().thickness(), p.flat()));
                })
                .toList();
    }

    private static boolean hasPattern(DrapedPly ply) {
        return !ply.flat().outlines().isEmpty() && !ply.flat().overlapsItself();
    }

    /** As it goes to the nest. */
    public KitNest.Cut cut() {
        return new KitNest.Cut(
                ply.ply().piece(), ply.ply().material(), ply.ply().thickness(), pattern);
    }

    /** Mass, kg. */
    public double mass() {
        return pattern.area() * ply.ply().thickness() * ply.ply().material().density();
    }
}
