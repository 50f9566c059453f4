// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.Amounts;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.load.Car;
import tubwright.engine.load.Link;
import tubwright.engine.load.LoadException;
import tubwright.engine.load.PointLoad;
import tubwright.engine.load.Vehicle;
import tubwright.engine.load.Wheel;
import tubwright.engine.shape.TubShape;
import tubwright.engine.shape.Wall;
import tubwright.engine.structure.Case;

/** Load cases: forces at points, pressures, and the car on its wheels, brought together at the points of the tub. */
final class LoadCaseReader {
    /** Mark behind a name while its load is the mirror image of the one written. */
    private static final String MIRRORED = " (mirrored)";

    private final TubShape shape;
    private final PointBook points;
    private final Optional<Vehicle> vehicle;
    private final List<Warning> warnings;

    LoadCaseReader(TubShape shape, PointBook points, Optional<Vehicle> vehicle, List<Warning> warnings) {
        this.warnings = warnings;
        this.shape = shape;
        this.points = points;
        this.vehicle = vehicle;
    }

    Case read(Named<CaseText> named, List<Case.Support> hold) {
        CaseText text = named.value();
        if (!text.loadAt().isEmpty()) {
            throw new DesignError(
                    text.loadAt().getFirst().place(),
                    "case \"" + named.name() + "\": \"load at\" goes with a couple or one force",
                    "\"forces\" names its hardpoints itself");
        }
        Map<String, double[]> loads = new TreeMap<>();
        atPoints(text, loads);
        List<Case.Pressure> pressures = pressures(text.pressures());
        List<Vehicle.AtWheel> wheels = List.of();
        if (text.car().isPresent() || !text.wheels().isEmpty()) {
            wheels = onWheels(named, hold, loads, pressures);
        }
        double[] acceleration =
                text.acceleration().map(a -> three(a, "acceleration")).orElse(new double[3]);
        List<Case.Spread> pads = PadReader.read(text.pads(), shape);
        if (!pads.isEmpty() && (text.car().isPresent() || !text.wheels().isEmpty())) {
            throw new DesignError(
                    text.pads().getFirst().name().place(),
                    "case \"" + named.name() + "\" stands on its wheels and is pushed by a pad",
                    "give the pad a case of its own, held or free");
        }
        boolean pushes = !pads.isEmpty()
                || loads.values().stream().anyMatch(f -> Arrays.stream(f).anyMatch(v -> v != 0))
                || pressures.stream().anyMatch(p -> p.pressure() != 0);
        if (!pushes && Arrays.stream(acceleration).allMatch(v -> v == 0)) {
            throw new DesignError(
                    named.name().place(), "case \"" + named.name() + "\": every load is zero", "give one that is not");
        }
        List<Case.Force> forces = new ArrayList<>();
        loads.forEach((name, f) -> forces.add(new Case.Force(name, Arrays.copyOf(f, 3), Arrays.copyOfRange(f, 3, 6))));
        return new Case.Loads(named.name().text(), hold, forces, pressures, acceleration, wheels, text.source(), pads);
    }

    /** Adds forces and moments written at points, mirrored to their left twins. */
    private void atPoints(CaseText text, Map<String, double[]> loads) {
        Map<String, double[]> forces = atPoints(text.forces());
        Map<String, double[]> moments = atPoints(text.moments());
        // A moment is mirrored the other way round: about y it keeps its sign, about x and z it turns.
        moments.forEach((name, m) -> {
            if (name.endsWith(MIRRORED)) {
                for (int d = 0; d < 3; d++) {
                    m[d] = -m[d];
                }
            }
        });
        Set<String> keys = new LinkedHashSet<>(forces.keySet());
        keys.addAll(moments.keySet());
        for (String key : keys) {
            double[] sum = loads.computeIfAbsent(key.replace(MIRRORED, ""), k -> new double[6]);
            for (int d = 0; d < 3; d++) {
                sum[d] += forces.getOrDefault(key, new double[3])[d];
                sum[3 + d] += moments.getOrDefault(key, new double[3])[d];
            }
        }
    }

