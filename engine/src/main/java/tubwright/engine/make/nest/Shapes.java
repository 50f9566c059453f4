// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * All copies of all pieces in all turns they may have, and where they may not lie beside each other. A kind is a shape in
 * a turn; pieces of the same shape share it. No-fit regions are made when first asked for and kept.
 */
final class Shapes {
    private static final double TOLERANCE = 1e-9;

    private final double width;
    private final double gap;
    private final int[] pieceOf;
    private final int[][] kinds;
    private final int[][] quarters;
    private final double[] along;
    private final double[] across;
    private final double[] size;
    private final List<List<double[]>> parts = new ArrayList<>();
    private final NoFit[] noFit;

    /**
     * @throws NestException naming a piece wider than the roll in every turn it may have
     */
    Shapes(List<Piece> pieces, Roll roll) {
        width = roll.width();
        gap = roll.gap();
        kinds = new int[pieces.size()][];
        quarters = new int[pieces.size()][];
        List<Integer> copies = new ArrayList<>();
        List<Outline> outlines = new ArrayList<>();
        Map<List<Double>, Integer> known = new HashMap<>();
        for (int p = 0; p < pieces.size(); p++) {
            List<Integer> mine = new ArrayList<>();
            List<Integer> turns = new ArrayList<>();
            for (int q : pieces.get(p).turns().quarters()) {
                Outline turned = pieces.get(p).outline().turned(q).atOrigin();
                if (turned.width() <= width * (1 + TOLERANCE)) {
                    int kind = known.computeIfAbsent(key(turned), _ -> {
                        outlines.add(turned);
                        return outlines.size() - 1;
                    });
                    if (!mine.contains(kind)) {
                        mine.add(kind);
                        turns.add(q);
                    }
                }
            }
            if (mine.isEmpty()) {
                throw tooWide(pieces.get(p));
            }
            kinds[p] = mine.stream().mapToInt(Integer::intValue).toArray();
            quarters[p] = turns.stream().mapToInt(Integer::intValue).toArray();
            for (int c = 0; c < pieces.get(p).count(); c++) {
                copies.add(p);
            }
        }
        pieceOf = copies.stream().mapToInt(Integer::intValue).toArray();
        int n = outlines.size();
        along = outlines.stream().mapToDouble(Outline::length).toArray();
        across = outlines.stream().mapToDouble(Outline::width).toArray();
        size = outlines.stream().mapToDouble(o -> Math.sqrt(o.area())).toArray();
        outlines.forEach(o -> parts.add(ConvexParts.of(o)));
        noFit = new NoFit[n * n];
    }

    private NestException tooWide(Piece piece) {
        return new NestException(String.format(
                Locale.ROOT,
                "'%s' is %.0f mm across the roll, which is %.0f mm wide; split the pattern or take a wider roll",
                piece.label(),
                1e3 * piece.outline().width(),
                1e3 * width));
    }

    /** Corners from the least on, so that a square turned is the same square. */
    private static List<Double> key(Outline outline) {
        double[] x = outline.x();
        double[] y = outline.y();
        int first = 0;
        for (int i = 1; i < x.length; i++) {
            if (x[i] < x[first] || x[i] == x[first] && y[i] < y[first]) {
                first = i;
            }
        }
        List<Double> key = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            key.add(x[(first + i) % x.length]);
            key.add(y[(first + i) % x.length]);
        }
        return key;
    }

    int copies() {
        return pieceOf.length;
    }

    int pieceOf(int copy) {
        return pieceOf[copy];
    }

    /** Kinds a copy may have. */
    int[] kindsOf(int copy) {
        return kinds[pieceOf[copy]];
    }

    /** Quarters of a turn that make a copy this kind. */
    int quarters(int copy, int kind) {
        int p = pieceOf[copy];
        for (int i = 0; i < kinds[p].length; i++) {
            if (kinds[p][i] == kind) {
                return quarters[p][i];
            }
        }
        throw new IllegalArgumentException("copy " + copy + " has no kind " + kind);
    }

    /** The longest piece in its shortest turn, m. */
    double longest() {
        double most = 0;
        for (int[] turned : kinds) {
            double least = Double.POSITIVE_INFINITY;
            for (int kind : turned) {
                least = Math.min(least, along[kind]);
            }
            most = Math.max(most, least);
        }
        return most;
    }

    double along(int kind) {
        return along[kind];
    }

    double across(int kind) {
        return across[kind];
    }

    /** Root of the area, m. */
    double size(int kind) {
        return size[kind];
    }

    /** Between pieces, m. */
    double gap() {
        return gap;
    }

    double width() {
        return width;
    }

    /** What counts as touching, m. */
    double tolerance() {
        return TOLERANCE * width;
    }

    /** Where the second kind may not lie beside the first, which lies at the origin. */
    NoFit noFit(int fixed, int moving) {
        int at = fixed * along.length + moving;
        NoFit found = noFit[at];
        if (found == null) {
            found = new NoFit(parts.get(fixed), parts.get(moving), gap);
            noFit[at] = found;
        }
        return found;
    }
}
