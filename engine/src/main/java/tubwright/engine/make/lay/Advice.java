// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.lay;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import tubwright.engine.make.drape.LayLimits;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.make.ply.LaidPly;
import tubwright.engine.mesh.Mesh;

/** What would help where a ply passes a limit: where to dart, split or slit it. */
final class Advice {
    private Advice() {}

    /** A ply smaller than this is a crumb: what a patch spills over a seam, m². */
    static final double CRUMB = 1e-3;

    private static final int MOST_PLACES = 3;

    static double area(Mesh mesh, LaidPly ply) {
        double area = 0;
        for (int e : ply.elements()) {
            area += mesh.area(e);
        }
        return area;
    }

    static DrapedPly on(Mesh mesh, DrapedPly laid) {
        List<String> advice = new ArrayList<>(laid.advice());
        DrapedPly.Figures f = laid.figures();
        if (f.area() < CRUMB) {
            advice.add(String.format(
                    Locale.ROOT, "only %.1f cm²: move the patch off the seam, or leave this out", 1e4 * f.area()));
        } else {
            locked(mesh, laid, advice);
            f.steering()
                    .filter(s -> f.largestTurn() > DrapedPly.TAPE_TURN)
                    .ifPresent(s -> advice.add(String.format(
                            Locale.ROOT,
                            "laid straight it turns %.0f° from nominal; to follow, it would be steered to %.2g m, which bears tape"
                                    + " of %.0f mm: split the ply where it turns",
                            Math.toDegrees(f.largestTurn()),
                            s.radius(),
                            Math.max(1, Math.floor(1e3 * s.widest())))));
            Distortion d = laid.flat().distortion();
            if (d.beyond() > DrapedPly.CRUMBS) {
                advice.add(String.format(
                        Locale.ROOT,
                        "must stretch %s when laid: slit it in from its edge where it wrinkles, along %s",
                        Parting.stretch(d),
                        laid.ply().zones().size() > 1 ? "the edges of its zones" : "its fillets"));
            }
        }
        if (laid.flat().overlapsItself()) {
            double[] at = Outlines.crossing(laid.flat().outlines().getFirst());
            advice.add(String.format(
                    Locale.ROOT,
                    "its pattern overlaps itself %.0f mm along and %.0f mm across from its start: split the ply there",
                    1e3 * (at[0] - laid.flat().start()[0]),
                    1e3 * (at[1] - laid.flat().start()[1])));
        }
        return new DrapedPly(
                laid.ply(), laid.limits(), laid.start(), laid.turned(), laid.fibres(), f, laid.flat(), advice);
    }

    /** A run of neighbouring elements where the cloth locks or does not reach. */
    record Spot(String part, double fromX, double toX, double area, List<Integer> elements) {}

    /** The largest places where a cloth is sheared beyond its lock. */
    static List<Spot> locked(Mesh mesh, LaidPly ply, DrapedPly.Fibres fibres, LayLimits limits) {
        return largest(mesh, ply, i -> Math.abs(fibres.shear(i)) > limits.locking());
    }

    private static List<Spot> largest(Mesh mesh, LaidPly ply, IntPredicate bad) {
        List<Integer> elements = new ArrayList<>();
        double area = 0;
        for (int i = 0; i < ply.elements().length; i++) {
            area += mesh.area(ply.elements()[i]);
            if (bad.test(i)) {
                elements.add(ply.elements()[i]);
            }
        }
        double least = DrapedPly.BARE / 2 * area;
        return spots(mesh, elements).stream()
                .filter(s -> s.area() > least)
                .limit(MOST_PLACES)
                .toList();
    }

    private static void locked(Mesh mesh, DrapedPly laid, List<String> advice) {
        LaidPly ply = laid.ply();
        locked(mesh, ply, laid.fibres(), laid.limits())
                .forEach(s -> advice.add(String.format(
                        Locale.ROOT,
                        "locks on %s (%.0f cm²): dart it there, or split the ply at x = %.0f mm",
                        where(s),
                        1e4 * s.area(),
                        1e3 * (s.fromX() + s.toX()) / 2)));
        largest(mesh, ply, i -> Double.isNaN(laid.fibres().warp()[i]))
                .forEach(s -> advice.add(String.format(
                        Locale.ROOT,
                        "laid from x = %.0f mm it cannot reach %s (%.0f cm²): split the ply at x = %.0f mm and lay that part"
                                + " from a start of its own",
                        1e3 * laid.start()[0],
                        where(s),
                        1e4 * s.area(),
                        1e3 * (s.fromX() + s.toX()) / 2)));
    }

    private static String where(Spot s) {
        return s.part()
                + (s.toX() - s.fromX() < 0.01
                        ? String.format(Locale.ROOT, " near x = %.0f mm", 1e3 * s.fromX())
                        : String.format(Locale.ROOT, " between x = %.0f and %.0f mm", 1e3 * s.fromX(), 1e3 * s.toX()));
    }

    /** Connected by nodes, largest first. */
    private static List<Spot> spots(Mesh mesh, List<Integer> elements) {
        Map<Integer, List<Integer>> byNode = new HashMap<>();
        for (int e : elements) {
            for (int k = 0; k < mesh.cornerCount(e); k++) {
                byNode.computeIfAbsent(mesh.elementNodes()[4 * e + k], n -> new ArrayList<>())
                        .add(e);
            }
        }
        Set<Integer> left = new LinkedHashSet<>(elements);
        List<Spot> spots = new ArrayList<>();
        while (!left.isEmpty()) {
            ArrayDeque<Integer> queue = new ArrayDeque<>();
            List<Integer> members = new ArrayList<>();
            int first = left.iterator().next();
            left.remove(first);
            queue.add(first);
            double from = Double.POSITIVE_INFINITY;
            double to = Double.NEGATIVE_INFINITY;
            double area = 0;
            while (!queue.isEmpty()) {
                int e = queue.poll();
                members.add(e);
                double x = Mould.centre(mesh, e)[0];
                from = Math.min(from, x);
                to = Math.max(to, x);
                area += mesh.area(e);
                for (int k = 0; k < mesh.cornerCount(e); k++) {
                    for (int next : byNode.get(mesh.elementNodes()[4 * e + k])) {
                        if (left.remove(next)) {
                            queue.add(next);
                        }
                    }
                }
            }
            String side = mesh.region(first).mirrored() ? " L" : " R";
            spots.add(new Spot(mesh.region(first).part() + side, from, to, area, members));
        }
        spots.sort(Comparator.comparingDouble(s -> -s.area()));
        return spots;
    }
}
