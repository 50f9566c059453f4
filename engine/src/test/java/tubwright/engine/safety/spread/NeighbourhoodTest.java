// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tubwright.engine.design.Design;
import tubwright.engine.design.Template;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.response.Reserve;
import tubwright.engine.response.Reserves;
import tubwright.engine.response.Study;
import tubwright.engine.safety.damage.Patches;
import tubwright.engine.strength.StrengthBasis;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.Solution;
import tubwright.engine.structure.StaticSolver;
import tubwright.engine.structure.StepTimes;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.StructureException;
import tubwright.engine.structure.Surroundings;
import tubwright.engine.structure.Tearing;
import tubwright.engine.structure.Torn;
import tubwright.engine.structure.TornCases;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** The neighbourhood of a place, with the rest condensed, answers as the whole tub does until something fails. */
class NeighbourhoodTest {
    private static final Energies ASSUMED = new Energies(
            OptionalDouble.of(60e3), OptionalDouble.of(1e3), OptionalDouble.of(5e3), OptionalDouble.of(2e3));

    @TempDir
    Path folder;

    private Tub tub() throws IOException {
        Files.writeString(folder.resolve(Design.FILE_NAME), Template.text("Trial"));
        Tub tub = Design.read(folder).asDesigned().tub();
        StrengthBasis basis = tub.strength();
        // Warm enough that no stress is left of the cure, which this model does not count.
        StrengthBasis warm = new StrengthBasis(
                basis.unidirectional(), basis.cloth(), basis.knockDown(), basis.inSitu(), 450.15, basis.gaps());
        return new Tub(
                tub.name(),
                tub.variant(),
                tub.construction(),
                tub.shape(),
                tub.layout(),
                tub.meshSize(),
                tub.laminates(),
                tub.patchPlies(),
                tub.joints(),
                tub.stiffeners(),
                tub.hardpoints(),
                tub.cases(),
                warm,
                tub.fittings());
    }

