// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A whole car on four corners: what the road gives it is what its body and its wheels' own inertia take. */
class VehicleTest {
    private static final double G = Car.GRAVITY;
    private static final double TRACK = 1.4;
    private static final double BASE = 2.5;
    private static final Car CAR = new Car(480, BASE, TRACK, TRACK, 0.29, 1.4, 0.52, Optional.empty());
    private static final double UNSPRUNG = 18;
    private static final Vehicle VEHICLE = vehicle(1e7);

    private static double[] at(double x, double y, double z) {
        return new double[] {x, y, z};
    }

    private static Corner corner(String name, double x, double axialStiffness) {
        LinkTube ea = LinkTube.elastic(axialStiffness);
        double[] up = at(x, 0.6, 0.35);
        double[] low = at(x, 0.61, 0.17);
        return new Corner(
                name,
                List.of(
                        new Link("upper front leg", at(x - 0.2, 0.18, 0.32), up, ea),
                        new Link("upper rear leg", at(x + 0.2, 0.18, 0.32), up, ea),
                        new Link("lower front leg", at(x - 0.2, 0.15, 0.18), low, ea),
                        new Link("lower rear leg", at(x + 0.2, 0.15, 0.18), low, ea),
                        new Link("toe link", at(x + 0.1, 0.15, 0.2), at(x + 0.1, 0.6, 0.22), ea)),
                new Link("rod", at(x, 0.2, 0.45), at(x, 0.55, 0.19), ea),
                Optional.empty(),
                List.of(2, 3));
    }

    private static Vehicle vehicle(double ea) {
        List<Wheel> wheels = new ArrayList<>();
        for (int a = 0; a < 2; a++) {
            double x = a * BASE;
            String axle = a == 0 ? "front" : "rear";
            Corner right = corner(axle + " R", x, ea);
            for (boolean left : new boolean[] {true, false}) {
                double y = left ? -TRACK / 2 : TRACK / 2;
                String name = axle + (left ? " L" : " R");
                Corner held = left ? right.mirrored(name, n -> n + " L") : right;
                wheels.add(new Wheel(
                        name,
                        a == 0,
                        left,
                        at(x, y, 0),
                        at(x, y, 0.27),
                        UNSPRUNG,
                        Optional.of(held),
                        Optional.empty()));
            }
        }
        return new Vehicle(CAR, at(0, 0, 0), 0.6, 0, Optional.of("engine"), wheels);
    }

    /** Force and moment about the road below the front axle of everything on the body. */
    private static double[] sum(List<PointLoad> loads) {
        double[] sum = new double[6];
        for (PointLoad load : loads) {
            double[] m = Vectors.cross(load.position(), load.force());
            for (int d = 0; d < 3; d++) {
                sum[d] += load.force()[d];
                sum[3 + d] += load.moment()[d] + m[d];
            }
        }
        return sum;
    }

    /** D'Alembert: body loads = inertia and weight of the whole car less those of its wheels, force and moment alike. */
    @Test
    void theWholeCarIsInEquilibrium() {
        double[][] accelerations = {
            {1.6 * G, 0, 0}, {-0.9 * G, 0.4 * G, 0}, {0, 1.5 * G, 0}, {1.1 * G, -1.1 * G, 0.5 * G}, {0, 0, 2 * G}
        };
        for (double[] a : accelerations) {
            double[] got = sum(VEHICLE.under(new Vehicle.Doing(a, Car.Outside.NONE, Map.of()))
                    .onBody());
            double[] felt = at(a[0], a[1], a[2] + G);
            double[] expected = moments(CAR.mass(), at(CAR.centreAft(), 0, CAR.centreHeight()), felt);
            for (Wheel wheel : VEHICLE.wheels()) {
                double[] own = moments(-UNSPRUNG, wheel.hub(), felt);
                for (int d = 0; d < 6; d++) {
                    expected[d] += own[d];
                }
            }
            assertArrayEquals(expected, got, 1e-8);
        }
    }

    private static double[] moments(double mass, double[] at, double[] felt) {
        double[] f = Vectors.times(mass, felt);
        double[] m = Vectors.cross(at, f);
        return new double[] {f[0], f[1], f[2], m[0], m[1], m[2]};
    }

    @Test
    void theTyresCarryDownforceWhereItActs() {
        // 1000 N down midway between the axles: half on each axle, a quarter on each tyre, on top of the weight.
        Car.Outside air = new Car.Outside(at(0, 0, -1000), Vectors.cross(at(BASE / 2, 0, 0), at(0, 0, -1000)));
        Car.Contacts without = CAR.contacts(new double[3], 0.6);
        Car.Contacts with = CAR.contacts(new double[3], 0.6, air);
        assertEquals(250, with.front()[0][2] - without.front()[0][2], 1e-9);
        assertEquals(250, with.rear()[1][2] - without.rear()[1][2], 1e-9);
    }

