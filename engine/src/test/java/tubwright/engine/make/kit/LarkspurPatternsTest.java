// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.kit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.Design;
import tubwright.engine.make.flat.Outlines;
import tubwright.engine.make.lay.DrapedPly;
import tubwright.engine.make.lay.PlyLayer;
import tubwright.engine.structure.Tub;
import tubwright.numerics.solver.Solvers;

/** The example's plies, laid as its pack lays them: the cockpit is an opening that cloth comes round from both sides. */
class LarkspurPatternsTest {
    private static final double ROLL = 1.25;

    @Test
    void everyPlyCanBeCutFromItsRollWholeOrInParts() {
        Tub tub = Design.read(Path.of("../examples/larkspur")).asDesigned().tub();
        List<DrapedPly> plies = PlyLayer.lay(tub, PlyLayer.USUAL_SIZE, Solvers.best(), (ply, done, all) -> {})
                .plies();
        Splices splices = Splices.usual(ROLL);
        int parts = 0;
        for (DrapedPly ply : plies) {
            if (ply.flat().outlines().isEmpty()) {
                continue;
            }
            List<CutPiece> pieces = splices.of(ply);
            parts += pieces.size();
            for (CutPiece piece : pieces) {
                String name = piece.pattern().name();
                assertFalse(piece.pattern().overlapsItself(), name);
                assertTrue(piece.pattern().box()[3] - piece.pattern().box()[1] <= ROLL + 1e-9, name);
            }
            double cut = pieces.stream().mapToDouble(p -> area(p)).sum();
            // Overlaps add; cut-outs, as the outlines have them, are off on both sides.
            assertTrue(cut > 0.98 * area(pieces.getFirst(), ply), ply.ply().name());
        }
        assertTrue(parts > plies.size(), "some are spliced");
        List<String> torn = plies.stream()
                .filter(p -> p.advice().stream().anyMatch(a -> a.contains("does not meet itself")))
                .map(p -> p.ply().piece())
                .distinct()
                .toList();
        assertTrue(torn.contains("upper shell"), torn.toString());
        assertEquals(
                List.of(), torn.stream().filter(p -> p.contains("bulkhead")).toList());
    }

    private static double area(CutPiece piece) {
        return net(piece.pattern().outlines());
    }

    private static double area(CutPiece first, DrapedPly ply) {
        return first.parts() == 1 ? area(first) : net(ply.flat().outlines());
    }

    private static double net(List<double[]> outlines) {
        double sum = 0;
        for (int i = 0; i < outlines.size(); i++) {
            sum += (i == 0 ? 1 : -1) * Math.abs(Outlines.area(outlines.get(i)));
        }
        return sum;
    }
}
