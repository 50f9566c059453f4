// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.design.text.Place;
import tubwright.engine.design.text.Points;
import tubwright.engine.design.text.Span;
import tubwright.engine.shape.Contour;
import tubwright.engine.shape.Frame;
import tubwright.engine.shape.Loft;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.OutlineCorner;
import tubwright.engine.shape.Polygon;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;

/** From the shape as written to the shape as geometry; impossible geometry is told with its place in the file. */
final class ShapeReader {
    private final ShapeText text;

    private ShapeReader(ShapeText text) {
        this.text = text;
    }

    static TubShape read(ShapeText text) {
        return new ShapeReader(text).shape();
    }

    private TubShape shape() {
        Faults faults = new Faults();
        List<Frame> frames = new ArrayList<>();
        for (FrameText frame : text.frames()) {
            faults.attempt(() -> frame(frame)).ifPresent(frames::add);
        }
        List<Opening> openings = new ArrayList<>();
        for (Named<OpeningText> opening : text.openings()) {
            faults.attempt(() -> opening(opening)).ifPresent(openings::add);
        }
        List<Wall> walls = new ArrayList<>();
        for (Named<WallText> wall : text.walls()) {
            faults.attempt(() -> wall(wall)).ifPresent(walls::add);
        }
        faults.throwIfAny();
        Loft loft = text.loft() == ShapeText.LoftKind.RULED ? Loft.RULED : Loft.SMOOTH;
        try {
            return TubShape.of(frames, text.strips().stream().map(Name::text).toList(), loft, openings, walls);
        } catch (ShapeException e) {
            throw new DesignError(placeOf(e), e.getMessage(), help(e));
        }
    }

    private Frame frame(FrameText frame) {
        double[][] points = frame.outline().si();
        if (frame.radii().isPresent() && frame.radii().get().si().length != points.length) {
            throw new DesignError(
                    frame.radii().get().place(),
                    frame.radii().get().si().length + " radii stand beside " + points.length + " corners",
                    "give one radius for each corner, first and last included; 0 for a sharp one");
        }
        List<OutlineCorner> corners = new ArrayList<>();
        for (int i = 0; i < points.length; i++) {
            double radius = radius(frame.radii(), i);
            if (radius < 0) {
                throw new DesignError(
                        frame.radii().orElseThrow().places()[i], "a radius is negative", "0 makes a sharp corner");
            }
            corners.add(new OutlineCorner(points[i][0], points[i][1], radius));
        }
        return new Frame(frame.station().si(), corners);
    }

    private static double radius(Optional<Amounts> radii, int corner) {
        return radii.map(r -> r.si()[corner]).orElse(0.0);
    }

    private Opening opening(Named<OpeningText> named) {
        OpeningText o = named.value();
        String name = named.name().text();
        o.strips()
                .forEach(strip -> Names.require(
                        strip, text.strips().stream().map(Name::text).toList(), "strip"));
        boolean fromSide = o.view() == OpeningText.View.SIDE;
        Optional<Span> across =
                fromSide ? o.z() : o.width().map(w -> new Span(-w.si() / 2, w.si() / 2, w.text(), w.place()));
        Contour contour = contour(
                name,
                o.x(),
                across,
                fromSide ? "z" : "width",
                new Round(o.centre(), o.diameter(), o.outline(), o.corner()),
                o.place());
        Side side = fromSide ? side(o.sides()) : Side.CENTRE;
        if (!fromSide && o.sides() != Sides.BOTH && o.sides() != Sides.CENTRE) {
            side = side(o.sides());
        } else if (!fromSide && offCentre(contour)) {
            side = Side.BOTH;
        }
        return new Opening(
                name, o.strips().stream().map(Name::text).toList(), fromSide ? View.SIDE : View.PLAN, side, contour);
    }

    /** True for a contour in plan that lies wholly on the right of the centre line: it is meant for each side. */
    private static boolean offCentre(Contour contour) {
        return contour.bounds()[2] > 0;
    }

    private static Side side(Sides sides) {
        return switch (sides) {
            case BOTH -> Side.BOTH;
            case RIGHT -> Side.RIGHT;
            case LEFT -> Side.LEFT;
            case CENTRE -> Side.CENTRE;
        };
    }

    /** What circles and polygons are given by. */
    private record Round(
            Optional<Points> centre, Optional<Amount> diameter, Optional<Points> outline, Optional<Amount> corner) {}

