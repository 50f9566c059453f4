// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.SplittableRandom;

/**
 * Separates what overlaps on a strip of fixed length. Each copy in conflict moves, one at a time, to where its weighted
 * overlap with the others is least among sampled places, refined; pairs that stay in conflict gain weight, so that the
 * search leaves its dead ends (guided local search on overlap: Egeblad, Nielsen and Odgaard 2007; Umetani et al. 2009;
 * sampling instead of exact minima: Gardeyn, Vanden Berghe and Wauters 2025).
 *
 * <p>Overlap of a pair: depth in the no-fit region times the mean size of the two, an area of sorts.
 */
final class Separation {
    private static final int ANYWHERE = 16;
    private static final int NEARBY = 12;
    private static final int TOUCHING = 16;
    private static final int REFINED = 3;
    private static final double HEAVIER_AT_LEAST = 1.2;
    private static final double HEAVIER_AT_MOST = 2.0;
    private static final double FADING = 0.95;

    private final Shapes shapes;
    private final Layout layout;
    private final SplittableRandom random;
    private final int n;
    private final double[] endX;
    private final double[] endY;
    private final double[] overlap;
    private final double[] weight;
    private final int[] order;
    private final double[] bestValue = new double[REFINED];
    private final double[] bestX = new double[REFINED];
    private final double[] bestY = new double[REFINED];
    private final int[] bestKind = new int[REFINED];
    private double length;
    private long moves;

    /** Whether to give up. */
    @FunctionalInterface
    interface Stop {
        boolean now(long moves);
    }

    Separation(Shapes shapes, Layout layout, SplittableRandom random) {
        this.shapes = shapes;
        this.layout = layout;
        this.random = random;
        n = shapes.copies();
        endX = new double[n];
        endY = new double[n];
        overlap = new double[n * n];
        weight = new double[n * n];
        order = new int[n];
    }

    /** Moves of single copies so far. */
    long moves() {
        return moves;
    }

    /**
     * Tries to free the layout of overlap.
     *
     * @param stripLength m
     * @param patience rounds without progress after which a try ends
     * @param strikes tries
     * @return total overlap left: nought on success; the layout is the best found
     */
    double separate(double stripLength, int patience, int strikes, Stop stop) {
        length = stripLength;
        java.util.Arrays.fill(weight, 1);
        refresh();
        double best = total();
        Layout incumbent = layout.copy();
        for (int strike = 0; strike < strikes && best > 0; strike++) {
            double before = best;
            int idle = 0;
            while (idle < patience && best > 0) {
                round();
                double now = total();
                if (now < best) {
                    idle = now < 0.98 * best ? 0 : idle + 1;
                    best = now;
                    incumbent.copyFrom(layout);
                } else {
                    idle++;
                }
                if (best == 0 || stop.now(moves)) {
                    layout.copyFrom(incumbent);
                    return best;
                }
                reweigh();
            }
            layout.copyFrom(incumbent);
            refresh();
            if (best > 0.98 * before && strike > 0) {
                break;
            }
        }
        return best;
    }