    /** Three numbers for each point; where a name means both twins, the left one's are mirrored and marked so. */
    private Map<String, double[]> atPoints(List<Named<Amounts>> texts) {
        Map<String, double[]> all = new LinkedHashMap<>();
        for (Named<Amounts> text : texts) {
            double[] right = three(text.value(), text.name().text());
            for (String each : points.find(text.name())) {
                boolean mirrored = each.equals(text.name() + " L");
                double[] own = mirrored ? new double[] {right[0], -right[1], right[2]} : right.clone();
                double[] sum = all.computeIfAbsent(each + (mirrored ? MIRRORED : ""), k -> new double[3]);
                for (int d = 0; d < 3; d++) {
                    sum[d] += own[d];
                }
            }
        }
        return all;
    }

    private List<Case.Pressure> pressures(List<Named<PressureText>> texts) {
        List<Case.Pressure> all = new ArrayList<>();
        List<String> known = new ArrayList<>(shape.strips());
        shape.walls().stream().map(Wall::name).forEach(known::add);
        for (Named<PressureText> text : texts) {
            Names.require(text.name(), known, "strip or wall");
            all.add(new Case.Pressure(
                    text.name().text(),
                    text.value().x().map(s -> s.from()).orElse(Double.NEGATIVE_INFINITY),
                    text.value().x().map(s -> s.to()).orElse(Double.POSITIVE_INFINITY),
                    text.value().pressure().si()));
        }
        return all;
    }

    /** Statics of the whole car, then of each corner; adds what comes to the points. */
    private List<Vehicle.AtWheel> onWheels(
            Named<CaseText> named,
            List<Case.Support> hold,
            Map<String, double[]> loads,
            List<Case.Pressure> pressures) {
        CaseText text = named.value();
        Vehicle car = vehicle.orElseThrow(() -> new DesignError(
                named.name().place(),
                "case \"" + named.name() + "\" puts the car on its wheels, but the design has no car",
                "give masses and axles under \"car\""));
        if (!hold.isEmpty()) {
            throw new DesignError(
                    text.hold().getFirst().name().place(),
                    "case \"" + named.name() + "\" stands on its wheels and is held as well",
                    "take \"hold\" out: the road carries the car, and its mass resists");
        }
        for (Named<PressureText> each : text.pressures()) {
            if (!shape.strips().contains(each.name().text())) {
                throw new DesignError(
                        each.name().place(),
                        "case \"" + named.name() + "\": air does not press on the wall \"" + each.name()
                                + "\" of a car on its wheels",
                        "press on strips, or give the wall's load a case of its own");
            }
        }
        Car.Outside outside = outside(car, loads, pressures);
        Vehicle.Doing doing =
                new Vehicle.Doing(acceleration(text.car(), named.name()), outside, extra(text.wheels(), car));
        Vehicle.Answer answer;
        try {
            answer = car.under(doing);
        } catch (LoadException e) {
            DesignError.Fault told =
                    VehicleReader.told(named.name().place(), e).faults().getFirst();
            throw new DesignError(told.place(), "case \"" + named.name() + "\": " + told.read(), told.help());
        }
        answer.onBody().forEach(l -> add(l, loads));
        answer.wheels().forEach(w -> warnOfLinks(named.name(), w));
        return answer.wheels();
    }

    /** Says which link of a corner is farthest from carrying what the case asks of it, if any does not. */
    private void warnOfLinks(Name load, Vehicle.AtWheel at) {
        if (at.corner().isEmpty()) {
            return;
        }
        double[] tensions = at.corner().get().tensions();
        List<Link> links = at.wheel().held().orElseThrow().links();
        int weakest = 0;
        for (int k = 1; k < links.size(); k++) {
            weakest = reserve(links.get(k), tensions[k]) < reserve(links.get(weakest), tensions[weakest]) ? k : weakest;
        }
        Link link = links.get(weakest);
        double tension = tensions[weakest];
        double reserve = reserve(link, tension);
        if (reserve < 1) {
            boolean buckles = tension < 0
                    && link.tube().buckling(link.length()) < link.tube().pushYield();
            warnings.add(new Warning(
                    load.place(),
                    String.format(
                            Locale.ROOT,
                            "case \"%s\": the link at \"%s\" of %s is %s with %.1f kN and %s at %.1f kN",
                            load,
                            link.name(),
                            at.wheel().name(),
                            tension < 0 ? "pressed" : "pulled",
                            Math.abs(tension) / 1e3,
                            buckles ? "buckles" : "yields",
                            reserve * Math.abs(tension) / 1e3),
                    buckles
                            ? "π² EI/L² between ball joints, Euler 1744: give it a larger tube"
                            : "yield of its metal"));
        }
    }

