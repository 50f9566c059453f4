// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.joint.InsertDetail;
import tubwright.engine.material.Adhesive;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.Section;
import tubwright.engine.shape.ShapeException;
import tubwright.engine.shape.Side;
import tubwright.engine.shape.SkinPoint;
import tubwright.engine.shape.Spot;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.View;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Hardpoint;

/** The hardpoints of a design, left and right apart, each on its place on the surface. */
final class HardpointReader {
    private final TubShape shape;
    private final MaterialReader materials;
    private final List<Warning> warnings;
    private final Map<String, Hardpoint> hardpoints = new LinkedHashMap<>();
    /** Where each meets the surface, m. */
    private final Map<String, double[]> feet = new LinkedHashMap<>();

    HardpointReader(
            List<Named<HardpointText>> texts, TubShape shape, MaterialReader materials, List<Warning> warnings) {
        this.shape = shape;
        this.materials = materials;
        this.warnings = warnings;
        Faults faults = new Faults();
        for (Named<HardpointText> text : texts) {
            faults.check(() -> add(text));
        }
        faults.throwIfAny();
    }

    /** All hardpoints, in the order of the design. */
    List<Hardpoint> all() {
        return List.copyOf(hardpoints.values());
    }

    /** The point of the surface a hardpoint stands on, m. */
    double[] footOf(Hardpoint hardpoint) {
        return feet.get(hardpoint.name());
    }

    /** The hardpoint of a name, or both of its twins. */
    List<Hardpoint> find(Name name) {
        List<Hardpoint> found = new ArrayList<>();
        for (String each : List.of(name.text(), name.text() + " L", name.text() + " R")) {
            Optional.ofNullable(hardpoints.get(each)).ifPresent(found::add);
        }
        if (found.isEmpty()) {
            List<String> known = hardpoints.keySet().stream()
                    .map(n -> n.replaceFirst(" [LR]$", ""))
                    .distinct()
                    .toList();
            throw Names.unknown(name, known, "hardpoint");
        }
        return found;
    }

    private void add(Named<HardpointText> named) {
        HardpointText text = named.value();
        boolean both = text.sides() == Sides.BOTH;
        if (both || text.sides() == Sides.LEFT) {
            add(named, both ? named.name() + " L" : named.name().text(), Side.LEFT);
        }
        if (both || text.sides() == Sides.RIGHT) {
            add(named, both ? named.name() + " R" : named.name().text(), Side.RIGHT);
        }
        if (text.sides() == Sides.CENTRE) {
            add(named, named.name().text(), Side.CENTRE);
        }
    }

    private void add(Named<HardpointText> named, String name, Side side) {
        HardpointText text = named.value();
        Spot spot;
        try {
            spot = shape.strips().contains(text.on().text()) ? onStrip(named, side) : onWall(named, side);
        } catch (ShapeException e) {
            throw new DesignError(
                    named.name().place(),
                    "hardpoint \"" + named.name() + "\": " + e.getMessage(),
                    "move it onto the part");
        }
        double[] at = spot.position().clone();
        for (int i = 0; i < 3; i++) {
            at[i] += text.standoff().si() * spot.normal()[i];
        }
        InsertRoom.check(shape, named, spot, text.footprint().si() / 2);
        text.insert().ifPresent(i -> InsertRoom.checkFlange(named, i));
        feet.put(name, spot.position());
        warnIfClose(named, name, spot);
        hardpoints.put(
                name,
                new Hardpoint(
                        name,
                        text.on().text(),
                        at,
                        text.footprint().si() / 2,
                        text.stiffness().si(),
                        text.rotationalStiffness().si(),
                        Names.notNegative(text.mass(), "hardpoint \"" + named.name() + "\""),
                        text.insert().map(this::insert).orElse(InsertDetail.UNKNOWN)));
    }

    /** Two inserts whose footprints overlap weaken each other more than any rule says. */
    private void warnIfClose(Named<HardpointText> named, String name, Spot spot) {
        String part = named.value().on().text();
        double radius = named.value().footprint().si() / 2;
        for (Hardpoint other : hardpoints.values()) {
            double[] foot = feet.get(other.name());
            double[] p = spot.position();
            double apart = Math.hypot(Math.hypot(p[0] - foot[0], p[1] - foot[1]), p[2] - foot[2]);
            if (other.part().equals(part) && apart < radius + other.footprintRadius()) {
                warnings.add(new Warning(
                        named.name().place(),
                        String.format(
                                Locale.ROOT,
                                "the inserts of \"%s\" and \"%s\" overlap: %.0f mm apart",
                                name,
                                other.name(),
                                apart * 1e3),
                        "their strength is not checked; set them apart, or make them one insert"));
            }
        }
    }

