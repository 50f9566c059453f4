// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.Layer;
import tubwright.engine.mesh.Mesh;
import tubwright.engine.response.Study;
import tubwright.engine.shape.Opening;
import tubwright.engine.shape.TubShape;
import tubwright.engine.structure.Hardpoint;
import tubwright.engine.structure.Joint;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/**
 * The example designs with layups, joints, inserts and mesh drawn at random, through design, mesh and structure: nothing
 * crashes, and what must not lower (or raise) the torsional stiffness does not. Set -Dtubwright.seed to repeat a run.
 */
class RandomDesignsTest {
    private static final long SEED = Long.getLong("tubwright.seed", 20_261);

    /** Strain operators are shaped by the laminate they are made for, so that adding to it is monotonic only this far. */
    private static final double SHAPING = 1e-3;

    /** Another opening is another mesh; at these sizes meshes differ by this much. */
    private static final double MESHING = 1e-2;

    private static Tub example(String name) {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("tubwright.cmd"))) {
            folder = folder.getParent();
        }
        return Design.read(folder.resolve("examples").resolve(name))
                .asDesigned()
                .tub();
    }

    @Test
    void moreNeverMakesItSofterAndCuttingNeverStiffer() {
        Random random = new Random(SEED);
        for (int trial = 0; trial < 3; trial++) {
            Tub tub = drawn(example(trial % 2 == 0 ? "larkspur" : "bramble"), random);
            String where = "seed " + SEED + ", trial " + trial + ": ";
            Mesh mesh = Study.mesh(tub, tub.meshSize());
            double work = work(tub, mesh, where);
            assertTrue(work > 0 && Double.isFinite(work), where + work);
            Tub thicker = withMorePlies(tub, random);
            double more = work(thicker, mesh, where);
            assertTrue(more <= work * (1 + SHAPING), where + "a ply more makes it softer: " + more / work);
            Tub tighter = withJoints(tub, 4);
            double tight = work(tighter, mesh, where);
            assertTrue(tight <= work * (1 + 1e-9), where + "stiffer joints make it softer: " + tight / work);
            // A patch round an opening keeps it.
            if (tub.shape().openings().stream().anyMatch(o -> removable(tub, o))) {
                Tub closed = withoutAnOpening(tub, random);
                double uncut = work(closed, Study.mesh(closed, tub.meshSize()), where);
                assertTrue(uncut <= work * (1 + MESHING), where + "cutting makes it stiffer: " + uncut / work);
            }
        }
    }

    /** Compliance in the first case, J; on the way, loads and reactions balance and the residual is nothing. */
    private static double work(Tub tub, Mesh mesh, String where) {
        Structure structure = Structure.of(tub, mesh);
        Solution solution = StaticSolver.solve(structure, tub.cases().subList(0, 1), Solvers.best(), new StepTimes())
                .getFirst();
        assertEquals(0, solution.residual(), 1e-10, where + "residual");
        return solution.work();
    }

    private static Tub drawn(Tub tub, Random random) {
        Map<String, Laminate> laminates = new HashMap<>();
        tub.laminates().forEach((zone, laminate) -> {
            List<Layer> layers = new ArrayList<>(laminate.layers());
            for (int i = random.nextInt(3); i > 0; i--) {
                Layer outer = layers.getFirst();
                layers.add(new Layer(outer.material(), outer.thickness(), random.nextDouble(-1.57, 1.57)));
            }
            laminates.put(zone, new Laminate(layers, laminate.reference()));
        });
        List<Hardpoint> hardpoints = tub.hardpoints().stream()
                .map(h -> new Hardpoint(
                        h.name(),
                        h.part(),
                        h.position(),
                        h.footprintRadius(),
                        h.translationStiffness() * Math.pow(10, random.nextDouble(-.5, .5)),
                        h.rotationStiffness() * Math.pow(10, random.nextDouble(-.5, .5)),
                        h.mass()))
                .toList();
        Tub with = new Tub(
                tub.name(),
                tub.variant(),
                tub.construction(),
                tub.shape(),
                tub.layout(),
                random.nextDouble(.06, .09),
                laminates,
                tub.patchPlies(),
                tub.joints(),
                tub.stiffeners(),
                hardpoints,
                tub.cases());
        return withJoints(with, Math.pow(10, random.nextDouble(-1, 1)));
    }

    private static Tub with(Tub tub, TubShape shape, Map<String, Laminate> laminates, List<Joint> joints) {
        return new Tub(
                tub.name(),
                tub.variant(),
                tub.construction(),
                shape,
                tub.layout(),
                tub.meshSize(),
                laminates,
                tub.patchPlies(),
                joints,
                tub.stiffeners(),
                tub.hardpoints(),
                tub.cases());
    }

    private static Tub withMorePlies(Tub tub, Random random) {
        Map<String, Laminate> laminates = new HashMap<>(tub.laminates());
        List<String> zones = laminates.keySet().stream().sorted().toList();
        String zone = zones.get(random.nextInt(zones.size()));
        Laminate laminate = laminates.get(zone);
        // On the side away from the reference surface, so that what is there stays where it is.
        List<Layer> layers = new ArrayList<>(laminate.layers());
        Layer outer = layers.getFirst();
        layers.add(new Layer(outer.material(), outer.thickness(), random.nextDouble(-1.57, 1.57)));
        laminates.put(zone, new Laminate(layers, laminate.reference()));
        return with(tub, tub.shape(), laminates, tub.joints());
    }

    private static Tub withJoints(Tub tub, double factor) {
        List<Joint> joints = tub.joints().stream()
                .map(j -> new Joint(
                        j.line(),
                        factor * j.alongStiffness(),
                        factor * j.acrossStiffness(),
                        factor * j.normalStiffness(),
                        factor * j.rotationStiffness(),
                        j.massPerLength(),
                        j.fastenerPitch(),
                        j.fastenerRows(),
                        j.description()))
                .toList();
        return with(tub, tub.shape(), tub.laminates(), joints);
    }

    private static boolean removable(Tub tub, Opening opening) {
        return tub.layout().patches().stream().noneMatch(p -> p.toString().contains(opening.name()));
    }

    private static Tub withoutAnOpening(Tub tub, Random random) {
        TubShape s = tub.shape();
        List<Opening> openings = new ArrayList<>(s.openings());
        List<Opening> removable =
                openings.stream().filter(o -> removable(tub, o)).toList();
        openings.remove(removable.get(random.nextInt(removable.size())));
        TubShape shape = TubShape.of(s.frames(), s.strips(), s.loft(), openings, s.walls());
        return with(tub, shape, tub.laminates(), tub.joints());
    }
}