    private static double reserve(Link link, double tension) {
        return link.tube().reserve(tension, link.length());
    }

    /** Adds a load at the point that carries it, with its lever where it acts beside that point. */
    private void add(PointLoad load, Map<String, double[]> loads) {
        double[] sum = loads.computeIfAbsent(load.at(), k -> new double[6]);
        double[] p = points.at(load.at());
        double[] moment = lever(load.position(), p, load.force());
        for (int d = 0; d < 3; d++) {
            sum[d] += load.force()[d];
            sum[3 + d] += load.moment()[d] + moment[d];
        }
    }

    private static double[] lever(double[] at, double[] about, double[] f) {
        double x = at[0] - about[0];
        double y = at[1] - about[1];
        double z = at[2] - about[2];
        return new double[] {y * f[2] - z * f[1], z * f[0] - x * f[2], x * f[1] - y * f[0]};
    }

    private Car.Outside outside(Vehicle car, Map<String, double[]> loads, List<Case.Pressure> pressures) {
        double[] force = new double[3];
        double[] moment = new double[3];
        loads.forEach((name, f) -> {
            double[] about = lever(points.at(name), car.road(), f);
            for (int d = 0; d < 3; d++) {
                force[d] += f[d];
                moment[d] += f[3 + d] + about[d];
            }
        });
        for (Case.Pressure each : pressures) {
            double[] sum = PressureSum.about(car.road(), shape, each);
            for (int d = 0; d < 3; d++) {
                force[d] += sum[d];
                moment[d] += sum[3 + d];
            }
        }
        return new Car.Outside(force, moment);
    }

    private static double[] acceleration(Optional<ManoeuvreText> text, Name name) {
        if (text.isEmpty()) {
            return new double[3];
        }
        ManoeuvreText doing = text.get();
        if (doing.braking().isPresent() && doing.driving().isPresent()) {
            throw new DesignError(
                    doing.driving().get().place(),
                    "case \"" + name + "\": the car brakes and drives at once",
                    "give one of them");
        }
        double along = doing.braking().map(Amount::si).orElse(0.0)
                - doing.driving().map(Amount::si).orElse(0.0);
        return new double[] {
            along,
            doing.cornering().map(Amount::si).orElse(0.0),
            doing.vertical().map(Amount::si).orElse(0.0)
        };
    }

    private static Map<String, double[]> extra(List<Named<Amounts>> texts, Vehicle car) {
        List<String> known = car.wheels().stream().map(Wheel::name).toList();
        Map<String, double[]> all = new LinkedHashMap<>();
        for (Named<Amounts> text : texts) {
            double[] right = three(text.value(), text.name().text());
            String name = text.name().text();
            if (known.contains(name)) {
                all.put(name, right);
            } else if (known.contains(name + " R")) {
                all.put(name + " R", right);
                all.put(name + " L", new double[] {right[0], -right[1], right[2]});
            } else {
                throw Names.unknown(text.name(), known, "wheel");
            }
        }
        return all;
    }

    private static double[] three(Amounts amounts, String key) {
        if (amounts.si().length != 3) {
            throw new DesignError(
                    amounts.place(),
                    key + ": " + amounts.si().length + " numbers are given",
                    "three are due: aft, right and up, with one unit: \"0, 300, -1200 N\"");
        }
        return amounts.si();
    }
}
