// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.shape.Contour;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.PlacedWall;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.ShapeException.Subject;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;

/**
 * The curves to cut along, folded onto the right half: the mesh of the two halves is one and the same, so a curve of one
 * side leaves its edges on the other side too.
 */
final class Curves {
    private final TubShape shape;
    private final LayoutIndex index;
    private final double size;
    private final double coarsening;

    Curves(TubShape shape, LayoutIndex index, MeshSettings settings) {
        this.shape = shape;
        this.index = index;
        coarsening = settings.coarsening();
        size = settings.size() / coarsening;
    }

    /** Level of a contour in a view, folded: sign -1 takes the left half's points. */
    private static CutCurve.Level level(View view, Contour contour, double sign, double offset) {
        return switch (view) {
            case PLAN -> (x, y, z) -> contour.distance(x, sign * y) - offset;
            case SIDE -> (x, y, z) -> contour.distance(x, z) - offset;
            case FRONT -> (x, y, z) -> contour.distance(sign * y, z) - offset;
        };
    }

    /** Signs with which a contour across the centreline must be folded: one when it is its own mirror image. */
    private static double[] signs(View view, Contour contour, boolean acrossCentre) {
        if (!acrossCentre || view == View.SIDE) {
            return new double[] {1};
        }
        Contour mirror = view == View.PLAN ? contour.mirroredInV() : contour.mirroredInU();
        double[] points = contour.points(contour.perimeter() / 64);
        for (int i = 0; i < points.length; i += 2) {
            if (Math.abs(mirror.distance(points[i], points[i + 1])) > 1e-9) {
                return new double[] {1, -1};
            }
        }
        return new double[] {1};
    }

    private double openingSize(Contour contour) {
        double[] b = contour.bounds();
        double width = Math.min(b[1] - b[0], b[3] - b[2]);
        double h = Math.min(size / 2, Math.max(contour.smallestRadius() / 2, size / 4));
        return coarsening * Math.min(h, Math.max(width / 6, size / 16));
    }

    /** Curves on the skin: openings, then patches. */
    List<CutCurve> skin(SkinChart chart) {
        List<CutCurve> out = new ArrayList<>();
        for (Opening o : shape.openings()) {
            List<double[]> bands = new ArrayList<>();
            for (String strip : o.strips()) {
                int k = shape.strip(strip).orElseThrow();
                bands.add(new double[] {0, chart.cellsA(), chart.stripStart[k], chart.stripStart[k + 1]});
            }
            double[] signs = signs(o.view(), o.contour(), o.side() == Side.CENTRE);
            boolean both = o.side() == Side.BOTH || o.side() == Side.CENTRE && signs.length == 1;
            for (double sign : signs) {
                out.add(new CutCurve(
                        o.name(),
                        level(o.view(), o.contour(), sign, 0),
                        bands,
                        both ? CutCurve.Away.INSIDE : CutCurve.Away.NOTHING,
                        openingSize(o.contour()),
                        sharp(chart, o, sign)));
            }
        }
        for (int i = 0; i < index.layout.patches().size(); i++) {
            SurfaceLayout.Patch patch = index.layout.patches().get(i);
            List<double[]> bands = index.bands(i, chart);
            if (!bands.isEmpty()) {
                for (CutCurve.Level level : skinLevels(patch)) {
                    out.add(new CutCurve(
                            patch.name(), level, bands, CutCurve.Away.NOTHING, patchSize(patch), new double[0]));
                }
            }
        }
        return out;
    }

    /** Folded levels of a patch's extent on the skin; none where it fills its areas. */
    private List<CutCurve.Level> skinLevels(SurfaceLayout.Patch patch) {
        return switch (patch.extent()) {
            case SurfaceLayout.Everywhere _ -> List.of();
            case SurfaceLayout.Inside in -> {
                List<CutCurve.Level> levels = new ArrayList<>();
                for (double sign : signs(in.view(), in.contour(), in.side() == Side.CENTRE)) {
                    levels.add(level(in.view(), in.contour(), sign, 0));
                }
                yield levels;
            }
            case SurfaceLayout.AroundOpening around -> {
                Opening o = opening(patch, around.opening());
                List<CutCurve.Level> levels = new ArrayList<>();
                for (double sign : signs(o.view(), o.contour(), o.side() == Side.CENTRE)) {
                    levels.add(level(o.view(), o.contour(), sign, around.distance()));
                }
                yield levels;
            }
            case SurfaceLayout.AroundPoint around -> pointLevels(around);
        };
    }

