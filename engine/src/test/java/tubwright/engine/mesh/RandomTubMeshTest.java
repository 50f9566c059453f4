// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.mesh;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tubwright.engine.shape.TubShape;

/** The mesher does not depend on the example: seeded random shapes, openings, walls, zones, patches and pieces. */
class RandomTubMeshTest {
    private static final long FIRST_SEED = 1000;
    private static final int TUBS = 40;

    @Test
    void meshesOfRandomTubsAreSound() {
        double[] least = new double[TUBS];
        for (int i = 0; i < TUBS; i++) {
            long seed = FIRST_SEED + i;
            RandomTubs random = new RandomTubs(seed);
            TubShape tub = random.draw();
            Mesh mesh = Mesher.mesh(tub, random.layout(tub), MeshSettings.of(random.size()));
            MeshChecks.assertSound(mesh, 1, "seed " + seed);
            least[i] = MeshChecks.leastAngle(mesh);
        }
        Arrays.sort(least);
        assertTrue(least[TUBS / 2] > 18, "median of the least angles " + least[TUBS / 2]);
    }
}
