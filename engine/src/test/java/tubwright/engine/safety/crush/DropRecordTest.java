// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A measured drop on a sandwich, and a made-up one whose integrals are known. */
class DropRecordTest {
    private static double[][] measured() throws IOException {
        try (InputStream in = DropRecordTest.class.getResourceAsStream("sandwich-drop-45J.csv")) {
            List<double[]> rows = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(l -> !l.startsWith("#") && !l.startsWith("time"))
                    .map(l -> Arrays.stream(l.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
            double[][] columns = new double[5][rows.size()];
            for (int i = 0; i < rows.size(); i++) {
                for (int c = 0; c < 5; c++) {
                    columns[c][i] = rows.get(i)[c];
                }
            }
            return columns;
        }
    }

    /** The falling mass that the instrument's own speeds imply: F/m − g is how they change. */
    private static double mass(double[][] columns) {
        double force = 0;
        double change = 0;
        for (int i = 1; i < columns[0].length; i++) {
            double dt = 1e-3 * (columns[0][i] - columns[0][i - 1]);
            force += 0.5 * (columns[1][i] + columns[1][i - 1]) * dt;
            change += columns[4][i - 1] - columns[4][i] + CrushRun.GRAVITY * dt;
        }
        return force / change;
    }

    /** Public record of a nominal 45 J drop; its publisher's peak, offset of about 641 N removed, is 7.08 kN. */
    @Test
    void theMeasuredPeakIsWhatItsPublisherTaredItTo() throws IOException {
        double[][] columns = measured();
        double mass = mass(columns);
        assertEquals(10.5, mass, 0.1);
        double[] time = Arrays.stream(columns[0]).map(t -> 1e-3 * t).toArray();
        DropRecord record = DropRecord.of(time, columns[1], 10, mass, Math.sqrt(2 * 45 / mass));
        // Ten samples before the touch say 656 N where the publisher took some 641 N off: 15 N apart.
        assertEquals(7.08e3, record.peak(), 20);
        // The instrument, integrating the offset too, has it leave at 2.6 m/s: as fast as it came, nothing absorbed.
        double rebound = -record.speed()[record.speed().length - 1];
        assertTrue(rebound > 0 && rebound < 1, "rebound " + rebound);
        double back = 0.5 * mass * rebound * rebound;
        double fallen = mass * CrushRun.GRAVITY * record.travel()[record.travel().length - 1];
        assertEquals(45 + fallen - back, record.absorbed(), 0.2);
        assertTrue(record.absorbed() > 40 && record.absorbed() < 45.5, "absorbed " + record.absorbed());
    }

    /** Half a sine of force: impulse 2 P T/π; peak P. */
    @Test
    void aHalfSineTakesItsImpulse() {
        int n = 2001;
        double[] time = new double[n];
        double[] force = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = 1e-5 * i;
            force[i] = 300
                    + (time[i] > 0.002 && time[i] < 0.012 ? 5000 * Math.sin(Math.PI * (time[i] - 0.002) / 0.01) : 0);
        }
        DropRecord record = DropRecord.of(time, force, 100, 10, 3);
        assertEquals(5000, record.peak(), 1);
        double expected = 3 + CrushRun.GRAVITY * time[n - 1] - 2 * 5000 * 0.01 / Math.PI / 10;
        assertEquals(expected, record.speed()[n - 1], 1e-4);
    }

    @Test
    void aRecordThatCannotBeOneIsRefused() {
        double[] time = {0, 1, 1};
        assertThrows(IllegalArgumentException.class, () -> DropRecord.of(time, new double[3], 1, 10, 3));
        assertThrows(IllegalArgumentException.class, () -> DropRecord.of(time, new double[2], 1, 10, 3));
        assertThrows(IllegalArgumentException.class, () -> DropRecord.of(new double[] {0, 1}, new double[2], 1, -1, 3));
    }
}