    private InsertDetail insert(InsertText text) {
        if (text.bolts() > 1 && text.boltCircle().isEmpty()) {
            throw new DesignError(
                    text.place(),
                    text.bolts() + " bolts, but the circle they stand on is missing",
                    "write \"bolt circle: 30 mm\"");
        }
        if (text.bolts() < 1) {
            throw new DesignError(text.place(), text.bolts() + " bolts", "one at least");
        }
        return new InsertDetail(
                InsertDetail.Kind.valueOf(text.kind().name()),
                si(text.diameter()),
                text.bolt()
                        .map(d -> new InsertDetail.Bolts(
                                d.si(),
                                text.bolts(),
                                text.boltCircle().map(Amount::si).orElse(0.0))),
                si(text.flange()),
                text.adhesive().map(a -> materials.get(a, Adhesive.class, "adhesive")),
                new InsertDetail.Tested(si(text.testedPull()), si(text.testedShear()), si(text.testedTorque())));
    }

    private static OptionalDouble si(Optional<Amount> amount) {
        return amount.map(a -> OptionalDouble.of(a.si())).orElse(OptionalDouble.empty());
    }

    private Spot onStrip(Named<HardpointText> named, Side side) {
        HardpointText text = named.value();
        String strip = text.on().text();
        double x = need(text.x(), named.name(), "x", "on a strip").si();
        Side twin = side == Side.LEFT ? Side.LEFT : Side.RIGHT;
        Spot spot;
        if (text.z().isPresent() && text.y().isPresent()) {
            throw new DesignError(
                    text.y().get().place(),
                    "hardpoint \"" + named.name() + "\": y and z are both given, but the strip settles one of them",
                    "give x and z on an upright strip, x and y on a level one");
        } else if (text.z().isPresent()) {
            spot = shape.onSkinAtHeight(strip, twin, x, text.z().get().si());
        } else if (text.y().isPresent() || side == Side.CENTRE) {
            spot = shape.onSkinAtWidth(strip, twin, x, text.y().map(Amount::si).orElse(0.0));
        } else {
            spot = middle(strip, twin, x);
        }
        refuseInOpening(named, strip, spot);
        return spot;
    }

    private Spot middle(String strip, Side side, double x) {
        if (x < shape.front() || x > shape.rear()) {
            return shape.onSkinAtHeight(strip, side, x, 0); // refused there, with the stations of the tub
        }
        Section section = shape.section(x);
        SkinPoint p = new SkinPoint();
        section.at(shape.strip(strip).orElseThrow(), 0.5, p);
        double sign = side == Side.LEFT ? -1 : 1;
        return new Spot(strip, false, side == Side.LEFT, new double[] {x, sign * p.y, p.z}, new double[] {
            p.normalX, sign * p.normalY, p.normalZ
        });
    }

    private void refuseInOpening(Named<HardpointText> named, String strip, Spot spot) {
        double[] at = spot.position();
        for (Opening opening : shape.openings()) {
            boolean mirrored = opening.side() != Side.CENTRE && spot.left();
            double v = opening.view().v(at[0], mirrored ? -at[1] : at[1], at[2]);
            if (opening.strips().contains(strip)
                    && opening.side().covers(spot.left())
                    && opening.contour().distance(at[0], v) < 0) {
                throw new DesignError(
                        named.name().place(),
                        "hardpoint \"" + named.name() + "\" lies in the opening \"" + opening.name() + "\"",
                        "move it onto the skin beside it");
            }
        }
    }

    private Spot onWall(Named<HardpointText> named, Side side) {
        HardpointText text = named.value();
        Wall wall = shape.walls().stream()
                .filter(w -> w.name().equals(text.on().text()))
                .findFirst()
                .orElseThrow(() -> {
                    List<String> parts = new ArrayList<>(shape.strips());
                    shape.walls().forEach(w -> parts.add(w.name()));
                    return Names.unknown(text.on(), parts, "strip or wall");
                });
        boolean left = side == Side.LEFT;
        View view = wall.holeView();
        double across = text.y().map(Amount::si).orElse(0.0);
        double y = side == Side.CENTRE ? 0 : left ? -Math.abs(across) : Math.abs(across);
        if (view == View.FRONT) {
            need(side == Side.CENTRE ? text.z() : text.y(), named.name(), "y", "on a wall across the car");
            return shape.onWall(
                    wall.name(),
                    left,
                    y,
                    need(text.z(), named.name(), "z", "on a wall").si());
        }
        double x = need(text.x(), named.name(), "x", "on this wall").si();
        double v = view == View.PLAN
                ? y
                : need(text.z(), named.name(), "z", "on a wall").si();
        return shape.onWall(wall.name(), left, x, v);
    }

    private static Amount need(Optional<Amount> amount, Name hardpoint, String key, String where) {
        return amount.orElseThrow(() -> new DesignError(
                hardpoint.place(),
                "hardpoint \"" + hardpoint + "\": the key \"" + key + "\" is missing",
                where + " it is needed to say where the point is"));
    }
}
