// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.verification;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tubwright.engine.laminate.Invariants;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminationParameters;
import tubwright.engine.laminate.Layer;
import tubwright.engine.material.Elasticity;
import tubwright.engine.material.Material;
import tubwright.engine.material.MaterialLibrary;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/** The lightest closed tube for a given twist, and the most shear stiffness a stack can have: optima in closed form. */
class LightestTubeTest {
    private static final Ladder BREDT = Ladder.of(
            Family.WEIGHT_BACK, "Bredt 1896: plies n = TLP/(4A²φ t Q66(45°)), all of them at ±45°", Mark.EXACT);
    private static final Ladder MIKI = Ladder.of(
            Family.WEIGHT_BACK,
            "Miki 1982 (from memory), V3 ≥ 2V1² − 1; Tsai and Pagano 1968, A66/h = U5 − U3 V3",
            Mark.EXACT);

    /** Cloth, N and mm. */
    private static final double E = 60e3;

    private static final double NU = .05;
    private static final double G = 4e3;
    private static final double PLY = .2;
    private static final double RADIUS = 40;
    private static final double LENGTH = 800;
    private static final int FACETS = 16;

    @Test
    void theLightestTubeHasItsPliesAt45DegreesAndAsManyAsBredtSays() {
        double area = .5 * FACETS * RADIUS * RADIUS * Math.sin(2 * Math.PI / FACETS);
        double perimeter = 2 * FACETS * RADIUS * Math.sin(Math.PI / FACETS);
        // Cloth turned by 45°: Q66 = (Q11 − Q12)/2 with Q11 = E/(1 − ν²), that is E/(2(1 + ν)).
        double turned = E / (2 * (1 + NU));
        for (double plies : new double[] {2.6, 4.5, 6.4}) {
            // The twist per couple that so many plies, taken as a number with fractions, would have.
            double limit = LENGTH * perimeter / (4 * area * area * PLY * turned * plies);
            int lightest = 0;
            double turnedShare = Double.NaN;
            double least = Double.POSITIVE_INFINITY;
            while (least > limit) {
                lightest++;
                for (int straight = 0; straight <= lightest; straight++) {
                    double twist = twist(lightest - straight, straight);
                    if (twist < least) {
                        least = twist;
                        turnedShare = (lightest - straight) / (double) lightest;
                    }
                }
            }
            BREDT.within(
                    0, "Plies of the lightest tube, " + plies + " by Bredt", "16 facets", Math.ceil(plies), lightest);
            BREDT.within(0, "Their share at 45°, " + plies + " plies by Bredt", "16 facets", 1, turnedShare);
        }
    }

    private final Map<List<Integer>, Double> twists = new HashMap<>();

    private double twist(int turned, int straight) {
        return twists.computeIfAbsent(List.of(turned, straight), _ -> solved(turned, straight));
    }

    private static double solved(int turned, int straight) {
        double[] angles = new double[turned + straight];
        Arrays.fill(angles, 0, turned, 45);
        double[] laminate = Laminates.stack(E, E, NU, G, G, PLY, 0, angles);
        return Tubes.circle(RADIUS, FACETS, LENGTH, 2 * FACETS, laminate, true);
    }

    @Test
    void noStackOfOneTapeShearsLessThanItsLaminationParametersAllow() {
        Material tape = MaterialLibrary.shipped().all().stream()
                .filter(m -> m.name().equals("ud-as4-3502"))
                .findFirst()
                .orElseThrow();
        Invariants u = Invariants.of(elasticity(tape));
        long seed = 1982;
        Random random = new Random(seed);
        double least = u.u5() - u.u3();
        double most = u.u5() + u.u3();
        for (int trial = 0; trial < 2000; trial++) {
            Layer[] layers = new Layer[1 + random.nextInt(8)];
            for (int i = 0; i < layers.length; i++) {
                layers[i] = Layer.ofDegrees(tape, 180 * random.nextDouble() - 90);
            }
            Laminate laminate = Laminate.of(layers);
            double shear = laminate.stiffness().matrix()[8 * 2 + 2] / laminate.thickness();
            double[] v = LaminationParameters.of(laminate).membrane();
            double bound = u.u5() - u.u3() * (2 * v[0] * v[0] - 1);
            String which = "seed " + seed + ", trial " + trial;
            assertTrue(shear <= bound * (1 + 1e-12) && shear >= least * (1 - 1e-12) && shear <= most, which);
        }
        for (double degrees : new double[] {15, 30, 45, 60}) {
            Laminate angle = Laminate.of(Layer.ofDegrees(tape, degrees), Layer.ofDegrees(tape, -degrees));
            double v1 = Math.cos(2 * Math.toRadians(degrees));
            MIKI.within(
                    1e-12,
                    "Most A66/h at V1 = cos " + Math.round(2 * degrees) + "° is that of ±" + Math.round(degrees)
                            + "° (Pa)",
                    "",
                    u.u5() - u.u3() * (2 * v1 * v1 - 1),
                    angle.stiffness().matrix()[8 * 2 + 2] / angle.thickness());
        }
        for (double share : new double[] {0, .25, .5, .75, 1}) {
            Layer[] layers = new Layer[8];
            for (int i = 0; i < 8; i++) {
                layers[i] = Layer.ofDegrees(tape, i < 8 * share ? (i % 2 == 0 ? 45 : -45) : 0);
            }
            Laminate laminate = Laminate.of(layers);
            double shear = laminate.stiffness().matrix()[8 * 2 + 2] / laminate.thickness();
            MIKI.equal(
                    "Share of ±45° among 0° from A66/h, (A66/h − U5 + U3)/2U3, share " + share,
                    share,
                    (shear - u.u5() + u.u3()) / (2 * u.u3()),
                    1e-12);
        }
    }

    private static Elasticity elasticity(Material material) {
        return material.elasticity();
    }
}
