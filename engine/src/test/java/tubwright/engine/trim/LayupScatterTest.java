// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import tubwright.engine.mesh.Region;

/** Draws of layups answered without solving, against whole solutions of the same draws. */
class LayupScatterTest {
    private static final long SEED = 3;
    private static final LayupScatter.Spreads SPREADS =
            new LayupScatter.Spreads(0.05, 0.03, Math.toRadians(2), 0.1, 0.2);

    @Test
    void withoutScatterTheLaminatesAreTheDesigns() {
        try (LoadedTub tub = SmallTub.loaded()) {
            ScatteredPlies plies = ScatteredPlies.of(tub);
            for (int b = 0; b < plies.blocks(); b++) {
                double[] own = tub.laminate(b);
                double[] told = plies.stiffness(b, plies.nominal());
                for (int k = 0; k < own.length; k++) {
                    double size = Math.sqrt(
                            Math.abs(own[diagonal(k, Constitutive.ROW[k])] * own[diagonal(k, Constitutive.COLUMN[k])]));
                    assertEquals(own[k], told[k], 1e-11 * size, "block " + b + ", entry " + k);
                }
            }
        }
    }

    private static int diagonal(int entry, int strain) {
        return entry < 36 ? 7 * strain : entry < 40 ? 36 + 3 * (strain - 6) : 40;
    }

    @Test
    void theBoundsHoldWhatSolvingAnewGives() {
        try (LoadedTub tub = SmallTub.loaded()) {
            LayupScatter scatter = LayupScatter.of(tub, SPREADS);
            SplittableRandom random = new SplittableRandom(SEED);
            double widest = 0;
            for (int i = 0; i < 40; i++) {
                ScatteredPlies.Draw draw = scatter.plies().nominal();
                scatter(random, draw.stiffness(), 1, SPREADS.stiffness());
                scatter(random, draw.thickness(), 1, SPREADS.thickness());
                scatter(random, draw.cores(), 1, SPREADS.core());
                scatter(random, draw.angles(), 0, SPREADS.angle());
                double exact = tub.stiffness(SmallTub.solvedAnew(laminates(tub, scatter.plies(), draw)));
                Interval bounds = scatter.bounds(draw);
                assertTrue(bounds.contains(exact), i + ": " + bounds + " does not hold " + exact + ", seed " + SEED);
                widest = Math.max(widest, bounds.relativeWidth());
            }
            assertTrue(widest < 0.01, "as wide as " + widest);
        }
    }

    private static void scatter(SplittableRandom random, double[] values, double middle, double spread) {
        Arrays.setAll(values, _ -> middle + spread * random.nextGaussian());
    }

    private static double[][] laminates(LoadedTub tub, ScatteredPlies plies, ScatteredPlies.Draw draw) {
        List<Region> regions = tub.structure().mesh().regions();
        double[][] result = new double[regions.size()][];
        for (int r = 0; r < result.length; r++) {
            result[r] = Constitutive.matrix(
                    plies.stiffness(tub.blocks().ofRegion(r), draw),
                    regions.get(r).mirrored());
        }
        return result;
    }

    @Test
    void theSameSeedGivesTheSameDrawsAndTheSpreadIsWhatWasAskedFor() {
        try (LoadedTub tub = SmallTub.loaded()) {
            LayupScatter scatter = LayupScatter.of(tub, SPREADS);
            LayupScatter.Drawn drawn = scatter.draw(4000, SEED, () -> false);
            assertArrayEquals(drawn.low(), scatter.draw(4000, SEED, () -> false).low());
            double[] stiffness = drawn.drawn()[0];
            double mean = Arrays.stream(stiffness).average().orElseThrow();
            double variance = Arrays.stream(stiffness)
                    .map(v -> (v - mean) * (v - mean))
                    .average()
                    .orElseThrow();
            // Five standard errors of mean and deviation.
            assertEquals(1, mean, 5 * 0.05 / Math.sqrt(4000));
            assertEquals(0.05, Math.sqrt(variance), 5 * 0.05 / Math.sqrt(8000));
            for (int i = 0; i < 4000; i++) {
                assertTrue(drawn.low()[i] <= drawn.high()[i] && drawn.low()[i] > 0);
            }
        }
    }
}