    private static Case load(Tub tub) {
        return tub.cases().stream()
                .filter(Case.Loads.class::isInstance)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void withTheRestCondensedALoadMovesAsFarAsInTheWholeTub() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.15)).with(tub.fittings());
        Case wanted = load(tub);
        Solution whole = StaticSolver.solve(structure, List.of(wanted), Solvers.best(), new StepTimes())
                .getFirst();
        String hardpoint = structure.hardpoints().getFirst().name();
        int[] patch = new Patches(structure).at(hardpoint, 0.4).elements();
        Neighbourhood near = Neighbourhood.of(tub, structure, patch, new int[0], wanted, ASSUMED, Solvers.best());
        SpreadAnswer answer = LoadPath.of(
                near.model(), new LoadPath.Manner(3, 0.2, 1e-3, 0.04), Solvers.best(), n -> {}, () -> false);
        SpreadAnswer.Step first = answer.steps().get(1);
        assertEquals(2 * whole.work(), first.movement() / first.factor(), 1e-7 * whole.work());
    }

    /** What sleeps is condensed, not left out: it makes no difference how much of a place is awake. */
    @Test
    void aPlaceMovesTheSameHoweverMuchOfItSleeps() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.1)).with(tub.fittings());
        String hardpoint = structure.hardpoints().getFirst().name();
        int[] patch = new Patches(structure).at(hardpoint, 0.6).elements();
        SpreadModel model = Neighbourhood.of(tub, structure, patch, new int[0], load(tub), ASSUMED, Solvers.best())
                .model();
        double[] whole = new double[model.mechanisms()];
        Arrays.fill(whole, 1);
        boolean[] changed = new boolean[model.pieces()];
        Arrays.fill(changed, true);
        model.update(whole, changed);
        boolean[] some = new boolean[model.pieces()];
        some[model.pieces() / 2] = true;
        try (Awake all = Awake.all(model, Solvers.best());
                Awake one = Awake.of(model, some, Solvers.best())) {
            assertTrue(all.whole() && !one.whole());
            all.assemble();
            one.assemble();
            double[] expected = all.solve();
            double[] found = one.solve();
            assertEquals(all.along(expected, 1), one.along(found, 1), 1e-8 * all.along(expected, 1));
            one.complete(found, 1);
            double most = Arrays.stream(expected).map(Math::abs).max().orElseThrow();
            for (int i = 0; i < found.length; i++) {
                assertEquals(expected[i], found[i], 1e-8 * most);
            }
        }
    }

    /** What is torn out takes its weight along, and what is left of a free body finds a new balance. */
    @Test
    void roundAHoleALoadMovesAsFarAsInTheTornTub() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.1)).with(tub.fittings());
        Case.Loads wanted = (Case.Loads) load(tub);
        assertTrue(wanted.free());
        Patches patches = new Patches(structure);
        Tearing tearing = new Tearing(structure, structure.assemble().diagonal());
        int[] torn = patches.moving(0.35, 60).stream()
                .map(p -> p.elements())
                .filter(e -> insideOnly(tearing, e))
                .findFirst()
                .orElseThrow();
        int[] beside = IntStream.range(0, structure.mesh().elementCount())
                .filter(e -> Arrays.binarySearch(torn, e) < 0)
                .filter(e -> e % 3 == 0)
                .toArray();
        SpreadModel model = Neighbourhood.of(tub, structure, beside, torn, wanted, ASSUMED, Solvers.best())
                .model();
        TornCases.OneCase whole = TornCases.of(structure, List.of(wanted), torn, Solvers.best())
                .cases()
                .getFirst();
        double[] u = whole.displacements();
        double[] felt = structure.assemble().multiply(u);
        Torn gone = tearing.tear(torn);
        double work = 0;
        for (int i = 0; i < u.length; i++) {
            work += u[i] * felt[i];
        }
        for (int i = 0; i < gone.dead().length; i++) {
            for (int j = 0; j < gone.dead().length; j++) {
                work -= u[6 * gone.nodes()[i / 6] + i % 6]
                        * gone.stiffness()[i][j]
                        * u[6 * gone.nodes()[j / 6] + j % 6];
            }
        }
        SpreadAnswer answer =
                LoadPath.of(model, new LoadPath.Manner(0, 0.2, 1e-3, 0.04), Solvers.best(), n -> {}, () -> false);
        SpreadAnswer.Step first = answer.steps().get(1);
        assertEquals(work, first.movement() / first.factor(), 1e-6 * work);
    }

    /** Whether tearing them out leaves a node without anything, and none of them carries a hardpoint. */
    private static boolean insideOnly(Tearing tearing, int[] elements) {
        Torn torn = tearing.tear(elements);
        return torn.parts().keySet().stream().noneMatch(p -> p.kind() == Part.Kind.HARDPOINT)
                && IntStream.range(0, torn.dead().length).anyMatch(i -> torn.dead()[i]);
    }

    /** Weight and inertia load every node; what the rest holds is the border alone. */
    @Test
    void theRestHoldsNoMoreThanTheBorder() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.1)).with(tub.fittings());
        int[] patch = new Patches(structure)
                .at(structure.hardpoints().getFirst().name(), 0.6)
                .elements();
        Surroundings around = Surroundings.of(structure, patch, List.of(), new int[0], load(tub), Solvers.best());
        assertTrue(around.nodes().length > around.border().length);
        assertEquals(36 * around.border().length * around.border().length, around.stiffness().length);
    }

    @Test
    void whatFailsFirstIsWhatTheReserveTableNames() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.15)).with(tub.fittings());
        Case wanted = load(tub);
        Solution whole = StaticSolver.solve(structure, List.of(wanted), Solvers.best(), new StepTimes())
                .getFirst();
        Laminate[] laminates =
                structure.mesh().regions().stream().map(tub::laminate).toArray(Laminate[]::new);
        double least = Reserves.of(structure, laminates, List.of(whole), tub.strength()).rows().stream()
                .filter(NeighbourhoodTest::followed)
                .mapToDouble(Reserve::value)
                .min()
                .orElseThrow();
        int[] all = IntStream.range(0, structure.mesh().elementCount()).toArray();
        Neighbourhood near = Neighbourhood.of(tub, structure, all, new int[0], wanted, ASSUMED, Solvers.best());
        SpreadAnswer answer = LoadPath.of(
                near.model(), new LoadPath.Manner(0, 0.2, 1e-3, 0.04), Solvers.best(), n -> {}, () -> false);
        assertTrue(answer.lowered().isEmpty(), answer.lowered().toString());
        assertEquals(
                least, answer.first(), 1e-6 * least, answer.events().getFirst().toString());
    }

    /** The checks that drive mechanisms: maximum stress, Puck, shear of the core, the elastic checks of bonds. */
    private static boolean followed(Reserve row) {
        return row.check().equals("maximum stress")
                || row.check().equals("Puck")
                || row.check().equals("shear of the core")
                || row.check().contains("bond line");
    }

    @Test
    void aLoadThatGoesWithWhatIsTornOutIsNamed() throws IOException {
        Tub tub = tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.15)).with(tub.fittings());
        Case.Torsion wanted = tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .orElseThrow();
        String loaded = wanted.loaded().getFirst();
        int[] torn = new Patches(structure).at(loaded, 0.3).elements();
        int[] beside = IntStream.range(0, structure.mesh().elementCount())
                .filter(e -> IntStream.of(torn).noneMatch(t -> t == e))
                .limit(20)
                .toArray();
        StructureException refused = assertThrows(
                StructureException.class,
                () -> Neighbourhood.of(tub, structure, beside, torn, wanted, ASSUMED, Solvers.best()));
        assertTrue(refused.getMessage().contains(loaded), refused.getMessage());
    }
}
