// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.make.flat.Distortion;
import tubwright.engine.make.flat.FlatPattern;
import tubwright.engine.make.nest.Nester;
import tubwright.engine.make.ply.PlyPlan;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.response.MassAnswer;
import tubwright.engine.response.MassRollUp;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Part;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

class KitTest {
    private static final Material CLOTH = MaterialLibrary.shipped().get("pw-t650-976");

    /** The structural model adds up areas of elements times areal masses of stacks, the plies know nothing of stacks. */
    @Test
    void thePliesOfTheLarkspurWeighWhatItsStructuralModelDoes() {
        Tub tub = Design.read(Path.of("../examples/larkspur")).asDesigned().tub();
        Structure structure = Structure.of(tub, Study.mesh(tub, 0.1));
        double skins = MassRollUp.of(structure).items().stream()
                .filter(i -> i.kind() == Part.Kind.ZONE || i.kind() == Part.Kind.WALL)
                .mapToDouble(MassAnswer.Item::mass)
                .sum();
        PlyMass plies = PlyMass.of(PlyPlan.of(tub, structure.mesh()));
        Ladder.of(Family.CURE, "Two ways to add up the same plies", Mark.EXACT)
                .within(1e-3, "Larkspur, plies, films and cores, kg", "100 mm", skins, plies.total());
        assertEquals(
                plies.total(),
                plies.byMaterial().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum(),
                1e-9);
        assertEquals(
                plies.total(),
                plies.byPiece().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum(),
                1e-9);
    }

    private static KitNest.Cut cut(String name, double... outline) {
        FlatPattern flat = new FlatPattern(
                name, List.of(outline), List.of(), new double[2], 0, new Distortion(0, 0, 0, 0, 0, 0, 0), 0);
        return new KitNest.Cut("tray", CLOTH, 0.2e-3, flat);
    }

    private static double[] disc(double radius, int corners) {
        double[] outline = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            outline[2 * i] = radius * Math.cos(2 * Math.PI * i / corners);
            outline[2 * i + 1] = radius * Math.sin(2 * Math.PI * i / corners);
        }
        return outline;
    }

    @Test
    void whatIsBoughtIsTheRollAndWhatIsUsedThePatterns() {
        List<KitNest.Cut> cuts = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            cuts.add(cut("disc " + i, disc(0.2, 200)));
        }
        cuts.add(cut("wide", 0, 0, 1, 0, 1, 1.4, 0, 1.4));
        List<KitNest> kits = KitNest.of(cuts, ShopData.shipped().rolls(), 1, 300, Nester.Listener.silent());
        KitNest kit = kits.getFirst();
        assertEquals(1, kits.size());
        assertEquals(6 * Math.PI * 0.04, kit.patterns(), 1e-3 * kit.patterns());
        assertEquals(kit.patterns() * 0.2e-3 * CLOTH.density(), kit.used(), 1e-9);
        double length = kit.nest().orElseThrow().length();
        assertTrue(length >= 0.8, "two rows of three discs, m: " + length);
        assertEquals(length * 1.25 * 0.2e-3 * CLOTH.density(), kit.bought(), 1e-9);
        assertTrue(
                kit.left().getFirst().contains("'wide' is 1400 mm across the roll"),
                kit.left().toString());
    }

    @Test
    void roundPatternsAreNestedWithFewCornersAndLoseNoneOfTheirGap() {
        List<KitNest.Cut> cuts = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            cuts.add(cut("disc " + i, disc(0.2, 400)));
        }
        KitNest kit = KitNest.of(cuts, ShopData.shipped().rolls(), 1, 300, Nester.Listener.silent())
                .getFirst();
        var nest = kit.nest().orElseThrow();
        assertTrue(nest.pieces().getFirst().outline().corners() <= 28);
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < i; j++) {
                double[] a = centre(nest.outline(nest.placements().get(i)));
                double[] b = centre(nest.outline(nest.placements().get(j)));
                assertTrue(Math.hypot(a[0] - b[0], a[1] - b[1]) >= 0.404 - 1e-4, "true discs keep 4 mm");
            }
        }
    }

    private static double[] centre(tubwright.engine.make.nest.Outline outline) {
        double x = 0;
        double y = 0;
        double twice = 0;
        for (int i = 0, j = outline.corners() - 1; i < outline.corners(); j = i++) {
            double cross = outline.x()[j] * outline.y()[i] - outline.x()[i] * outline.y()[j];
            twice += cross;
            x += (outline.x()[i] + outline.x()[j]) * cross;
            y += (outline.y()[i] + outline.y()[j]) * cross;
        }
        return new double[] {x / (3 * twice), y / (3 * twice)};
    }

    /** Error of the usual inverse of the first-order law, as computed apart from the program. */
    @Test
    void theFirstOrderLawIsInvertedWithItsKnownError() {
        Ladder law = Ladder.of(Family.CURE, "Gutowski et al. 1994, inverse against bisection", Mark.COMPUTED);
        double[][] rows = {{0.1, -5.2}, {0.5, -6.7}, {1, -5.9}, {2, -4.0}, {5, -1.4}, {20, -0.1}};
        for (double[] row : rows) {
            double low = 0;
            double high = 100;
            for (int i = 0; i < 200; i++) {
                double t = (low + high) / 2;
                if (t - (1 - Math.exp(-t)) < row[0]) {
                    low = t;
                } else {
                    high = t;
                }
            }
            double error = 100 * (Hours.firstOrder(row[0], 1, 1) / low - 1);
            law.equal("error of the inverse at x = " + row[0] + " vτ, %", row[1], error, 0.06);
        }
    }

    @Test
    void theTwentiethTubTakesHalfTheWorkOfTheFirst() {
        double[][] rows = {{2, 0.85, 0.85}, {5, 0.85, 0.686}, {10, 0.85, 0.583}, {20, 0.85, 0.495}, {20, 0.9, 0.634}};
        for (double[] row : rows) {
            assertEquals(row[2], Hours.learned((int) row[0], row[1]), 6e-4);
        }
        Hours hours = Hours.of(
                List.of(cut("disc", disc(0.2, 50))), 3, ShopData.shipped().times());
        assertEquals(
                18,
                hours.steps().stream()
                        .filter(s -> s.name().equals("autoclave"))
                        .mapToDouble(s -> s.seconds() / 3600)
                        .sum(),
                1e-9);
        assertEquals(0.85 * hours.work(1), hours.work(2), 1e-9 * hours.work(1));
    }
}
