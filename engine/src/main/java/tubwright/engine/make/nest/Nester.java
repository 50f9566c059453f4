// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Finds a short nest: from bottom-left the strip is shortened step by step and what then overlaps is separated. Where
 * that fails two large pieces change places and the search goes on; once shortening in large steps has failed for good,
 * small ones follow from the best nest so far. What is returned is always free of overlap.
 *
 * <p>The same pieces, roll, seed and number of moves give the same nest; a search stopped by its listener gives the best
 * so far.
 */
public final class Nester {
    private static final double LARGE_STEP = 0.005;
    private static final double SMALL_STEP = 2e-3;
    private static final double SMALLEST_STEP = 5e-5;
    private static final int PATIENCE = 150;
    private static final int SHORT_PATIENCE = 80;
    private static final int MOST_FAILURES = 40;

    private final Shapes shapes;
    private final Roll roll;
    private final List<Piece> pieces;
    private final Listener listener;
    private final long most;
    private final SplittableRandom random;
    private final Layout layout;
    private final Layout best;
    private final Separation separation;
    private final double shortest;
    private double bestLength;

    private record Failed(Layout layout, double overlap) {}

    /** Hears how far a search has come, and may stop it. */
    public interface Listener {
        /**
         * Called when a shorter nest was found.
         *
         * @param length of the roll used, m
         * @param utilisation area of the pieces over that of the roll used
         * @param moves done
         * @param most moves allowed
         */
        void shorter(double length, double utilisation, long moves, long most);

        /** Whether to stop; asked often. */
        default boolean cancelled() {
            return false;
        }

        /** Says nothing, stops nothing. */
        static Listener silent() {
            return (length, utilisation, moves, most) -> {};
        }
    }

    private Nester(List<Piece> pieces, Roll roll, long seed, long most, Listener listener) {
        this.pieces = List.copyOf(pieces);
        this.roll = roll;
        this.most = most;
        this.listener = listener;
        if (pieces.isEmpty()) {
            throw new NestException("there is nothing to nest: no pieces");
        }
        shapes = new Shapes(pieces, roll);
        random = new SplittableRandom(seed);
        best = BottomLeft.of(shapes);
        bestLength = best.length(shapes);
        shortest = Math.max(nest().area() / roll.width(), shapes.longest());
        layout = best.copy();
        separation = new Separation(shapes, layout, random);
    }

    /**
     * By the plain rule alone: the largest first, as far back and as low as they go.
     *
     * @throws NestException naming a piece that does not fit on the roll
     */
    public static Nest bottomLeft(List<Piece> pieces, Roll roll) {
        return new Nester(pieces, roll, 0, 0, Listener.silent()).nest();
    }

    /**
     * By search.
     *
     * @param seed of its random numbers
     * @param moves of single copies to spend; some thousand a second
     * @throws NestException naming a piece that does not fit on the roll
     */
    public static Nest search(List<Piece> pieces, Roll roll, long seed, long moves, Listener listener) {
        Nester nester = new Nester(pieces, roll, seed, moves, listener);
        nester.tell();
        while (!nester.finished() && !nester.perfect()) {
            nester.explore();
            nester.compress();
        }
        return nester.nest();
    }

    private boolean finished() {
        return separation.moves() >= most || listener.cancelled();
    }

    /** No nest is shorter than the area over the width, nor than its longest piece. */
    private boolean perfect() {
        return bestLength <= shortest * (1 + 1e-9);
    }

    private double shorter(double step) {
        return Math.max(shortest, bestLength * (1 - step));
    }

    private void explore() {
        double target = shorter(LARGE_STEP);
        layout.copyFrom(best);
        shorten(bestLength, target, false);
        List<Failed> failed = new ArrayList<>();
        while (failed.size() < MOST_FAILURES && !finished() && !perfect()) {
            double left = separation.separate(target, PATIENCE, 3, _ -> finished());
            if (left == 0 && layout.length(shapes) < bestLength) {
                keep();
                failed.clear();
                double from = bestLength;
                target = shorter(LARGE_STEP);
                shorten(from, target, false);
            } else {
                failed.add(new Failed(layout.copy(), left));
                failed.sort(Comparator.comparingDouble(Failed::overlap));
                // The least overlap is the likeliest to go on from, but not the only one.
                double drawn = random.nextDouble() * random.nextDouble();
                layout.copyFrom(failed.get((int) (drawn * failed.size())).layout);
                swapTwoLarge(target);
            }
        }
    }

    private void compress() {
        double step = SMALL_STEP;
        while (step > SMALLEST_STEP && !finished() && !perfect()) {
            double target = shorter(step);
            layout.copyFrom(best);
            shorten(bestLength, target, true);
            if (separation.separate(target, SHORT_PATIENCE, 1, _ -> finished()) == 0
                    && layout.length(shapes) < bestLength) {
                keep();
            } else {
                step *= 0.8;
            }
        }
    }

    private void keep() {
        best.copyFrom(layout);
        bestLength = layout.length(shapes);
        tell();
    }

    /** Moves everything beyond a cut back by what is lost: a cut anywhere, or at the end. */
    private void shorten(double from, double to, boolean anywhere) {
        double cut = anywhere ? random.nextDouble() * from : from;
        for (int i = 0; i < shapes.copies(); i++) {
            int kind = layout.kind[i];
            double room = Math.max(0, to - shapes.along(kind));
            if (layout.x[i] + shapes.along(kind) / 2 > cut) {
                layout.x[i] -= from - to;
            }
            layout.x[i] = Math.clamp(layout.x[i], 0, room);
        }
    }

    private void swapTwoLarge(double target) {
        int n = shapes.copies();
        int a = large();
        int b = large();
        for (int tries = 0; tries < 20 && shapes.pieceOf(a) == shapes.pieceOf(b); tries++) {
            b = large();
        }
        if (n < 2 || a == b) {
            return;
        }
        double ax = layout.x[a] + shapes.along(layout.kind[a]) / 2;
        double ay = layout.y[a] + shapes.across(layout.kind[a]) / 2;
        double bx = layout.x[b] + shapes.along(layout.kind[b]) / 2;
        double by = layout.y[b] + shapes.across(layout.kind[b]) / 2;
        centre(a, bx, by, target);
        centre(b, ax, ay, target);
    }

    /** One of the larger half, drawn by three. */
    private int large() {
        int chosen = random.nextInt(shapes.copies());
        for (int i = 0; i < 2; i++) {
            int other = random.nextInt(shapes.copies());
            if (shapes.size(layout.kind[other]) > shapes.size(layout.kind[chosen])) {
                chosen = other;
            }
        }
        return chosen;
    }

    private void centre(int copy, double x, double y, double target) {
        int kind = layout.kind[copy];
        double roomX = Math.max(0, target - shapes.along(kind));
        double roomY = Math.max(0, shapes.width() - shapes.across(kind));
        layout.x[copy] = Math.clamp(x - shapes.along(kind) / 2, 0, roomX);
        layout.y[copy] = Math.clamp(y - shapes.across(kind) / 2, 0, roomY);
    }

    private void tell() {
        listener.shorter(bestLength, nest().utilisation(), separation.moves(), most);
    }

    private Nest nest() {
        List<Nest.Placement> placements = new ArrayList<>();
        for (int i = 0; i < shapes.copies(); i++) {
            placements.add(
                    new Nest.Placement(shapes.pieceOf(i), shapes.quarters(i, best.kind[i]), best.x[i], best.y[i]));
        }
        return new Nest(roll, pieces, placements, bestLength);
    }
}
