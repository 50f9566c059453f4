// SPDX-License-Identifier: Apache-2.0
package tubwright.desk.work;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tubwright.desk.text.Figures;
import tubwright.engine.load.Car;
import tubwright.engine.load.Corner;
import tubwright.engine.load.Vehicle;
import tubwright.engine.load.Wheel;
import tubwright.engine.structure.Fittings;

/** Says in sentences what is bolted to a tub and the car it belongs to, for {@code check}. */
final class CarWords {
    private CarWords() {}

    static List<String> of(Fittings fittings) {
        List<String> facts = new ArrayList<>();
        if (!fittings.isEmpty()) {
            facts.add("Bolted on: " + bolted(fittings) + "; " + kilograms(fittings.mass()) + " in all.");
        }
        fittings.vehicle().ifPresent(v -> {
            facts.add(car(v));
            facts.add(wheels(v));
        });
        return facts;
    }

    private static String bolted(Fittings fittings) {
        Map<String, Double> masses = new LinkedHashMap<>();
        fittings.tubes().forEach(t -> masses.merge(t.name(), t.mass(), Double::sum));
        fittings.bodies().forEach(b -> masses.merge(b.name(), b.mass(), Double::sum));
        fittings.masses().forEach(m -> masses.merge(m.name(), m.mass(), Double::sum));
        return masses.entrySet().stream()
                .map(e -> e.getKey() + " " + kilograms(e.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String car(Vehicle vehicle) {
        Car car = vehicle.car();
        return "Car: " + kilograms(car.mass()) + " ready to drive, "
                + kilograms(car.mass() - vehicle.sprungMass()) + " of it unsprung; "
                + percent(1 - car.centreAft() / car.wheelbase()) + " on the front wheels; centre of mass "
                + millimetres(car.centreHeight()) + " above the road; wheelbase " + millimetres(car.wheelbase())
                + ", track " + millimetres(car.frontTrack()) + " and " + millimetres(car.rearTrack())
                + "; the front takes "
                + percent(car.frontRollShare()) + " of the load transfer in roll and "
                + percent(vehicle.brakesAtFront()) + " of the braking.";
    }

    private static String wheels(Vehicle vehicle) {
        Map<String, List<String>> held = new LinkedHashMap<>();
        for (Wheel wheel : vehicle.wheels()) {
            String by = wheel.held().map(CarWords::links).orElse("")
                    + wheel.carrier().map(c -> "carried by the " + c).orElse("");
            held.computeIfAbsent(by, k -> new ArrayList<>()).add(wheel.name());
        }
        return "Wheels: "
                + held.entrySet().stream()
                        .map(e -> String.join(", ", e.getValue()) + ": " + e.getKey())
                        .collect(Collectors.joining("; "))
                + ".";
    }

    private static String links(Corner corner) {
        return corner.legs().size() + " links and a rod"
                + (corner.rocker().isPresent() ? " to a rocker" : " to the tub");
    }

    private static String kilograms(double mass) {
        return Figures.fixed(mass, mass < 10 ? 1 : 0, " ") + " kg";
    }

    private static String millimetres(double length) {
        return Figures.fixed(1000 * length, 0, " ") + " mm";
    }

    private static String percent(double share) {
        return Figures.fixed(100 * share, 0, " ") + " %";
    }
}
