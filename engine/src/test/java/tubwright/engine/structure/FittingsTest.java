// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.structure;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Mesh;
import tubwright.numerics.solver.Solvers;

/** Tubes, bodies and masses bolted to a thin tube. */
class FittingsTest {
    private static final Mesh TUBE = TestMeshes.tube(TestStructures.RADIUS, TestStructures.LENGTH, 24, 24);
    private static final double STEEL = 205e9;
    private static final double[] NONE = new double[3];
    private static final List<String> FRONT = List.of("front 0", "front 1", "front 2", "front 3");
    private static final List<String> REAR = List.of("rear 0", "rear 1", "rear 2", "rear 3");

    private static double[] at(double x, double y, double z) {
        return new double[] {x, y, z};
    }

    private static Fittings of(List<Fittings.Node> nodes, List<Fittings.Tube> tubes, List<Fittings.Body> bodies) {
        return new Fittings(nodes, tubes, bodies, List.of(), Optional.empty());
    }

    private static Solution solve(Fittings fittings, Case wanted) {
        return solve(TestStructures.of(TUBE, List.of(), fittings), wanted);
    }

    private static Solution solve(Structure structure, Case wanted) {
        return StaticSolver.solve(structure, List.of(wanted), Solvers.best(), new StepTimes())
                .getFirst();
    }

    private static List<Case.Support> hold(List<String> names, boolean turnsToo) {
        boolean[] directions = {true, true, true, turnsToo, turnsToo, turnsToo};
        return names.stream().map(n -> new Case.Support(n, directions)).toList();
    }

