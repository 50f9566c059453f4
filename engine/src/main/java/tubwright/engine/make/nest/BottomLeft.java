// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The plain rule that every search is measured against: the largest first, each as far back on the roll as it goes and
 * there as low as it goes, holes filled (bottom-left-fill; Burke, Hellier, Kendall and Whitwell 2006). Heights tried are
 * those where a piece touches another or an edge; on each the forbidden stretches of all neighbours are laid together.
 */
final class BottomLeft {
    private static final int MOST_HEIGHTS = 600;
    private static final int FEWEST_HEIGHTS = 40;

    /** Heights times parts of no-fit regions that may be looked at for one piece in one turn. */
    private static final long MOST_WORK = 400_000;

    private final Shapes shapes;
    private final Layout layout;
    private final boolean[] placed;
    private double[] stretches = new double[256];

    private BottomLeft(Shapes shapes) {
        this.shapes = shapes;
        this.layout = new Layout(shapes.copies());
        this.placed = new boolean[shapes.copies()];
    }

    static Layout of(Shapes shapes) {
        BottomLeft rule = new BottomLeft(shapes);
        IntStream.range(0, shapes.copies())
                .boxed()
                .sorted((a, b) -> Double.compare(shapes.size(shapes.kindsOf(b)[0]), shapes.size(shapes.kindsOf(a)[0])))
                .forEach(rule::place);
        return rule.layout;
    }

    private void place(int copy) {
        double bestEnd = Double.POSITIVE_INFINITY;
        double bestY = 0;
        for (int kind : shapes.kindsOf(copy)) {
            for (double y : heights(kind)) {
                double x = leastX(kind, y);
                double end = x + shapes.along(kind);
                if (end < bestEnd - shapes.tolerance() || end <= bestEnd + shapes.tolerance() && y < bestY) {
                    bestEnd = end;
                    bestY = y;
                    layout.kind[copy] = kind;
                    layout.x[copy] = x;
                    layout.y[copy] = y;
                }
            }
        }
        placed[copy] = true;
    }

    private double[] heights(int kind) {
        double top = Math.max(0, shapes.width() - shapes.across(kind));
        double[] all = new double[64];
        int n = 0;
        all[n++] = 0;
        all[n++] = top;
        long parts = 1;
        for (int j = 0; j < placed.length; j++) {
            if (placed[j]) {
                NoFit region = shapes.noFit(layout.kind[j], kind);
                parts += region.parts();
                for (int c = 0; c < region.corners(); c++) {
                    double y = layout.y[j] + region.cornerY(c);
                    if (y > 0 && y < top) {
                        if (n == all.length) {
                            all = Arrays.copyOf(all, 2 * n);
                        }
                        all[n++] = y;
                    }
                }
            }
        }
        Arrays.sort(all, 0, n);
        double near = shapes.tolerance();
        int kept = 1;
        for (int i = 1; i < n; i++) {
            if (all[i] > all[kept - 1] + near) {
                all[kept++] = all[i];
            }
        }
        int most = (int) Math.clamp(MOST_WORK / parts, FEWEST_HEIGHTS, MOST_HEIGHTS);
        if (kept <= most) {
            return Arrays.copyOf(all, kept);
        }
        double[] some = new double[most];
        for (int i = 0; i < most; i++) {
            some[i] = all[(int) ((long) i * (kept - 1) / (most - 1))];
        }
        return some;
    }

    /** Least x at a height that lies in no forbidden stretch. */
    private double leastX(int kind, double y) {
        int n = 0;
        for (int j = 0; j < placed.length; j++) {
            if (placed[j]) {
                NoFit region = shapes.noFit(layout.kind[j], kind);
                if (n + 2 * region.parts() > stretches.length) {
                    stretches = Arrays.copyOf(stretches, 2 * (n + 2 * region.parts()));
                }
                n = region.forbidden(y - layout.y[j], layout.x[j], shapes.tolerance(), stretches, n);
            }
        }
        double x = 0;
        boolean moved = true;
        while (moved) {
            moved = false;
            for (int i = 0; i < n; i += 2) {
                if (x > stretches[i] + shapes.tolerance() && x < stretches[i + 1] - shapes.tolerance()
                        || x == 0 && stretches[i] < 0 && stretches[i + 1] > shapes.tolerance()) {
                    x = stretches[i + 1];
                    moved = true;
                }
            }
        }
        return x;
    }
}
