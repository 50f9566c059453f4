// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Place;
import tubwright.engine.load.Car;
import tubwright.engine.load.Corner;
import tubwright.engine.load.Link;
import tubwright.engine.load.LinkTube;
import tubwright.engine.load.LoadException;
import tubwright.engine.load.Rocker;
import tubwright.engine.load.Vehicle;
import tubwright.engine.load.Wheel;
import tubwright.engine.material.Metal;
import tubwright.engine.material.Property;

/** The car of a design with its corners, every inner point found. */
final class VehicleReader {
    private final MaterialReader materials;
    private final PointBook points;

    VehicleReader(MaterialReader materials, PointBook points) {
        this.materials = materials;
        this.points = points;
    }

    /** The car; empty where the design has none. */
    Optional<Vehicle> read(DesignText text) {
        if (text.car().isEmpty()) {
            text.suspension().ifPresent(s -> {
                throw new DesignError(
                        s.place(), "there is a suspension but no car", "give masses, axles and road under \"car\"");
            });
            return Optional.empty();
        }
        return Optional.of(vehicle(text.car().get(), text.suspension()));
    }

    private Vehicle vehicle(CarText text, Optional<SuspensionText> suspension) {
        Amounts centre = text.centreOfMass();
        if (centre.si().length != 2) {
            throw new DesignError(
                    centre.place(),
                    "centre of mass: " + centre.si().length + " numbers are given",
                    "two are due: its x, and its height above the road: \"1500, 280 mm\"");
        }
        double front = text.frontAxle().x().si();
        double rear = text.rearAxle().x().si();
        if (!(rear > front)) {
            throw new DesignError(
                    text.rearAxle().x().place(), "the rear axle is not behind the front one", "x runs aft");
        }
        double brakes = share(text.brakesAtFront(), "brakes at front");
        double drive = share(text.driveAtFront(), "drive at front");
        double roll = share(text.rollMomentAtFront(), "roll moment at front");
        text.drivenFrom().ifPresent(points::find);
        List<Wheel> wheels = new ArrayList<>();
        wheels.addAll(axle("front", text, suspension.flatMap(SuspensionText::front)));
        wheels.addAll(axle("rear", text, suspension.flatMap(SuspensionText::rear)));
        try {
            Car car = new Car(
                    text.mass().si(),
                    rear - front,
                    text.frontAxle().track().si(),
                    text.rearAxle().track().si(),
                    centre.si()[1],
                    centre.si()[0] - front,
                    roll,
                    text.rollStiffness().map(Amount::si));
            double[] road = {front, 0, text.road().si()};
            return new Vehicle(car, road, brakes, drive, text.drivenFrom().map(Name::text), wheels);
        } catch (LoadException e) {
            throw told(text.place(), e);
        }
    }

    private static double share(Amount amount, String key) {
        if (amount.si() < 0 || amount.si() > 1) {
            throw new DesignError(
                    amount.place(), key + ": \"" + amount + "\" is no share", "write 0 % to 100 %, for example 60 %");
        }
        return amount.si();
    }

    private List<Wheel> axle(String axle, CarText text, Optional<CornerText> corner) {
        boolean front = axle.equals("front");
        AxleText at = front ? text.frontAxle() : text.rearAxle();
        double half = at.track().si() / 2;
        double road = text.road().si();
        double mass = Names.notNegative(at.wheelMass(), "wheel mass");
        Optional<String> carrier = at.carriedBy().map(points::right);
        if (corner.isEmpty() && carrier.isEmpty()) {
            throw new DesignError(
                    at.place(),
                    "nothing holds the wheels of the " + axle + " axle",
                    "give its links under \"suspension\", or say under \"carried by\" which body carries them");
        }
        Optional<Corner> right = corner.map(c -> corner(axle + " R", c));
        List<Wheel> wheels = new ArrayList<>();
        for (boolean left : new boolean[] {true, false}) {
            double y = left ? -half : half;
            double[] contact = {at.x().si(), y, road};
            double[] hub = {at.x().si(), y, road + at.tyreRadius().si()};
            String name = axle + (left ? " L" : " R");
            Optional<Corner> held = left ? right.map(c -> c.mirrored(name, points::twin)) : right;
            Wheel wheel = new Wheel(name, front, left, contact, hub, mass, held, carrier);
            corner.ifPresent(c -> refuseLoose(c, wheel));
            wheels.add(wheel);
        }
        return wheels;
    }

    /** Tries the corner under a force along each axis, so that a mechanism is told where it is written. */
    private static void refuseLoose(CornerText text, Wheel wheel) {
        for (int d = 0; d < 3; d++) {
            double[] force = new double[3];
            force[d] = 1000;
            try {
                wheel.held().orElseThrow().forces(wheel.contact(), force, new double[3]);
            } catch (LoadException e) {
                throw told(text.place(), e);
            }
        }
    }

