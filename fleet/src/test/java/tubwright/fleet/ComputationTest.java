// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.Test;
import tubwright.engine.design.text.DesignError;

/** A point becomes the same row wherever it is computed, and what is wrong with one design stays with it. */
class ComputationTest {
    private static final Job JOB = Tubes.job("torsional stiffness", "mass", "width at 1000 mm", "enclosed area at 1 m");
    private static final Blueprint BLUEPRINT = new Blueprint(JOB);

    @Test
    void rowsComeBackFromTheirLinesToTheBit() {
        Point point = BLUEPRINT.point(Tubes.width(400));
        Row here = new Computation(JOB).row(point, () -> false);
        assertTrue(here.ok(), here::toString);
        Row there = Row.of(new Computation(Job.of(JOB.line()))
                .row(Point.of(point.line()), () -> false)
                .line());
        assertEquals(here, there);
        assertEquals(0.4, here.value("width at 1000 mm"), 1e-12);
        assertEquals(0.4 * 0.5, here.value("enclosed area at 1 m"), 1e-12);
    }

    @Test
    void oneWorkerAndThreeGiveTheSameRows() {
        List<Point> points = new ArrayList<>();
        for (int w = 300; w <= 500; w += 50) {
            points.add(BLUEPRINT.point(Tubes.width(w)));
        }
        assertEquals(rows(new LocalCores(1), points), rows(new LocalCores(3), points));
    }

    private static Map<String, String> rows(StudyRunner runner, List<Point> points) {
        Map<String, String> rows = new TreeMap<>();
        runner.run(JOB, points, row -> rows.put(row.key(), row.line()));
        return rows;
    }

    @Test
    void aKeyTellsDesignsApartAndNothingElse() {
        String key = BLUEPRINT.point(List.of()).key();
        String commented = Tubes.BOX.replace("mesh: {size: 100 mm}", "# fine enough\nmesh:\n  size: '100 mm'");
        Job same = new Job(commented, "other.yaml", JOB.variant(), List.of("mass"), 0, "test");
        assertEquals(key, new Blueprint(same).point(List.of()).key());
        assertEquals(key, BLUEPRINT.point(Tubes.gauge("2 mm")).key());
        assertNotEquals(key, BLUEPRINT.point(Tubes.gauge("2.1 mm")).key());
        Job finer = new Job(Tubes.BOX, "box.yaml", JOB.variant(), JOB.readings(), 0.05, "test");
        assertNotEquals(key, new Blueprint(finer).point(List.of()).key());
        Job later = new Job(Tubes.BOX, "box.yaml", JOB.variant(), JOB.readings(), 0, "test 2");
        assertNotEquals(key, new Blueprint(later).point(List.of()).key());
    }

    @Test
    void theVariantIsComputedAsIfItWereTheDesign() {
        Job thick = new Job(Tubes.BOX, "box.yaml", "thick", JOB.readings(), 0, "test");
        Blueprint variant = new Blueprint(thick);
        assertEquals(
                BLUEPRINT.point(Tubes.gauge("4 mm")).key(),
                variant.point(List.of()).key());
    }

    @Test
    void anImpossibleTubIsARowWithItsReason() {
        Row row = new Computation(JOB).row(BLUEPRINT.point(Tubes.width(-40)), () -> false);
        assertFalse(row.ok());
        assertTrue(row.reason().orElseThrow().contains("box.yaml"), row::toString);
        assertEquals(row, Row.of(row.line()));
    }

    @Test
    void aPatchOnNothingSaysWhatWasMeant() {
        DesignError error =
                assertThrows(DesignError.class, () -> BLUEPRINT.value(List.of("laminates", "skim", "thickness")));
        assertTrue(error.getMessage().contains("did you mean \"skin\""), error::getMessage);
    }

    @Test
    void aReadingOfNothingSaysWhatWasMeant() {
        IllegalArgumentException error =
                assertThrows(IllegalArgumentException.class, () -> Reading.of("torsional stifness"));
        assertTrue(error.getMessage().contains("did you mean \"torsional stiffness\""), error::getMessage);
        assertThrows(IllegalArgumentException.class, () -> Reading.of("width"));
        assertThrows(IllegalArgumentException.class, () -> Reading.of("mass at 3 mm"));
        assertThrows(IllegalArgumentException.class, () -> Reading.of("width at 3 kg"));
    }

    @Test
    void itEndsWhenToldTo() {
        Point point = BLUEPRINT.point(List.of());
        assertThrows(CancellationException.class, () -> new Computation(JOB).row(point, () -> true));
    }
}
