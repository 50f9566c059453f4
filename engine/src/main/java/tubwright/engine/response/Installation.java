// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tubwright.engine.load.Alignment;
import tubwright.engine.load.CornerForces;
import tubwright.engine.load.PointLoad;
import tubwright.engine.load.Vehicle;
import tubwright.engine.load.Wheel;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Fittings;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.StrainEnergy;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.DirectSolver;

/** Answers a tub's load cases with everything bolted to it, and what that and the suspension do to its stiffness. */
final class Installation {
    /** Couple of the hub-to-hub case, N·m, and force at a pick-up, N: any value gives the same stiffness. */
    private static final double UNIT = 1000;

    private static final String HUBS = "hub to hub";

    private final Tub tub;
    private final Structure structure;
    private final Optional<Case.Torsion> torsion;
    private final List<Case> loads;
    private final Optional<Case> hubs;
    /** Pick-ups asked for, each with the case that loads it alone. */
    private final Map<InstalledAnswer.PickUp, Case> pickUps = new LinkedHashMap<>();

    private final Map<Case, Solution> solutions = new LinkedHashMap<>();

    private Installation(Tub tub, Mesh mesh) {
        this.tub = tub;
        structure = Structure.fitted(tub, mesh);
        torsion = tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst();
        loads = tub.cases().stream().filter(Case.Loads.class::isInstance).toList();
        hubs = tub.fittings()
                .vehicle()
                .map(v -> new Case.Loads(
                        HUBS, List.of(), forces(v.twisted(UNIT).onBody()), new double[3], "a couple through the hubs"));
    }

    /** True where a tub has anything to install. */
    static boolean wanted(Tub tub) {
        return !tub.fittings().isEmpty() || tub.fittings().vehicle().isPresent();
    }

    /**
     * Solves the load cases and all others on one structure.
     *
     * @param mesh the finest
     */
    static Installation solve(Tub tub, Mesh mesh, DirectSolver solver, StepTimes times) {
        Installation installation = new Installation(tub, mesh);
        List<Case> all = new ArrayList<>();
        installation.torsion.ifPresent(all::add);
        all.addAll(installation.loads);
        installation.hubs.ifPresent(all::add);
        installation.askPickUps();
        all.addAll(installation.pickUps.values());
        List<Solution> solved = StaticSolver.solve(installation.structure, all, solver, times);
        for (int c = 0; c < all.size(); c++) {
            installation.solutions.put(all.get(c), solved.get(c));
        }
        return installation;
    }

    /** The structure with everything bolted on. */
    Structure structure() {
        return structure;
    }

    /** The load cases, solved. */
    List<Solution> loads() {
        return loads.stream().map(solutions::get).toList();
    }

    /**
     * The answer.
     *
     * @param bare the torsion case on the tub alone, on the same mesh; empty where there is none
     * @param bareStructure the tub alone
     * @param tubMass kg
     */
    InstalledAnswer answer(Optional<Solution> bare, Structure bareStructure, double tubMass) {
        Optional<Vehicle> vehicle = tub.fittings().vehicle();
        Optional<InstalledAnswer.WithAndWithout> both = torsion.flatMap(t -> bare.map(b -> {
            Solution with = solutions.get(t);
            return new InstalledAnswer.WithAndWithout(
                    t.name(),
                    Study.stiffness(bareStructure, b),
                    Study.stiffness(structure, with),
                    atHardpoints(t, b),
                    atHardpoints(t, with),
                    fitted(tub.fittings()));
        }));
        return new InstalledAnswer(
                both,
                hubs.map(h -> hubToHub(solutions.get(h), vehicle.orElseThrow().twisted(UNIT))),
                pickUps.keySet().stream().map(this::answered).toList(),
                alignment(),
                new InstalledAnswer.Masses(
                        tubMass,
                        tub.fittings().mass(),
                        vehicle.map(Vehicle::sprungMass).orElse(Double.NaN)));
    }

    private static double atHardpoints(Case.Torsion torsion, Solution solution) {
        return torsion.couple() * torsion.couple() / (2 * solution.work());
    }

    private static List<String> fitted(Fittings fittings) {
        return Stream.concat(
                        fittings.tubes().stream().map(Fittings.Tube::name),
                        fittings.bodies().stream().map(Fittings.Body::name))
                .distinct()
                .toList();
    }

    /** Loads at named points, with the lever of those that act beside their point. */
    private List<Case.Force> forces(List<PointLoad> loads) {
        return loads.stream()
                .map(l -> {
                    double[] p = structure.place(l.at());
                    double[] r = {l.position()[0] - p[0], l.position()[1] - p[1], l.position()[2] - p[2]};
                    double[] f = l.force();
                    double[] m = {
                        l.moment()[0] + r[1] * f[2] - r[2] * f[1],
                        l.moment()[1] + r[2] * f[0] - r[0] * f[2],
                        l.moment()[2] + r[0] * f[1] - r[1] * f[0]
                    };
                    return new Case.Force(l.at(), f, m);
                })
                .toList();
    }

