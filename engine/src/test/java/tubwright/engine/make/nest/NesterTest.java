// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.nest;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NesterTest {
    private static Outline rectangle(double length, double width) {
        return Outline.of(0, 0, length, 0, length, width, 0, width);
    }

    private static Nest search(List<Piece> pieces, Roll roll, long moves) {
        return Nester.search(pieces, roll, 7, moves, Nester.Listener.silent());
    }

    /** Areas and piece counts are those tabulated with the benchmark set (Gardeyn et al. 2025, data). */
    @ParameterizedTest
    @CsvSource({
        "albano, 24, 42656785",
        "blaz1, 28, 324",
        "dagli, 30, 3034.5",
        "fu, 12, 1083",
        "jakobs1, 25, 392",
        "marques, 24, 7194",
        "shapes0, 43, 1596",
        "shapes1, 43, 1596",
        "shirts, 99, 2160",
        "trousers, 64, 17206.5"
    })
    void theOpenInstancesAreWhole(String name, int copies, double area) {
        OpenInstances.Instance instance = OpenInstances.read(name);
        assertEquals(copies, instance.copies());
        assertEquals(area, instance.area(), 1e-6 * area);
    }

    @ParameterizedTest
    @CsvSource({"fu", "jakobs1", "shapes0", "shapes1", "marques", "dagli", "blaz1", "albano"})
    void nothingOverlapsAndNothingLeavesTheRoll(String name) {
        OpenInstances.Instance instance = OpenInstances.read(name);
        for (Nest nest : List.of(
                Nester.bottomLeft(instance.pieces(), instance.roll()),
                search(instance.pieces(), instance.roll(), 1500))) {
            assertEquals(instance.copies(), nest.placements().size());
            double least = instance.pieces().stream()
                    .mapToDouble(p -> p.outline().area())
                    .min()
                    .orElseThrow();
            assertEquals(0, OpenInstances.worstOverlap(nest), 1e-6 * least, name);
            for (Nest.Placement placement : nest.placements()) {
                Outline outline = nest.outline(placement);
                for (int i = 0; i < outline.corners(); i++) {
                    assertTrue(outline.x()[i] >= -1e-9 && outline.x()[i] <= nest.length() * (1 + 1e-9));
                    assertTrue(outline.y()[i] >= -1e-9
                            && outline.y()[i] <= instance.roll().width() * (1 + 1e-9));
                }
            }
            assertTrue(nest.length() >= instance.area() / instance.roll().width(), "not shorter than the area");
        }
    }

    @ParameterizedTest
    @CsvSource({"fu, 4000, 8", "shapes1, 4000, 3", "albano, 4000, 7"})
    void theSearchBeatsPlainBottomLeftByPoints(String name, long moves, double points) {
        OpenInstances.Instance instance = OpenInstances.read(name);
        double plain = Nester.bottomLeft(instance.pieces(), instance.roll()).utilisation();
        double found = search(instance.pieces(), instance.roll(), moves).utilisation();
        assertTrue(100 * (found - plain) >= points, name + ": " + plain + " to " + found);
    }

    @Test
    void sheetsThatTileTheRollLeaveNoWaste() {
        List<Piece> pieces = List.of(
                new Piece("door", rectangle(0.6, 0.4), 2, Piece.Turns.FIXED),
                new Piece("strip", rectangle(0.6, 0.2), 2, Piece.Turns.FIXED),
                new Piece("panel", rectangle(0.3, 0.6), 4, Piece.Turns.FIXED));
        Nest nest = search(pieces, new Roll(1.2, 0), 5000);
        assertEquals(1.2, nest.length(), 1e-9);
        assertEquals(1, nest.utilisation(), 1e-9);
        assertEquals(0, nest.waste(), 1e-9);
        assertEquals(0, OpenInstances.worstOverlap(nest), 1e-9);
    }

    @Test
    void aPieceWithADirectionIsNotTurnedAndNoneIsEverMirrored() {
        Outline hook = Outline.of(0, 0, 0.5, 0, 0.5, 0.1, 0.1, 0.1, 0.1, 0.3, 0, 0.3);
        List<Piece> fixed = List.of(new Piece("hook", hook, 6, Piece.Turns.FIXED));
        search(fixed, new Roll(0.7, 0), 500).placements().forEach(p -> assertEquals(0, p.quarters()));
        List<Piece> half = List.of(new Piece("hook", hook, 6, Piece.Turns.HALF));
        Nest turned = search(half, new Roll(0.7, 0), 500);
        turned.placements().forEach(p -> assertTrue(p.quarters() == 0 || p.quarters() == 2));
        for (Nest.Placement p : turned.placements()) {
            Outline back = turned.outline(p).turned(4 - p.quarters()).atOrigin();
            assertEquals(0.5, cornerFarFromBend(back), 1e-9, "the long leg lies along the roll, not mirrored");
        }
    }

    /** x of the corner at the end of the hook's foot, which a mirrored hook would have at nought. */
    private static double cornerFarFromBend(Outline hook) {
        double most = 0;
        for (int i = 0; i < hook.corners(); i++) {
            most = hook.y()[i] < 0.05 ? Math.max(most, hook.x()[i]) : most;
        }
        double highest = 0;
        for (int i = 0; i < hook.corners(); i++) {
            highest = hook.y()[i] > 0.25 ? Math.max(highest, hook.x()[i]) : highest;
        }
        assertEquals(0.1, highest, 1e-9);
        return most;
    }

    @Test
    void theKnifeKeepsItsGapToEveryNeighbour() {
        List<Piece> pieces = List.of(
                new Piece("kite", Outline.of(0, 0, 0.2, -0.1, 0.5, 0, 0.2, 0.1), 5, Piece.Turns.HALF),
                new Piece(
                        "angle", Outline.of(0, 0, 0.3, 0, 0.3, 0.1, 0.1, 0.1, 0.1, 0.3, 0, 0.3), 5, Piece.Turns.HALF));
        Nest nest = search(pieces, new Roll(0.8, 0.004), 3000);
        double distance = OpenInstances.leastDistance(nest);
        assertTrue(distance >= 0.004 - 1e-8, "least distance " + distance + " m");
        assertTrue(distance < 0.02, "and it is used: " + distance + " m");
    }

    @Test
    void theSameSeedAndMovesGiveTheSameNest() {
        OpenInstances.Instance fu = OpenInstances.read("fu");
        assertEquals(
                search(fu.pieces(), fu.roll(), 800).placements(),
                search(fu.pieces(), fu.roll(), 800).placements());
    }

    @Test
    void aSearchThatIsStoppedGivesTheBestSoFarAndSaysHowFarItCame() {
        OpenInstances.Instance fu = OpenInstances.read("fu");
        List<Double> lengths = new ArrayList<>();
        Nest nest = Nester.search(fu.pieces(), fu.roll(), 3, Long.MAX_VALUE, new Nester.Listener() {
            @Override
            public void shorter(double length, double utilisation, long moves, long most) {
                lengths.add(length);
                assertEquals(fu.area() / length / fu.roll().width(), utilisation, 1e-9);
            }

            @Override
            public boolean cancelled() {
                return lengths.size() > 4;
            }
        });
        assertEquals(lengths.getLast(), nest.length(), 1e-12);
        for (int i = 1; i < lengths.size(); i++) {
            assertTrue(lengths.get(i) < lengths.get(i - 1));
        }
    }

    @Test
    void aPatternWiderThanTheRollIsNamed() {
        List<Piece> pieces = List.of(new Piece("floor ply 3", rectangle(1, 1.3), 1, Piece.Turns.HALF));
        NestException fault = assertThrows(NestException.class, () -> search(pieces, new Roll(1.27, 0), 10));
        assertTrue(fault.getMessage().contains("'floor ply 3' is 1300 mm across the roll, which is 1270 mm wide"));
        List<Piece> film = List.of(new Piece("film", rectangle(1, 1.3), 1, Piece.Turns.QUARTERS));
        assertEquals(1.3, search(film, new Roll(1.27, 0), 10).length(), 1e-12, "film may lie across");
    }

    @Test
    void aPieceLaidTheLongWayIsTurnedAndTheSearchEnds() {
        Outline plank = rectangle(1, 0.9);
        List<Piece> film = List.of(new Piece("film", plank, 1, Piece.Turns.QUARTERS));
        assertEquals(0.9, search(film, new Roll(1.1, 0.004), 50).length(), 1e-9);
        Outline wedge = Outline.of(0, 0, 1, 0, 0, 0.9);
        List<Piece> two = List.of(new Piece("wedge", wedge, 2, Piece.Turns.QUARTERS));
        assertTrue(search(two, new Roll(1.1, 0.004), 200).length() < 1.2);
    }

    @Test
    void anOutlineThatCrossesItselfIsRefused() {
        assertThrows(NestException.class, () -> Outline.of(0, 0, 1, 1, 1, 0, 0, 1.5));
        assertThrows(NestException.class, () -> Outline.of(0, 0, 1, 0, 2, 0));
    }

    @Test
    void convexPartsTileTheirOutline() {
        SplittableRandom random = new SplittableRandom(11);
        for (int trial = 0; trial < 100; trial++) {
            int n = 4 + random.nextInt(20);
            double[] corners = new double[2 * n];
            for (int i = 0; i < n; i++) {
                double radius = 0.2 + random.nextDouble();
                corners[2 * i] = radius * Math.cos(2 * Math.PI * i / n);
                corners[2 * i + 1] = radius * Math.sin(2 * Math.PI * i / n);
            }
            Outline star = Outline.of(corners);
            double sum = 0;
            for (double[] part : ConvexParts.of(star)) {
                sum += Outline.of(part).area();
            }
            assertEquals(star.area(), sum, 1e-9, "seed 11, trial " + trial);
        }
    }
}