    private List<CutCurve.Level> pointLevels(SurfaceLayout.AroundPoint around) {
        double[] p = around.point();
        double py = Math.abs(p[1]);
        List<CutCurve.Level> levels = new ArrayList<>();
        levels.add(ball(p[0], py, p[2], around.distance()));
        if (py > 0 && py < around.distance()) {
            // Reaches over the centreline: the far part, folded.
            levels.add(ball(p[0], -py, p[2], around.distance()));
        }
        return levels;
    }

    private static CutCurve.Level ball(double px, double py, double pz, double radius) {
        return (x, y, z) -> Math.sqrt((x - px) * (x - px) + (y - py) * (y - py) + (z - pz) * (z - pz)) - radius;
    }

    private Opening opening(SurfaceLayout.Patch patch, String name) {
        Optional<Opening> found =
                shape.openings().stream().filter(o -> o.name().equals(name)).findFirst();
        return found.orElseThrow(() -> ShapeException.about(
                Subject.PATCH,
                patch.name(),
                "patch \"" + patch.name() + "\" is round opening \"" + name + "\", which does not exist"));
    }

    private double patchSize(SurfaceLayout.Patch patch) {
        double width = switch (patch.extent()) {
            case SurfaceLayout.Everywhere _ -> Double.POSITIVE_INFINITY;
            case SurfaceLayout.Inside in -> {
                double[] b = in.contour().bounds();
                yield Math.min(b[1] - b[0], b[3] - b[2]);
            }
            case SurfaceLayout.AroundOpening around -> 2 * around.distance();
            case SurfaceLayout.AroundPoint around -> 2 * around.distance();
        };
        return coarsening * Math.min(size, Math.max(width / 4, size / 8));
    }

    /** Whether a spot lies within a patch's extent: negative inside. True sides, not folded. */
    CutCurve.Level extent(SurfaceLayout.Patch patch, boolean left, Optional<PlacedWall> wall) {
        return switch (patch.extent()) {
            case SurfaceLayout.Everywhere _ -> (x, y, z) -> -1;
            case SurfaceLayout.Inside in -> {
                double sign = !wall.isPresent() && left && in.side() != Side.CENTRE ? -1 : 1;
                boolean covered = wall.isPresent() || in.side().covers(left);
                View view = wall.map(w -> w.wall().holeView()).orElse(in.view());
                yield covered ? level(view, in.contour(), sign, 0) : (x, y, z) -> 1;
            }
            case SurfaceLayout.AroundOpening around -> {
                if (wall.isPresent()) {
                    yield hole(wall.get(), around.opening())
                            .map(h -> level(wall.get().wall().holeView(), h.contour(), 1, around.distance()))
                            .orElse((x, y, z) -> 1);
                }
                Opening o = opening(patch, around.opening());
                double sign = left && o.side() != Side.CENTRE ? -1 : 1;
                yield o.side().covers(left) ? level(o.view(), o.contour(), sign, around.distance()) : (x, y, z) -> 1;
            }
            case SurfaceLayout.AroundPoint around ->
                ball(around.point()[0], around.point()[1], around.point()[2], around.distance());
        };
    }

    /** Level of an opening on one side in true coordinates. */
    static CutCurve.Level opening(Opening o, boolean left) {
        return level(o.view(), o.contour(), left && o.side() != Side.CENTRE ? -1 : 1, 0);
    }

    private static Optional<Wall.Hole> hole(PlacedWall wall, String name) {
        return wall.wall().holes().stream()
                .filter(h -> name.equals(h.name()) || name.equals(wall.wall().name() + "/" + h.name()))
                .findFirst();
    }

