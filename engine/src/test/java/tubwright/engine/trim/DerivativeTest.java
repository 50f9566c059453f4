// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Region;

/** Derivatives of the compliance by any stiffness of any laminate, against differences of whole solutions. */
class DerivativeTest {
    /** Central differences of sixth order (Fornberg 1988). */
    private static final double[] WEIGHTS = {3.0 / 4, -3.0 / 20, 1.0 / 60};

    @Test
    void theGramianGivesTheSlopeOfTheComplianceInAnyDirection() {
        long seed = 20_261_125;
        Random random = new Random(seed);
        try (LoadedTub tub = SmallTub.loaded()) {
            FirstOrder firstOrder = new FirstOrder(tub);
            int count = tub.blocks().all().size();
            for (int trial = 0; trial < 3; trial++) {
                // One 8 × 8 direction per block, scaled like the laminate itself so that no entry drowns.
                double[][] direction = new double[count][64];
                for (int b = 0; b < count; b++) {
                    double[] nominal = matrix(tub, b);
                    for (int i = 0; i < 8; i++) {
                        for (int j = 0; j <= i; j++) {
                            boolean couples = i < 6 == j < 6;
                            double size = Math.sqrt(nominal[9 * i] * nominal[9 * j]);
                            double value = couples ? size * (random.nextDouble() - 0.3) : 0;
                            direction[b][8 * i + j] = value;
                            direction[b][8 * j + i] = value;
                        }
                    }
                }
                double slope = 0;
                for (int k = 0; k < WEIGHTS.length; k++) {
                    double h = 2e-3 * (k + 1);
                    slope += WEIGHTS[k] * (moved(tub, direction, h) - moved(tub, direction, -h)) / 2e-3;
                }
                TreeMap<Integer, double[]> changed = new TreeMap<>();
                for (int b = 0; b < count; b++) {
                    changed.put(b, Constitutive.plus(tub.laminate(b), 1e-3, Constitutive.of(direction[b])));
                }
                double linear =
                        (firstOrder.bounds(new Change(changed, new TreeMap<>())).low() - tub.compliance()) / 1e-3;
                assertEquals(1, linear / slope, 1e-6, "seed " + seed + ", trial " + trial);
            }
        }
    }

    private static double moved(LoadedTub tub, double[][] direction, double h) {
        var regions = SmallTub.structure().mesh().regions();
        double[][] laminates = new double[regions.size()][];
        for (int r = 0; r < laminates.length; r++) {
            Region region = regions.get(r);
            int b = 0;
            while (!tub.blocks().all().get(b).zone().equals(region.zone())
                    || !tub.blocks().all().get(b).patches().equals(region.patches())) {
                b++;
            }
            laminates[r] = SmallTub.structure().laminate(r).clone();
            for (int i = 0; i < 64; i++) {
                boolean odd = odd(i / 8) != odd(i % 8);
                laminates[r][i] += h * (region.mirrored() && odd ? -1 : 1) * direction[b][i];
            }
        }
        return SmallTub.solvedAnew(laminates);
    }

    /** Strains that change sign across the car. */
    private static boolean odd(int strain) {
        return strain == 2 || strain == 5 || strain == 7;
    }

    private static double[] matrix(LoadedTub tub, int block) {
        return tub.nominal().laminate(tub.blocks().all().get(block)).stiffness().matrix();
    }
}
