// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A car on its four wheels: from what it does to the forces at every point that its suspension pushes.
 *
 * @param car masses and levers
 * @param road point of the road below the middle of the front axle, m
 * @param brakesAtFront share of the braking force at the front axle, 0 to 1
 * @param driveAtFront share of the driving force at the front axle, 0 to 1
 * @param drivenFrom name of the body that carries the final drive and takes the reaction of its shafts
 * @param wheels four, or two of a front axle and two of a rear one
 */
public record Vehicle(
        Car car,
        double[] road,
        double brakesAtFront,
        double driveAtFront,
        Optional<String> drivenFrom,
        List<Wheel> wheels) {
    public Vehicle {
        wheels = List.copyOf(wheels);
        double unsprung = wheels.stream().mapToDouble(Wheel::mass).sum();
        if (!(unsprung < car.mass())) {
            throw new LoadException(
                    "the wheels weigh as much as the whole car", "the car's mass includes its wheels, driver and fuel");
        }
    }

    /**
     * What a car does.
     *
     * @param acceleration of the car (aft, right, up), m/s²; up adds to gravity
     * @param outside what pushes it beside road and gravity
     * @param extra force on a tyre beyond that of the whole car's statics, by wheel, N; nothing else balances it but the
     *     inertia of the sprung body
     */
    public record Doing(double[] acceleration, Car.Outside outside, Map<String, double[]> extra) {
        public Doing {
            extra = Map.copyOf(extra);
        }
    }

    /**
     * What a wheel and what holds it feel.
     *
     * @param wheel which
     * @param force on the tyre, N
     * @param corner forces in its links; empty where a body carries it
     */
    public record AtWheel(Wheel wheel, double[] force, Optional<CornerForces> corner) {}

    /**
     * @param wheels each with its forces
     * @param onBody what suspension and shafts do to tub and bodies
     */
    public record Answer(List<AtWheel> wheels, List<PointLoad> onBody) {}

    /** Mass of all but wheels, tyres, hubs and uprights, kg. */
    public double sprungMass() {
        return car.mass() - wheels.stream().mapToDouble(Wheel::mass).sum();
    }

    /**
     * The forces of statics: tyres by the whole car's balance, then each upright with the weight and inertia of its
     * unsprung mass. Braking is taken at the tyre's contact (brakes at the wheels); driving comes through shafts, whose
     * torque the upright does not feel and the body with the final drive does.
     *
     * @throws LoadException where a wheel leaves the road, or links leave a motion free
     */
    public Answer under(Doing doing) {
        double[] a = doing.acceleration();
        boolean driving = car.mass() * a[0] - doing.outside().force()[0] < 0;
        Car.Contacts contacts = car.contacts(a, driving ? driveAtFront : brakesAtFront, doing.outside());
        List<AtWheel> answers = new ArrayList<>();
        List<PointLoad> loads = new ArrayList<>();
        for (Wheel wheel : wheels) {
            double[][] axle = wheel.front() ? contacts.front() : contacts.rear();
            double[] road = axle[wheel.left() ? 0 : 1].clone();
            double shaft = driving && drivenFrom.isPresent() ? wheel.radius() * road[0] : 0;
            double[] extra = doing.extra().getOrDefault(wheel.name(), new double[3]);
            double[] force = Vectors.plus(road, 1, extra);
            double[] own = {
                -wheel.mass() * a[0], -wheel.mass() * a[1], -wheel.mass() * (a[2] + Car.GRAVITY),
            };
            answers.add(hold(wheel, force, own, new double[] {0, shaft, 0}, loads));
            if (shaft != 0) {
                String body = drivenFrom.get();
                loads.add(new PointLoad(body, wheel.hub(), new double[3], new double[] {0, -shaft, 0}));
            }
        }
        return new Answer(List.copyOf(answers), List.copyOf(loads));
    }

    /** A couple about x through the hubs of both axles that twists the car, right-handed about +x at the front, N·m. */
    public Answer twisted(double couple) {
        List<AtWheel> answers = new ArrayList<>();
        List<PointLoad> loads = new ArrayList<>();
        for (Wheel wheel : wheels) {
            double track = wheel.front() ? car.frontTrack() : car.rearTrack();
            double up = (wheel.front() == wheel.left() ? -1 : 1) * couple / track;
            answers.add(hold(wheel, new double[3], new double[] {0, 0, up}, new double[3], loads));
        }
        return new Answer(List.copyOf(answers), List.copyOf(loads));
    }

    private static AtWheel hold(Wheel wheel, double[] tyre, double[] atHub, double[] moment, List<PointLoad> loads) {
        double[] all = Vectors.plus(tyre, 1, atHub);
        double[] aboutHub = Vectors.plus(moment, 1, Vectors.cross(Vectors.minus(wheel.contact(), wheel.hub()), tyre));
        if (wheel.held().isEmpty()) {
            loads.add(new PointLoad(wheel.carrier().orElseThrow(), wheel.hub(), all, aboutHub));
            return new AtWheel(wheel, tyre, Optional.empty());
        }
        CornerForces forces = wheel.held().get().forces(wheel.hub(), all, aboutHub);
        loads.addAll(forces.onTub());
        return new AtWheel(wheel, tyre, Optional.of(forces));
    }
}