    private static Contour contour(
            String name, Optional<Span> along, Optional<Span> across, String acrossKey, Round round, Place place) {
        double corner = round.corner.map(Amount::si).orElse(0.0);
        try {
            if (round.outline.isPresent()) {
                List<Polygon.Vertex> vertices = new ArrayList<>();
                for (double[] p : round.outline.get().si()) {
                    vertices.add(new Polygon.Vertex(p[0], p[1], corner));
                }
                return Contour.polygon(vertices);
            }
            if (round.centre.isPresent()) {
                double[] centre = round.centre.get().si()[0];
                double diameter = round.diameter
                        .orElseThrow(() -> missing(name, "diameter", place))
                        .si();
                return Contour.circle(centre[0], centre[1], diameter / 2);
            }
            Span u = along.orElseThrow(() -> missing(name, "x", place));
            Span v = across.orElseThrow(() -> missing(name, acrossKey, place));
            return Contour.rectangle(u.from(), u.to(), v.from(), v.to(), corner);
        } catch (IllegalArgumentException e) {
            throw new DesignError(place, name + ": " + e.getMessage(), "");
        }
    }

    private static DesignError missing(String name, String key, Place place) {
        return new DesignError(
                place,
                name + ": the key \"" + key + "\" is missing",
                "a rounded rectangle needs its two spans, a circle its centre and diameter, a polygon its outline");
    }

    private Wall wall(Named<WallText> named) {
        WallText w = named.value();
        String name = named.name().text();
        OptionalDouble bottom = si(w.bottom());
        OptionalDouble top = si(w.top());
        if (w.beside().isPresent()) {
            double y = w.beside().get().si();
            Span x = w.x().orElseThrow(() -> new DesignError(
                    w.place(), name + ": the key \"x\" is missing", "say from where to where the wall runs"));
            Side side = y == 0 ? Side.CENTRE : side(w.sides());
            return new Wall.Along(name, y, x.from(), x.to(), bottom, top, side, holes(w, View.SIDE));
        }
        double foot = w.station().or(w::foot).orElseThrow().si();
        double head = w.station()
                .or(w::head)
                .orElseThrow(() -> new DesignError(
                        w.place(), name + ": the key \"head\" is missing", "an inclined wall has a foot and a head"))
                .si();
        Wall.End low = new Wall.End(foot, bottom);
        Wall.End high = new Wall.End(head, top);
        View view = new Wall.Across(name, low, high, List.of()).holeView();
        return new Wall.Across(name, low, high, holes(w, view));
    }

    private static OptionalDouble si(Optional<Amount> amount) {
        return amount.isPresent() ? OptionalDouble.of(amount.get().si()) : OptionalDouble.empty();
    }

    private static List<Wall.Hole> holes(WallText wall, View view) {
        List<Wall.Hole> holes = new ArrayList<>();
        for (Named<HoleText> named : wall.holes()) {
            HoleText h = named.value();
            Contour contour = contour(
                    named.name().text(),
                    view == View.FRONT ? h.y() : h.x(),
                    view == View.PLAN ? h.y() : h.z(),
                    view == View.PLAN ? "y" : "z",
                    new Round(h.centre(), h.diameter(), h.outline(), h.corner()),
                    h.place());
            holes.add(new Wall.Hole(named.name().text(), contour));
        }
        return holes;
    }

    private Place placeOf(ShapeException e) {
        return switch (e.subject()) {
            case FRAME -> frame(e);
            case STRIPS ->
                text.strips().stream()
                        .filter(s -> s.text().equals(e.name()))
                        .reduce((first, second) -> second)
                        .or(() -> text.strips().stream().findFirst())
                        .map(Name::place)
                        .orElse(text.place());
            case OPENING -> of(text.openings(), e.name());
            case WALL -> of(text.walls(), e.name());
            case HOLE -> hole(e.name());
            default -> text.place();
        };
    }

    private Place frame(ShapeException e) {
        if (e.index() < 0 || e.index() >= text.frames().size()) {
            return text.place();
        }
        FrameText frame = text.frames().get(e.index());
        Place[] corners = frame.outline().places();
        return e.corner() >= 0 && e.corner() < corners.length ? corners[e.corner()] : frame.place();
    }

    private Place of(List<? extends Named<?>> entries, String name) {
        return entries.stream()
                .filter(n -> n.name().text().equals(name))
                .map(n -> n.name().place())
                .findFirst()
                .orElse(text.place());
    }

    private Place hole(String name) {
        for (Named<WallText> wall : text.walls()) {
            for (Named<HoleText> hole : wall.value().holes()) {
                if (name.equals(wall.name() + "/" + hole.name())) {
                    return hole.name().place();
                }
            }
        }
        return text.place();
    }

    private static String help(ShapeException e) {
        return switch (e.subject()) {
            case FRAME ->
                "frames run from front to rear; an outline runs from the bottom centre to the top centre"
                        + " without crossing itself";
            case STRIPS -> "name one strip for each pair of neighbouring corners, from the bottom up";
            case OPENING -> "an opening lies wholly inside the strips it names and inside the tub";
            case WALL -> "a wall stands inside the tub, between its front and its rear end";
            case HOLE -> "a hole lies wholly inside its wall";
            default -> "";
        };
    }
}