    private static BeamSection section(double area, double inertia) {
        return new BeamSection(
                STEEL,
                79e9,
                0,
                area,
                inertia,
                inertia,
                2 * inertia,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
    }

    private static Fittings.Tube tube(String from, String to, BeamSection section, boolean pinned, double length) {
        return new Fittings.Tube("tube", from, to, section, pinned, "", length);
    }

    /**
     * A portal with fixed bases under a sideways force H at the height h of its beam (Kleinlogel, frame formulas): base
     * moments (H h/2)(3k + 1)/(6k + 1), sway H h³ (3k + 2)/(12 E I_c (6k + 1)), k = (I_b/L)/(I_c/h); both bending only, so
     * the section is given much area.
     */
    @Test
    void aHoopOnFixedFeetSwaysLikeAPortal() {
        double x = TestStructures.LENGTH - 0.1;
        double y = TestStructures.RADIUS * Math.cos(Math.PI / 4);
        double h = 0.4;
        double column = 2e-8;
        double beam = 5e-8;
        Fittings hoop = of(
                List.of(new Fittings.Node("top R", at(x, y, y + h)), new Fittings.Node("top L", at(x, -y, y + h))),
                List.of(
                        tube("rear 0", "top R", section(1, column), false, h),
                        tube("top R", "top L", section(1, beam), false, 2 * y),
                        tube("top L", "rear 1", section(1, column), false, h)),
                List.of());
        double force = 900;
        List<Case.Force> push = List.of(new Case.Force("top R", at(0, force, 0), NONE));
        Structure structure = TestStructures.of(TUBE, List.of(), hoop);
        Solution solution = solve(structure, new Case.Loads("push", hold(REAR, true), push, NONE, "test"));
        double k = beam / (2 * y) / (column / h);
        double sway = force * h * h * h * (3 * k + 2) / (12 * STEEL * column * (6 * k + 1));
        assertEquals(sway, structure.movement("top R", solution.displacements())[1], 1e-5 * sway);
        double base = force * h / 2 * (3 * k + 1) / (6 * k + 1);
        int foot = structure.hardpointNode("rear 0");
        assertEquals(base, Math.abs(solution.reactions()[6 * foot + 3]), 1e-5 * base);
    }

    /** A node on three pinned tubes: by hand, each bar's force from the joint's balance and δ = Σ N n L/EA (virtual force). */
    @Test
    void threePinnedTubesHoldANode() {
        double x = TestStructures.LENGTH - 0.1;
        double r = TestStructures.RADIUS * Math.cos(Math.PI / 4);
        double[] apex = at(x + 0.3, 0, 0);
        List<Fittings.Tube> tubes = new ArrayList<>();
        double length = Math.sqrt(0.09 + 2 * r * r);
        for (String foot : REAR) {
            tubes.add(tube(foot, "apex", section(1e-4, 1e-9), true, length));
        }
        Fittings stays = of(List.of(new Fittings.Node("apex", apex)), tubes, List.of());
        Structure structure = TestStructures.of(TUBE, List.of(), stays);
        List<Case.Force> pull = List.of(new Case.Force("apex", at(1000, 0, 0), NONE));
        double[] u = solve(structure, new Case.Loads("pull", hold(REAR, true), pull, NONE, "test"))
                .displacements();
        // Four alike: N = F L / (4 · 0.3) each, so δ = F L³ / (4 EA 0.3²).
        double expected = 1000 * Math.pow(length, 3) / (4 * STEEL * 1e-4 * 0.09);
        assertEquals(expected, structure.movement("apex", u)[0], 1e-9 * expected);
    }

    private static Fittings engine(Fittings.Build build, List<String> mounts, double bolt) {
        double x = TestStructures.LENGTH + 0.3;
        List<Fittings.Node> points = List.of(
                new Fittings.Node("far R", at(x + 0.2, 0.2, 0)), new Fittings.Node("far L", at(x + 0.2, -0.2, 0)));
        return of(
                List.of(),
                List.of(),
                List.of(new Fittings.Body("engine", 100, at(x, 0, 0), mounts, bolt, build, points)));
    }

    private static List<Case.Force> couple(String left, String right, double arm) {
        double f = TestStructures.COUPLE / (2 * arm);
        return List.of(new Case.Force(right, at(0, 0, f), NONE), new Case.Force(left, at(0, 0, -f), NONE));
    }

    /** Rayleigh: what is bolted on can only take work away from the same load, whatever it is. */
    @Test
    void aRigidEngineNeverMakesTheTubSofter() {
        double bare = solve(Fittings.NONE, TestStructures.torsion()).work();
        for (List<String> mounts :
                List.of(FRONT, List.of("front 0", "front 1", "rear 2"), List.of("front 0", "rear 1", "rear 3"))) {
            double with = solve(engine(new Fittings.Rigid(), mounts, 1e8), TestStructures.torsion())
                    .work();
            assertTrue(with < bare, mounts + ": " + with + " J with, " + bare + " J without");
        }
    }

    /** Springs in series: behind the tub, an elastic body twists by T/k more than a rigid one, and costs T²/2k more work. */
    @Test
    void anElasticEngineIsASpringBehindTheTub() {
        double length = 0.6;
        double k = 4e5;
        double shear = 27e9;
        BeamSection section = new BeamSection(
                70e9,
                shear,
                0,
                1e-2,
                1e-5,
                1e-5,
                k * length / shear,
                Double.POSITIVE_INFINITY,
                Double.POSITIVE_INFINITY);
        double front = TestStructures.LENGTH;
        Case twist = new Case.Loads("twist", hold(FRONT, false), couple("far L", "far R", 0.2), NONE, "test");
        double rigid = solve(engine(new Fittings.Rigid(), REAR, 1e9), twist).work();
        double elastic = solve(engine(new Fittings.Elastic(front, front + length, section), REAR, 1e9), twist)
                .work();
        double extra = TestStructures.COUPLE * TestStructures.COUPLE / (2 * k);
        assertEquals(extra, elastic - rigid, 1e-6 * extra);
    }

    @Test
    void aMatrixOfOneSpringIsAPinnedTube() {
        double[] a = TestStructures.hardpoints().get(0).position();
        double[] b = TestStructures.hardpoints().get(2).position();
        double[] d = Vectors.unit(Vectors.minus(b, a));
        double length = Vectors.length(Vectors.minus(b, a));
        double k = STEEL * 2e-4 / length;
        double[] matrix = new double[36];
        for (int i = 0; i < 6; i++) {
            for (int j = 0; j < 6; j++) {
                matrix[6 * i + j] = (i / 3 == j / 3 ? 1 : -1) * k * d[i % 3] * d[j % 3];
            }
        }
        Fittings.Body body = new Fittings.Body(
                "strut", 0, a, List.of("front 0", "front 2"), 1, new Fittings.AtMounts(matrix), List.of());
        double asMatrix = solve(of(List.of(), List.of(), List.of(body)), TestStructures.torsion())
                .work();
        double asTube = solve(
                        of(
                                List.of(),
                                List.of(tube("front 0", "front 2", section(2e-4, 1e-9), true, length)),
                                List.of()),
                        TestStructures.torsion())
                .work();
        assertEquals(asTube, asMatrix, 1e-10 * asTube);
    }

    @Test
    void theInsertsFeelAllThatIsBoltedOn() {
        Structure structure = TestStructures.of(TUBE, List.of(), engine(new Fittings.Rigid(), REAR, 1e8));
        List<Case.Force> pull = List.of(new Case.Force("far R", at(300, 0, 1000), at(0, 20, 0)));
        double[] u = solve(structure, new Case.Loads("pull", hold(FRONT, false), pull, NONE, "test"))
                .displacements();
        double[] sum = new double[3];
        for (String rear : REAR) {
            double[] push = structure.onInsert(rear, u);
            for (int d = 0; d < 3; d++) {
                sum[d] += push[d];
            }
        }
        assertArrayEquals(at(300, 0, 1000), sum, 1e-5);
    }

    /** A weightless tub under the weight of its engine alone: the supports carry mass times gravity. */
    @Test
    void massBoltedOnWeighs() {
        Fittings engine = engine(new Fittings.Rigid(), REAR, 1e8);
        Fittings driver = new Fittings(
                List.of(),
                List.of(),
                engine.bodies(),
                List.of(new Fittings.Mass("driver", 80, List.of(), List.of("skin"), 0.3, 0.9)),
                Optional.empty());
        Case weight = new Case.Loads("weight", hold(FRONT, false), List.of(), at(0, 0, -9.81), "test");
        double own = Arrays.stream(solve(Fittings.NONE, weight).reactions()).sum();
        double all = upward(solve(driver, weight));
        assertEquals(180 * 9.81, all - upward(solve(Fittings.NONE, weight)), 1e-4, "own weight " + own);
    }

    private static double upward(Solution solution) {
        double sum = 0;
        for (int i = 2; i < solution.reactions().length; i += 6) {
            sum += solution.reactions()[i];
        }
        return sum;
    }

    /** Where a free body is held does not matter: beside a held case it borrows six of its holds, and strains alike. */
    @Test
    void aFreeBodyStrainsAlikeBesideAHeldCase() {
        Structure structure = TestStructures.of(TUBE, List.of(), engine(new Fittings.Rigid(), REAR, 1e8));
        Case kick = new Case.Loads(
                "kick", List.of(), List.of(new Case.Force("far R", at(0, 500, 2000), NONE)), NONE, "test");
        Solution alone = solve(structure, kick);
        StepTimes times = new StepTimes();
        Solution beside = StaticSolver.solve(structure, List.of(TestStructures.torsion(), kick), Solvers.best(), times)
                .get(1);
        double a = Arrays.stream(StrainEnergy.ofElements(structure, alone.displacements()))
                .sum();
        double b = Arrays.stream(StrainEnergy.ofElements(structure, beside.displacements()))
                .sum();
        assertEquals(a, b, 1e-6 * a);
        assertEquals(1, times.factorisations);
    }

    @Test
    void mechanismsAreNamed() {
        List<Hardpoint> hardpoints = TestStructures.hardpoints();
        assertEquals(Optional.empty(), Mechanisms.find(engine(new Fittings.Rigid(), REAR, 1e8), hardpoints));
        assertEquals(
                Optional.of("engine"),
                Mechanisms.find(engine(new Fittings.Rigid(), List.of("rear 0", "rear 1"), 1e8), hardpoints));
        Fittings.Node apex = new Fittings.Node("apex", at(2, 0, 0));
        BeamSection bar = section(1e-4, 1e-9);
        List<Fittings.Tube> two = List.of(tube("rear 0", "apex", bar, true, 1), tube("rear 1", "apex", bar, true, 1));
        assertEquals(Optional.of("apex"), Mechanisms.find(of(List.of(apex), two, List.of()), hardpoints));
        List<Fittings.Tube> welded =
                List.of(tube("rear 0", "apex", bar, false, 1), tube("rear 1", "apex", bar, true, 1));
        assertEquals(Optional.empty(), Mechanisms.find(of(List.of(apex), welded, List.of()), hardpoints));
    }
}