    private Corner corner(String name, CornerText text) {
        LinkTube tube = tube(text);
        try {
            List<Link> legs = new ArrayList<>();
            legs.addAll(wishbone(text.upperWishbone(), tube));
            legs.addAll(wishbone(text.lowerWishbone(), tube));
            LinkText steering = text.steeringLink();
            legs.add(link(steering.inner(), outer(steering.outer()), tube));
            RodText rod = text.rod();
            List<Integer> standsOn = switch (rod.standsOn()) {
                case UPRIGHT -> List.of();
                case UPPER_WISHBONE -> List.of(0, 1);
                case LOWER_WISHBONE -> List.of(2, 3);
            };
            if (rod.atRocker().isPresent() != text.rocker().isPresent()) {
                throw new DesignError(
                        rod.place(),
                        rod.atRocker().isPresent()
                                ? "the rod ends on a rocker that is not given"
                                : "there is a rocker, but the rod does not end on it",
                        "\"at rocker\" and \"rocker\" go together");
            }
            Link bar = rod.inner().isPresent()
                    ? link(rod.inner().get(), outer(rod.outer()), tube)
                    : new Link(
                            Corner.rodName(name),
                            PointBook.three(rod.atRocker().orElseThrow(), "at rocker"),
                            outer(rod.outer()),
                            tube);
            Optional<Rocker> rocker = text.rocker().map(r -> rocker(r, bar));
            return new Corner(name, legs, bar, rocker, standsOn);
        } catch (LoadException e) {
            throw told(text.place(), e);
        }
    }

    private LinkTube tube(CornerText text) {
        if (text.roundTube().isEmpty()) {
            return LinkTube.RIGID;
        }
        Name material = text.material()
                .orElseThrow(() -> new DesignError(
                        text.roundTube().get().place(), "the tube of the links has no \"material\"", "name a metal"));
        Metal metal = materials.get(material, Metal.class, "metal");
        Sections.Geometry section = Sections.tube(text.roundTube(), Optional.empty());
        double young = metal.elasticity().e1();
        return new LinkTube(
                young * section.area(),
                young * section.across(),
                section.area() * yieldOf(metal, Property.TENSILE_YIELD),
                section.area() * yieldOf(metal, Property.COMPRESSIVE_YIELD));
    }

    private static double yieldOf(Metal metal, Property property) {
        return metal.properties().find(property).map(v -> v.si()).orElse(Double.POSITIVE_INFINITY);
    }

    private List<Link> wishbone(WishboneText text, LinkTube tube) {
        if (text.inner().size() != 2) {
            throw new DesignError(
                    text.place(),
                    "a wishbone with " + text.inner().size() + " inner points",
                    "it has two: its front and its rear leg");
        }
        double[] outer = outer(text.outer());
        return List.of(link(text.inner().get(0), outer, tube), link(text.inner().get(1), outer, tube));
    }

    private Link link(Name inner, double[] outer, LinkTube tube) {
        String point = points.right(inner);
        return new Link(point, points.at(point), outer, tube);
    }

    private static double[] outer(Amounts amounts) {
        double[] p = PointBook.three(amounts, "outer");
        if (p[1] < 0) {
            throw new DesignError(
                    amounts.place(),
                    "the outer point lies on the left",
                    "give the right-hand one: y greater than zero");
        }
        return p;
    }

    private Rocker rocker(RockerText text, Link rod) {
        String pivot = points.right(text.pivot());
        String damper = points.right(text.damper());
        double[] p = points.at(pivot);
        double[] at = PointBook.three(text.damperAt(), "damper at");
        double[] axis = text.axis()
                .map(a -> PointBook.three(a, "axis"))
                .orElseGet(() -> square(minus(rod.inner(), p), minus(at, p)));
        Link unit = new Link(damper, points.at(damper), at);
        RockerLevers.check(text.place(), p, axis, rod, unit);
        double stiffness =
                text.damperStiffness().map(k -> k.si() * unit.length()).orElse(Double.POSITIVE_INFINITY);
        return new Rocker(pivot, p, axis, new Link(damper, points.at(damper), at, LinkTube.elastic(stiffness)));
    }

    private static double[] minus(double[] a, double[] b) {
        return new double[] {a[0] - b[0], a[1] - b[1], a[2] - b[2]};
    }

    /** Direction square to two arms. */
    private static double[] square(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    /** A fault of statics at its place; what to do stands behind the semicolon of its words. */
    static DesignError told(Place place, LoadException e) {
        String[] parts = e.getMessage().split("; ", 2);
        return new DesignError(place, parts[0], parts.length > 1 ? parts[1] : "");
    }
}
