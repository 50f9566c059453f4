// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.design;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tubwright.engine.design.text.Amount;
import tubwright.engine.design.text.DesignError;
import tubwright.engine.design.text.Faults;
import tubwright.engine.design.text.Name;
import tubwright.engine.design.text.Named;
import tubwright.engine.load.Vehicle;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Hardpoint;

/** The cases of a design with their hardpoints found. */
final class CaseReader {
    private static final List<String> DIRECTIONS = List.of("x", "y", "z", "rx", "ry", "rz");

    private final TubShape shape;
    private final HardpointReader hardpoints;
    private final LoadCaseReader loads;

    CaseReader(
            TubShape shape,
            HardpointReader hardpoints,
            PointBook points,
            Optional<Vehicle> vehicle,
            List<Warning> warnings) {
        this.shape = shape;
        this.hardpoints = hardpoints;
        loads = new LoadCaseReader(shape, points, vehicle, warnings);
    }

    List<Case> read(List<Named<CaseText>> texts) {
        Faults faults = new Faults();
        List<Case> cases = new ArrayList<>();
        for (Named<CaseText> text : texts) {
            faults.attempt(() -> one(text)).ifPresent(cases::add);
        }
        faults.throwIfAny();
        return cases;
    }

    /** What is held, with names without L or R standing for both. */
    static List<Case.Support> supports(List<Named<Name>> hold, HardpointReader hardpoints) {
        List<Case.Support> supports = new ArrayList<>();
        for (Named<Name> support : hold) {
            boolean[] directions = directions(support.value());
            hardpoints.find(support.name()).forEach(h -> supports.add(new Case.Support(h.name(), directions)));
        }
        return supports;
    }

    private Case one(Named<CaseText> named) {
        CaseText text = named.value();
        String name = named.name().text();
        List<Case.Support> hold = new ArrayList<>();
        hold.addAll(supports(text.hold(), hardpoints));
        if (text.couple().isEmpty() && text.force().isEmpty()) {
            return loads.read(named, hold);
        }
        refuseMixture(named);
        List<Hardpoint> loaded = new ArrayList<>();
        text.loadAt().forEach(at -> loaded.addAll(hardpoints.find(at)));
        List<String> names = loaded.stream().map(Hardpoint::name).distinct().toList();
        if (hold.isEmpty() || names.isEmpty()) {
            throw new DesignError(
                    named.name().place(),
                    "case \"" + name + "\" " + (hold.isEmpty() ? "holds nothing" : "loads nothing"),
                    "name hardpoints under \"hold\" and \"load at\"");
        }
        if (text.couple().isPresent()) {
            double front = station(text.frontStation(), named.name(), "front station");
            double rear = station(text.rearStation(), named.name(), "rear station");
            if (names.size() < 2) {
                throw new DesignError(
                        named.name().place(),
                        "case \"" + name + "\": one hardpoint alone cannot carry a couple of forces",
                        "load hardpoints on both sides");
            }
            if (front >= rear) {
                throw new DesignError(
                        text.frontStation().orElseThrow().place(),
                        "case \"" + name + "\": the front station is not in front of the rear one",
                        "x runs aft: the front station has the smaller x");
            }
            refuseHeld(named, hold, names, new boolean[] {false, true, true});
            return new Case.Torsion(name, hold, names, nonZero(text.couple().get(), name), front, rear);
        }
        double force = nonZero(text.force().orElseThrow(), name);
        double station = station(text.station(), named.name(), "station");
        double[] load = text.direction().times(force);
        refuseHeld(named, hold, names, new boolean[] {load[0] != 0, load[1] != 0, load[2] != 0});
        return new Case.Bending(name, hold, names, load, station);
    }

    private static void refuseMixture(Named<CaseText> named) {
        CaseText text = named.value();
        String first = text.couple().isPresent() ? "couple" : "force";
        String second = !text.pressures().isEmpty()
                ? "pressures"
                : !text.wheels().isEmpty() ? "wheels" : !text.pads().isEmpty() ? "pads" : "";
        if (!second.isEmpty()) {
            throw new DesignError(
                    text.place(),
                    named.name() + ": \"" + first + "\" and \"" + second + "\" exclude each other",
                    "a couple and a force are read as a stiffness; write a case of its own for what loads the tub");
        }
    }

    /** A load that goes straight into a support would make the tub look stiffer than it is, or rigid. */
    private static void refuseHeld(
            Named<CaseText> named, List<Case.Support> hold, List<String> loaded, boolean[] pushed) {
        for (Case.Support support : hold) {
            boolean stopped = true;
            for (int d = 0; d < pushed.length; d++) {
                stopped &= !pushed[d] || support.directions()[d];
            }
            if (stopped && loaded.contains(support.hardpoint())) {
                throw new DesignError(
                        named.name().place(),
                        "case \"" + named.name() + "\": hardpoint \"" + support.hardpoint()
                                + "\" is held where it is loaded",
                        "its share of the load would go straight into the support; load other hardpoints");
            }
        }
    }

    private static double nonZero(Amount load, String name) {
        if (load.si() == 0) {
            throw new DesignError(load.place(), "case \"" + name + "\": the load is zero", "any other value will do");
        }
        return load.si();
    }

    private double station(Optional<Amount> amount, Name name, String key) {
        Amount station = amount.orElseThrow(() -> new DesignError(
                name.place(),
                "case \"" + name + "\": the key \"" + key + "\" is missing",
                "say at which x the movement is read"));
        if (station.si() < shape.front() || station.si() > shape.rear()) {
            throw new DesignError(
                    station.place(),
                    key + ": \"" + station + "\" lies outside the tub",
                    String.format(
                            Locale.ROOT, "the tub runs from %.0f to %.0f mm", shape.front() * 1e3, shape.rear() * 1e3));
        }
        return station.si();
    }

    private static boolean[] directions(Name text) {
        boolean[] held = new boolean[DIRECTIONS.size()];
        for (String word : text.text().strip().split("[,\\s]+")) {
            int index = DIRECTIONS.indexOf(word);
            if (index < 0) {
                throw new DesignError(
                        text.place(),
                        "\"" + word + "\" is not a direction",
                        "directions: " + String.join(", ", DIRECTIONS) + "; several with commas: \"x, y, z\"");
            }
            held[index] = true;
        }
        return held;
    }
}