    /** Curves on a wall: its outer edge, its holes, then patches. */
    List<CutCurve> wall(WallChart chart) {
        PlacedWall wall = chart.wall;
        List<double[]> all = List.of(new double[] {0, chart.cellsA(), 0, chart.cellsB()});
        List<CutCurve> out = new ArrayList<>();
        var evaluator = shape.evaluator();
        out.add(new CutCurve(
                wall.wall().name(), evaluator::distance, all, CutCurve.Away.OUTSIDE, size, wall.sharpCorners()));
        View view = wall.wall().holeView();
        for (Wall.Hole hole : wall.wall().holes()) {
            double[] signs = signs(view, hole.contour(), wall.across());
            for (double sign : signs) {
                out.add(new CutCurve(
                        wall.wall().name() + "/" + hole.name(),
                        level(view, hole.contour(), sign, 0),
                        all,
                        signs.length == 1 ? CutCurve.Away.INSIDE : CutCurve.Away.NOTHING,
                        openingSize(hole.contour()),
                        sharp(wall, hole, sign)));
            }
        }
        for (int i = 0; i < index.layout.patches().size(); i++) {
            SurfaceLayout.Patch patch = index.layout.patches().get(i);
            if (index.patchCovers(i, wall.wall())) {
                for (CutCurve.Level level : wallLevels(patch, wall)) {
                    out.add(new CutCurve(
                            patch.name(), level, all, CutCurve.Away.NOTHING, patchSize(patch), new double[0]));
                }
            }
        }
        return out;
    }

    private List<CutCurve.Level> wallLevels(SurfaceLayout.Patch patch, PlacedWall wall) {
        View view = wall.wall().holeView();
        return switch (patch.extent()) {
            case SurfaceLayout.Everywhere _ -> List.of();
            case SurfaceLayout.Inside in -> {
                List<CutCurve.Level> levels = new ArrayList<>();
                for (double sign : signs(view, in.contour(), wall.across())) {
                    levels.add(level(view, in.contour(), sign, 0));
                }
                yield levels;
            }
            case SurfaceLayout.AroundOpening around -> {
                List<CutCurve.Level> levels = new ArrayList<>();
                hole(wall, around.opening()).ifPresent(h -> {
                    for (double sign : signs(view, h.contour(), wall.across())) {
                        levels.add(level(view, h.contour(), sign, around.distance()));
                    }
                });
                yield levels;
            }
            case SurfaceLayout.AroundPoint around -> {
                if (wall.across()) {
                    yield pointLevels(around);
                }
                yield List.of(ball(around.point()[0], around.point()[1], around.point()[2], around.distance()));
            }
        };
    }

    /** Sharp corners of a hole, on the half that is meshed. */
    private static double[] sharp(PlacedWall wall, Wall.Hole hole, double sign) {
        double[] c = hole.contour().sharpCorners();
        double[] out = new double[c.length / 2 * 3];
        int n = 0;
        for (int i = 0; i < c.length; i += 2) {
            double[] at = wall.fromView(c[i], c[i + 1]);
            double[] p = wall.position(at[0], at[1]);
            if (!wall.across() || sign * p[1] >= 0) {
                out[n++] = p[0];
                out[n++] = wall.across() ? sign * p[1] : p[1];
                out[n++] = p[2];
            }
        }
        return java.util.Arrays.copyOf(out, n);
    }

    /** Sharp corners of an opening on the skin, by bisection over the strips in its view. */
    private double[] sharp(SkinChart chart, Opening o, double sign) {
        double[] c = o.contour().sharpCorners();
        double[] out = new double[c.length / 2 * 3];
        int n = 0;
        SkinPoint p = new SkinPoint();
        for (int i = 0; i < c.length; i += 2) {
            double v = o.view() == View.PLAN ? sign * c[i + 1] : c[i + 1];
            if (o.view() == View.PLAN && v < 0) {
                continue;
            }
            double a = chart.a(c[i]);
            for (String strip : o.strips()) {
                int k = shape.strip(strip).orElseThrow();
                double lo = chart.stripStart[k];
                double hi = chart.stripStart[k + 1];
                double fl = seen(chart, a, lo, k, o.view(), p) - v;
                double fh = seen(chart, a, hi, k, o.view(), p) - v;
                if (fl == 0 || fl * fh < 0) {
                    for (int it = 0; it < 50; it++) {
                        double mid = (lo + hi) / 2;
                        double f = seen(chart, a, mid, k, o.view(), p) - v;
                        if ((f < 0) == (fl < 0)) {
                            lo = mid;
                        } else {
                            hi = mid;
                        }
                    }
                    seen(chart, a, lo, k, o.view(), p);
                    out[n++] = p.x;
                    out[n++] = p.y;
                    out[n++] = p.z;
                    break;
                }
            }
        }
        return java.util.Arrays.copyOf(out, n);
    }

    private static double seen(SkinChart chart, double a, double b, int strip, View view, SkinPoint p) {
        chart.evaluate(a, b, strip, chart.bay(a), p);
        return view.v(p.x, p.y, p.z);
    }
}