    private void round() {
        int many = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                if (overlap[i * n + j] > 0) {
                    order[many++] = i;
                    break;
                }
            }
        }
        for (int k = many - 1; k > 0; k--) {
            int swap = random.nextInt(k + 1);
            int held = order[k];
            order[k] = order[swap];
            order[swap] = held;
        }
        for (int k = 0; k < many; k++) {
            int copy = order[k];
            double now = evaluate(copy, layout.kind[copy], layout.x[copy], layout.y[copy], Double.POSITIVE_INFINITY);
            if (now > 0) {
                relocate(copy, now);
                moves++;
            }
        }
    }

    private void relocate(int copy, double now) {
        int[] kinds = shapes.kindsOf(copy);
        java.util.Arrays.fill(bestValue, Double.POSITIVE_INFINITY);
        consider(copy, layout.kind[copy], layout.x[copy], layout.y[copy]);
        for (int s = 0; s < ANYWHERE; s++) {
            int kind = kinds[random.nextInt(kinds.length)];
            consider(copy, kind, random.nextDouble() * roomX(kind), random.nextDouble() * roomY(kind));
        }
        double reach = 0.25 * shapes.size(layout.kind[copy]);
        for (int s = 0; s < NEARBY; s++) {
            int kind = random.nextInt(4) == 0 ? kinds[random.nextInt(kinds.length)] : layout.kind[copy];
            double x = layout.x[copy] + reach * (2 * random.nextDouble() - 1);
            double y = layout.y[copy] + reach * (2 * random.nextDouble() - 1);
            consider(copy, kind, x, y);
        }
        for (int s = 0; s < TOUCHING; s++) {
            int other = random.nextInt(n);
            if (other != copy) {
                int kind = kinds[random.nextInt(kinds.length)];
                NoFit region = shapes.noFit(layout.kind[other], kind);
                int corner = random.nextInt(region.corners());
                double x = layout.x[other] + region.cornerX(corner);
                double y = layout.y[other] + region.cornerY(corner);
                if (x >= 0 && x <= roomX(kind) && y >= 0 && y <= roomY(kind)) {
                    consider(copy, kind, x, y);
                }
            }
        }
        int winner = -1;
        double least = now;
        for (int r = 0; r < REFINED; r++) {
            if (bestValue[r] < Double.POSITIVE_INFINITY) {
                refine(copy, r);
                if (bestValue[r] < least) {
                    least = bestValue[r];
                    winner = r;
                }
            }
        }
        if (winner >= 0) {
            layout.kind[copy] = bestKind[winner];
            layout.x[copy] = bestX[winner];
            layout.y[copy] = bestY[winner];
            refresh(copy);
        }
    }

    private double roomX(int kind) {
        return Math.max(0, length - shapes.along(kind));
    }

    private double roomY(int kind) {
        return Math.max(0, shapes.width() - shapes.across(kind));
    }

    /** Keeps a place if it is among the best so far. */
    private void consider(int copy, int kind, double atX, double atY) {
        double x = Math.clamp(atX, 0, roomX(kind));
        double y = Math.clamp(atY, 0, roomY(kind));
        double value = evaluate(copy, kind, x, y, bestValue[REFINED - 1]);
        if (value >= bestValue[REFINED - 1]) {
            return;
        }
        double apart = 0.02 * shapes.size(kind);
        int at = REFINED - 1;
        for (int r = 0; r < REFINED; r++) {
            if (bestValue[r] < Double.POSITIVE_INFINITY
                    && bestKind[r] == kind
                    && Math.abs(bestX[r] - x) + Math.abs(bestY[r] - y) < apart) {
                if (value >= bestValue[r]) {
                    return;
                }
                at = r;
                break;
            }
        }
        while (at > 0 && bestValue[at - 1] > value) {
            put(at, bestKind[at - 1], bestX[at - 1], bestY[at - 1], bestValue[at - 1]);
            at--;
        }
        put(at, kind, x, y, value);
    }

    private void put(int at, int kind, double x, double y, double value) {
        bestKind[at] = kind;
        bestX[at] = x;
        bestY[at] = y;
        bestValue[at] = value;
    }

    /** Goes downhill along axes and diagonals with steps that grow on success and halve on failure. */
    private void refine(int copy, int r) {
        int kind = bestKind[r];
        double step = 0.1 * shapes.size(kind);
        double finest = 1e-4 * shapes.size(kind);
        while (step > finest && bestValue[r] > 0) {
            int way = random.nextInt(4);
            double dx = way == 1 ? 0 : step;
            double dy = way == 0 ? 0 : way == 3 ? -step : step;
            if (!downhill(copy, r, kind, dx, dy) && !downhill(copy, r, kind, -dx, -dy)) {
                step *= 0.6;
            } else {
                step *= 1.1;
            }
        }
    }

    private boolean downhill(int copy, int r, int kind, double dx, double dy) {
        double x = Math.clamp(bestX[r] + dx, 0, roomX(kind));
        double y = Math.clamp(bestY[r] + dy, 0, roomY(kind));
        double value = evaluate(copy, kind, x, y, bestValue[r]);
        if (value < bestValue[r]) {
            put(r, kind, x, y, value);
            return true;
        }
        return false;
    }

    /** Weighted overlap of a copy at a place; anything at or above the limit once it is reached. */
    private double evaluate(int copy, int kind, double x, double y, double limit) {
        if (shapes.along(kind) > length + shapes.tolerance()) {
            return Double.POSITIVE_INFINITY;
        }
        double sum = 0;
        double mine = shapes.size(kind);
        double gap = shapes.gap();
        double fromX = x - gap;
        double fromY = y - gap;
        double toX = x + shapes.along(kind) + gap;
        double toY = y + shapes.across(kind) + gap;
        for (int j = 0; j < n; j++) {
            // Boxes first, from arrays that lie side by side: nearly all pairs end here.
            if (fromX < endX[j] && layout.x[j] < toX && fromY < endY[j] && layout.y[j] < toY && j != copy) {
                double depth =
                        shapes.noFit(layout.kind[j], kind).depth(x - layout.x[j], y - layout.y[j], shapes.tolerance());
                if (depth > 0) {
                    sum += weight[copy * n + j] * depth * Math.sqrt(mine * shapes.size(layout.kind[j]));
                    if (sum >= limit) {
                        return sum;
                    }
                }
            }
        }
        return sum;
    }

    private void refresh() {
        for (int i = 0; i < n; i++) {
            refresh(i);
        }
    }

    private void refresh(int copy) {
        int kind = layout.kind[copy];
        endX[copy] = layout.x[copy] + shapes.along(kind);
        endY[copy] = layout.y[copy] + shapes.across(kind);
        for (int j = 0; j < n; j++) {
            // With itself a copy is in conflict as far as it sticks out of the strip: it must be turned.
            double out = endX[copy] - length;
            double value = j == copy && out > shapes.tolerance() ? out * shapes.size(kind) : 0;
            if (j != copy) {
                value = shapes.noFit(layout.kind[j], kind)
                                .depth(layout.x[copy] - layout.x[j], layout.y[copy] - layout.y[j], shapes.tolerance())
                        * Math.sqrt(shapes.size(kind) * shapes.size(layout.kind[j]));
            }
            overlap[copy * n + j] = value;
            overlap[j * n + copy] = value;
        }
    }

    private double total() {
        double sum = 0;
        for (double value : overlap) {
            sum += value;
        }
        return sum / 2;
    }

    private void reweigh() {
        double most = 0;
        for (double value : overlap) {
            most = Math.max(most, value);
        }
        for (int k = 0; k < overlap.length; k++) {
            weight[k] = overlap[k] > 0
                    ? weight[k] * (HEAVIER_AT_LEAST + (HEAVIER_AT_MOST - HEAVIER_AT_LEAST) * overlap[k] / most)
                    : Math.max(1, weight[k] * FADING);
        }
    }
}
