// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.shape;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import tubwright.engine.shape.ShapeException.Subject;

/**
 * The tub as geometry, checked when made: frames lofted into a skin of strips, openings cut through it and walls inside
 * it. Axes: x aft, y right, z up. Immutable.
 */
public final class TubShape {
    private final List<Frame> frames;
    private final List<String> strips;
    private final Loft loft;
    private final List<Opening> openings;
    private final List<Wall> walls;
    private final LoftCurves curves;
    private final List<PlacedWall> placed;

    private TubShape(List<Frame> frames, List<String> strips, Loft loft, List<Opening> openings, List<Wall> walls) {
        this.frames = List.copyOf(frames);
        this.strips = List.copyOf(strips);
        this.loft = loft;
        this.openings = List.copyOf(openings);
        this.walls = List.copyOf(walls);
        OutlineChecks.frames(this.frames);
        curves = new LoftCurves(this.frames, loft);
        checkStrips();
        checkSections();
        checkNames();
        this.openings.forEach(opening -> OpeningChecks.check(this, opening));
        OpeningChecks.apart(this.openings);
        placed = this.walls.stream()
                .flatMap(wall -> PlacedWall.place(this, wall).stream())
                .toList();
    }

    /**
     * Makes and checks a shape.
     *
     * @param frames at least two, from front to rear
     * @param strips names of the strips from bottom to top, one fewer than outline corners
     * @param loft how the skin runs from frame to frame
     * @param openings openings in the skin
     * @param walls flat panels inside
     * @throws ShapeException what is wrong and with which frame, corner, opening or wall
     */
    public static TubShape of(
            List<Frame> frames, List<String> strips, Loft loft, List<Opening> openings, List<Wall> walls) {
        return new TubShape(frames, strips, loft, openings, walls);
    }

    public List<Frame> frames() {
        return frames;
    }

    public List<String> strips() {
        return strips;
    }

    public Loft loft() {
        return loft;
    }

    public List<Opening> openings() {
        return openings;
    }

    public List<Wall> walls() {
        return walls;
    }

    /** The walls as they stand in the tub; a wall on both sides gives two. */
    public List<PlacedWall> placedWalls() {
        return placed;
    }

    /** Station of the front end, m. */
    public double front() {
        return frames.getFirst().x();
    }

    /** Station of the rear end, m. */
    public double rear() {
        return frames.getLast().x();
    }

    /** Half of the width or of the height, whichever is less, of the smallest frame, m: what a skin must be thinner than. */
    public double narrowestHalf() {
        double half = Double.POSITIVE_INFINITY;
        for (Frame frame : frames) {
            double width =
                    frame.corners().stream().mapToDouble(OutlineCorner::y).max().orElseThrow();
            double low =
                    frame.corners().stream().mapToDouble(OutlineCorner::z).min().orElseThrow();
            double high =
                    frame.corners().stream().mapToDouble(OutlineCorner::z).max().orElseThrow();
            half = Math.min(half, Math.min(width, (high - low) / 2));
        }
        return half;
    }

    /** Place of a strip, 0 at the bottom; empty when there is none of that name. */
    public Optional<Integer> strip(String name) {
        int i = strips.indexOf(name);
        return i < 0 ? Optional.empty() : Optional.of(i);
    }

    /**
     * The section at a station; at a frame of a ruled loft, with the slopes of the bay behind it.
     *
     * @param x station, m; outside the tub the end bays' cubics run on
     */
    public Section section(double x) {
        return new Section(curves, x, curves.interval(x));
    }

    /** The section at a station by the cubics of the bay between frames {@code bay} and {@code bay + 1} (from 0). */
    public Section section(double x, int bay) {
        return new Section(curves, x, bay);
    }

    /** The bay (from 0) a station lies in. */
    public int bay(double x) {
        return curves.interval(x);
    }

    /** A reusable evaluator for hot loops; one per thread. */
    public SkinEvaluator evaluator() {
        return new SkinEvaluator(curves);
    }

    /** Exact area of one side's strip between two stations, m², openings not taken out. */
    public double stripArea(int strip, double fromX, double toX) {
        return overBays(fromX, toX, (x, bay) -> {
            Section s = section(x, bay);
            SkinPoint p = new SkinPoint();
            double length = s.length(strip);
            double a = s.straightFrom(strip);
            double b = s.straightTo(strip);
            double sum = 0;
            double[] cuts = {0, a, b, 1};
            for (int i = 0; i < 3; i++) {
                if (cuts[i + 1] - cuts[i] > 1e-12) {
                    sum += Quadrature.integrate(
                            t -> {
                                s.at(strip, t, p);
                                return p.stretch;
                            },
                            cuts[i],
                            cuts[i + 1]);
                }
            }
            return sum * length;
        });
    }