    private InstalledAnswer.HubToHub hubToHub(Solution solution, Vehicle.Answer twisted) {
        Map<String, Double> energies = new LinkedHashMap<>();
        double[] u = solution.displacements();
        double[] parts = StrainEnergy.ofParts(structure, u, StrainEnergy.ofElements(structure, u));
        for (int p = 0; p < parts.length; p++) {
            String name = switch (structure.parts().get(p).kind()) {
                case ZONE, WALL, STIFFENER -> "tub: skin, walls and stiffeners";
                case JOINT -> "tub: joints";
                case HARDPOINT -> "inserts";
                case TUBE, BODY -> structure.parts().get(p).name();
            };
            energies.merge(name, parts[p], Double::sum);
        }
        double body =
                energies.values().stream().mapToDouble(Double::doubleValue).sum();
        for (Vehicle.AtWheel each : twisted.wheels()) {
            String name = each.wheel().front() ? "front links" : "rear links";
            each.corner()
                    .ifPresent(f -> energies.merge(
                            name, each.wheel().held().orElseThrow().energy(f), Double::sum));
        }
        double whole =
                energies.values().stream().mapToDouble(Double::doubleValue).sum();
        double stiffness = UNIT * UNIT / (2 * whole);
        List<InstalledAnswer.Spring> springs = new ArrayList<>();
        energies.forEach((name, e) -> {
            if (e > 1e-9 * whole) {
                springs.add(new InstalledAnswer.Spring(name, e / whole, UNIT * UNIT / (2 * e)));
            }
        });
        springs.sort(Comparator.comparingDouble(InstalledAnswer.Spring::share).reversed());
        return new InstalledAnswer.HubToHub(stiffness, UNIT * UNIT / (2 * body), springs);
    }

    /** Points of right-hand corners that sit on the tub, each along its link; a rocker's pivot along its bump load. */
    private void askPickUps() {
        List<String> onTub = tub.hardpoints().stream().map(h -> h.name()).toList();
        for (Wheel wheel : tub.fittings().vehicle().map(Vehicle::wheels).orElse(List.of())) {
            if (wheel.left() || wheel.held().isEmpty()) {
                continue;
            }
            CornerForces lifted = wheel.held().get().forces(wheel.hub(), new double[] {0, 0, UNIT}, new double[3]);
            for (int k = 0; k < lifted.onTub().size(); k++) {
                PointLoad load = lifted.onTub().get(k);
                if (!onTub.contains(load.at())) {
                    continue;
                }
                double[] d = k < 5 ? wheel.held().get().legs().get(k).direction() : load.force();
                double length = Math.sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
                if (length > 0) {
                    double[] unit = {d[0] / length, d[1] / length, d[2] / length};
                    InstalledAnswer.PickUp at = new InstalledAnswer.PickUp(load.at(), unit, Double.NaN);
                    pickUps.put(at, unit(at));
                }
            }
        }
    }

    private static Case unit(InstalledAnswer.PickUp at) {
        double[] d = at.direction();
        double[] force = {UNIT * d[0], UNIT * d[1], UNIT * d[2]};
        return new Case.Loads(
                at.name(),
                List.of(),
                List.of(new Case.Force(at.name(), force, new double[3])),
                new double[3],
                "one pick-up alone");
    }

    private InstalledAnswer.PickUp answered(InstalledAnswer.PickUp at) {
        Solution solution = solutions.get(pickUps.get(at));
        double[] u = solution.displacements();
        double[] own = new BodilyMotion(structure.mesh().nodes(), u)
                .leaves(structure.place(at.name()), structure.movement(at.name(), u));
        double[] d = at.direction();
        double along = d[0] * own[0] + d[1] * own[1] + d[2] * own[2];
        return new InstalledAnswer.PickUp(at.name(), d, UNIT / along);
    }

    private List<InstalledAnswer.Lost> alignment() {
        List<InstalledAnswer.Lost> all = new ArrayList<>();
        for (Case each : loads) {
            double[] u = solutions.get(each).displacements();
            BodilyMotion bodily = new BodilyMotion(structure.mesh().nodes(), u);
            for (Vehicle.AtWheel at : ((Case.Loads) each).wheels()) {
                at.corner().ifPresent(real -> {
                    Alignment lost = Alignment.of(
                            at.wheel(), real, l -> bodily.leaves(l.position(), structure.movement(l.at(), u)));
                    all.add(new InstalledAnswer.Lost(each.name(), at.wheel().name(), lost.camber(), lost.toe()));
                });
            }
        }
        return all;
    }
}