    @Test
    void aDrivenUprightIsPushedAtItsHubAndTheEngineFeelsTheShafts() {
        double[] a = {-0.8 * G, 0, 0};
        Vehicle.Answer answer = VEHICLE.under(new Vehicle.Doing(a, Car.Outside.NONE, Map.of()));
        double drive = 480 * 0.8 * G;
        double torque = answer.onBody().stream()
                .filter(l -> l.at().equals("engine"))
                .mapToDouble(l -> l.moment()[1])
                .sum();
        // The wheels are pushed forward (−x) at the road: a torque about +y through the shafts times radius 0.27 m, and
        // back.
        assertEquals(drive * 0.27, torque, 1e-8);
    }

    /**
     * Two springs in series (Castigliano): the hubs' give by links alone is the sum of N² L / EA; by hand for one corner
     * under a unit load, against the alignment's movement of the hub by virtual forces.
     */
    @Test
    void theHubMovesByTheStretchOfItsLinks() {
        Wheel wheel = VEHICLE.wheels().get(1);
        CornerForces side = wheel.held().orElseThrow().forces(wheel.hub(), at(0, 1000, 0), new double[3]);
        double twiceEnergy = 0;
        for (int k = 0; k < 6; k++) {
            Link link = wheel.held().get().links().get(k);
            double n = side.tensions()[k];
            twiceEnergy += n * n * Vectors.length(Vectors.minus(link.inner(), link.outer())) / 1e7;
        }
        Alignment lost = Alignment.of(wheel, side, l -> new double[6]);
        assertEquals(twiceEnergy / 1000, lost.sideways(), 1e-12);
        assertEquals(twiceEnergy / 2, wheel.held().get().energy(side), 1e-12);
    }

    @Test
    void aTubThatTurnsTurnsItsWheelsWithIt() {
        // Rotation of the tub by one milliradian about x leans the right wheel inward at the top and the left one
        // outward.
        for (Wheel wheel : VEHICLE.wheels()) {
            Vehicle stiff = vehicle(Double.POSITIVE_INFINITY);
            Wheel same = stiff.wheels().get(VEHICLE.wheels().indexOf(wheel));
            CornerForces none = same.held().orElseThrow().forces(same.hub(), at(0, 0, 1), new double[3]);
            double turn = 1e-3;
            Alignment lost = Alignment.of(same, none, l -> {
                double[] p = l.position();
                return new double[] {0, -turn * p[2], turn * p[1], turn, 0, 0};
            });
            assertEquals(same.left() ? turn : -turn, lost.camber(), 1e-12, same.name());
            assertEquals(0, lost.toe(), 1e-12, same.name());
            Alignment steered = Alignment.of(same, none, l -> {
                double[] p = l.position();
                return new double[] {-turn * p[1], turn * p[0], 0, 0, 0, turn};
            });
            assertEquals(same.left() ? -turn : turn, steered.toe(), 1e-12, same.name());
        }
    }

    /** By hand: 20 × 2 mm of steel, 0.5 m long: A = 113 mm², I = 4637 mm⁴, Euler π² · 205 GPa · I / L² = 37.5 kN. */
    @Test
    void aLinkBucklesAsEulerSaysAndYieldsByItsSection() {
        double area = Math.PI * (0.01 * 0.01 - 0.008 * 0.008);
        double inertia = Math.PI / 4 * (Math.pow(0.01, 4) - Math.pow(0.008, 4));
        LinkTube tube = new LinkTube(205e9 * area, 205e9 * inertia, 500e6 * area, 480e6 * area);
        assertEquals(37.5e3, tube.buckling(0.5), 0.1e3);
        assertEquals(56.5e3 / 10e3, tube.reserve(10e3, 0.5), 0.01);
        assertEquals(37.5e3 / 10e3, tube.reserve(-10e3, 0.5), 0.01);
        assertEquals(54.3e3 / 10e3, tube.reserve(-10e3, 0.2), 0.01);
    }

    @Test
    void wheelsHeavierThanTheCarAreRefused() {
        LoadException e = assertThrows(
                LoadException.class,
                () -> new Vehicle(
                        new Car(60, BASE, TRACK, TRACK, 0.3, 1, 0.5, Optional.empty()),
                        at(0, 0, 0),
                        0.6,
                        0,
                        Optional.empty(),
                        VEHICLE.wheels()));
        assertTrue(e.getMessage().contains("wheels weigh"), e.getMessage());
    }
}