    /** Exact area of the skin, both sides, m², openings not taken out. */
    public double skinArea() {
        double sum = 0;
        for (int k = 0; k < strips.size(); k++) {
            sum += 2 * stripArea(k, front(), rear());
        }
        return sum;
    }

    /** Exact volume enclosed between two stations, m³. */
    public double volume(double fromX, double toX) {
        return overBays(fromX, toX, (x, bay) -> section(x, bay).area());
    }

    private interface AtStation {
        double value(double x, int bay);
    }

    private double overBays(double fromX, double toX, AtStation f) {
        double sum = 0;
        for (int bay = 0; bay + 1 < frames.size(); bay++) {
            double a = Math.max(fromX, frames.get(bay).x());
            double b = Math.min(toX, frames.get(bay + 1).x());
            if (b > a) {
                int at = bay;
                // Two panels a bay: the radicand of the area element is of high degree in x.
                double m = (a + b) / 2;
                sum += Quadrature.integrate(x -> f.value(x, at), a, m)
                        + Quadrature.integrate(x -> f.value(x, at), m, b);
            }
        }
        return sum;
    }

    /**
     * Area of skin an opening takes away, m² (both sides for {@link Side#BOTH}).
     *
     * @throws ShapeException when there is no opening of that name
     */
    public double openingArea(String name) {
        Opening opening = openings.stream()
                .filter(o -> o.name().equals(name))
                .findFirst()
                .orElseThrow(() ->
                        ShapeException.about(Subject.OPENING, name, "there is no opening called \"" + name + "\""));
        return OpeningChecks.area(this, opening);
    }

    /** Area of a strip, both sides, openings taken out, m². */
    public double netStripArea(int strip) {
        double sum = 2 * stripArea(strip, front(), rear());
        for (Opening opening : openings) {
            if (opening.strips().contains(strips.get(strip))) {
                sum -= OpeningChecks.area(this, opening, strip);
            }
        }
        return sum;
    }

    /** Signed distance of a point from the skin measured in its section's plane, m; negative inside. */
    public double distance(double x, double y, double z) {
        return section(Math.clamp(x, front(), rear())).distance(y, z);
    }

    /** A spot on a strip given in side view. */
    public Spot onSkinAtHeight(String strip, Side side, double x, double z) {
        return Locator.onSkin(this, strip, side, View.SIDE, x, z);
    }

    /** A spot on a strip given in plan view: y as distance from the centreline, its sign is ignored. */
    public Spot onSkinAtWidth(String strip, Side side, double x, double y) {
        return Locator.onSkin(this, strip, side, View.PLAN, x, Math.abs(y));
    }

    /**
     * A spot on a wall given in the view of its holes ({@link Wall#holeView()}); for a wall on both sides {@code left}
     * picks one.
     */
    public Spot onWall(String wall, boolean left, double u, double v) {
        return Locator.onWall(this, wall, left, u, v);
    }

    private void checkStrips() {
        int need = frames.getFirst().corners().size() - 1;
        if (strips.size() != need) {
            throw ShapeException.about(
                    Subject.STRIPS,
                    "",
                    "outlines with " + (need + 1) + " corners make " + need + " strips, but " + strips.size()
                            + " are named");
        }
    }

    private void checkNames() {
        Set<String> parts = new HashSet<>();
        for (String strip : strips) {
            if (strip.isBlank() || !parts.add(strip)) {
                throw ShapeException.about(
                        Subject.STRIPS, strip, "strip names must differ and not be empty: \"" + strip + "\"");
            }
        }
        for (Wall wall : walls) {
            if (wall.name().isBlank() || !parts.add(wall.name())) {
                throw ShapeException.about(
                        Subject.WALL, wall.name(), "there is already a strip or wall called \"" + wall.name() + "\"");
            }
        }
        Set<String> holes = new HashSet<>();
        for (Opening opening : openings) {
            if (opening.name().isBlank() || !holes.add(opening.name())) {
                throw ShapeException.about(
                        Subject.OPENING,
                        opening.name(),
                        "there is already an opening called \"" + opening.name() + "\"");
            }
        }
    }

    private void checkSections() {
        int samples = 8;
        for (int bay = 0; bay + 1 < frames.size(); bay++) {
            OutlineChecks.section(section(frames.get(bay).x(), bay), bay, "frame " + (bay + 1));
        }
        int last = frames.size() - 1;
        OutlineChecks.section(section(rear(), last - 1), last, "frame " + (last + 1));
        for (int bay = 0; bay + 1 < frames.size(); bay++) {
            double a = frames.get(bay).x();
            double b = frames.get(bay + 1).x();
            for (int j = 1; j < samples; j++) {
                double x = a + (b - a) * j / samples;
                String where = String.format(
                        Locale.ROOT, "the loft between frames %d and %d, at x = %.1f mm,", bay + 1, bay + 2, x * 1e3);
                OutlineChecks.section(section(x, bay), bay, where);
            }
        }
    }
}
