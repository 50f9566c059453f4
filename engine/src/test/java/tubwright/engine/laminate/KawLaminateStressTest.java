// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import tubwright.engine.verification.ladder.Family;
import tubwright.engine.verification.ladder.Ladder;
import tubwright.engine.verification.ladder.Mark;

/**
 * Strains and stresses of [0/30/−45], Nx = Ny = 1000 N/m: Kaw 2006, example 4.3, and of [0/90] cooled by 75 K, example
 * 4.5. Printed values from memory, reproduced by an independent computation. Kaw's z points down and his first ply is on
 * top; listed here in reverse, his z is ours and his "top" is our inner surface.
 */
class KawLaminateStressTest {
    private static final Ladder KAW = Ladder.of(Family.LAMINATES, "Kaw 2006, ex. 4.3", Mark.MEMORY_CONFIRMED);
    private static final Ladder COLD = Ladder.of(Family.CLIMATE, "Kaw 2006, ex. 4.5", Mark.MEMORY_CONFIRMED);
    private static final Ladder DANIEL =
            Ladder.of(Family.CLIMATE, "AS4/3501-6 of Daniel and Ishai, independent program", Mark.COMPUTED);

    private final LaminateResponse response = LaminateResponse.underResultants(
            TextbookPlies.stack(TextbookPlies.T300_5208, 5e-3, -45, 30, 0),
            new double[] {1000, 1000, 0, 0, 0, 0},
            Climate.NONE);

    @Test
    void strainsAndCurvaturesAreAsPrinted() {
        assertPrinted(
                "ε and κ under Nx = Ny",
                response.strains(),
                3.123e-7,
                3.492e-6,
                -7.598e-7,
                2.971e-5,
                -3.285e-4,
                4.101e-4);
    }

    @Test
    void globalStressesAreAsPrinted() {
        PlyState zero = response.layers().get(2);
        PlyState thirty = response.layers().get(1);
        PlyState minus = response.layers().get(0);
        assertPrinted("0° inner", zero.inner().stress(), 3.351e4, 6.188e4, -2.750e4);
        assertPrinted("0° middle", mean(zero), 4.464e4, 5.359e4, -2.015e4);
        assertPrinted("30° inner", thirty.inner().stress(), 6.930e4, 7.391e4, 3.381e4);
        assertPrinted("30° middle", mean(thirty), 1.063e5, 7.747e4, 5.903e4);
        assertPrinted("30° outer", thirty.outer().stress(), 1.434e5, 8.102e4, 8.426e4);
        assertPrinted("−45° inner", minus.inner().stress(), 1.235e5, 1.563e5, -1.187e5);
        assertPrinted("−45° outer", minus.outer().stress(), -2.547e4, -1.840e4, 4.091e4);
    }

    @Test
    void localStressesAreAsPrinted() {
        assertPrinted("30° inner, ply axes", response.layers().get(1).inner().plyStress(), 9.973e4, 4.348e4, 1.890e4);
        assertPrinted("−45° inner, ply axes", response.layers().get(0).inner().plyStress(), 2.586e5, 2.123e4, -1.638e4);
    }

    @Test
    void strainsGivenBackMakeTheSameResultants() {
        LaminateResponse again = LaminateResponse.underStrains(
                TextbookPlies.stack(TextbookPlies.T300_5208, 5e-3, -45, 30, 0), response.strains(), Climate.NONE);
        assertEquals(1000, again.resultants()[0], 1e-8);
        assertEquals(1000, again.resultants()[1], 1e-8);
        assertEquals(0, again.resultants()[5], 1e-9);
    }

    @Test
    void theUnsymmetricCrossPlyCurlsOnCoolingAsPrinted() {
        Laminate crossPly = TextbookPlies.stack(TextbookPlies.T300_5208, 5e-3, 90, 0);
        ShellStiffness stiffness = crossPly.stiffness();
        assertPrinted(
                "[0/90]: A11, A22",
                new double[] {stiffness.membrane()[0], stiffness.membrane()[4]},
                9.608e8,
                9.608e8);
        assertPrinted(
                "[0/90]: B11, B22",
                new double[] {stiffness.coupling()[0], stiffness.coupling()[4]},
                -2.143e6,
                2.143e6);
        assertPrinted(
                "[0/90]: D11, D12",
                new double[] {stiffness.bending()[0], stiffness.bending()[1]},
                8.007e3,
                2.414e2);

        FreeExpansion free = FreeExpansion.of(crossPly, new Climate(-75, 0));
        assertPrinted("[0/90] cooled: thermal forces", free.forces(), -1.131e5, -1.131e5, 0);
        assertPrinted("[0/90] cooled: thermal moments", free.moments(), -1.538e2, 1.538e2, 0);
        assertPrinted("[0/90] cooled: strains", free.strains(), -3.907e-4, -3.907e-4, 0);
        assertPrinted("[0/90] cooled: curvatures", free.curvatures(), -1.2765e-1, 1.2765e-1, 0);

        LaminateResponse cooled = LaminateResponse.underResultants(crossPly, new double[6], new Climate(-75, 0));
        PlyState zero = cooled.layers().get(1);
        assertPrinted("[0/90] cooled: 0° inner", zero.inner().plyStress(), 4.718e7, 7.53e6, 0);
        assertPrinted("[0/90] cooled: 0° outer", zero.outer().plyStress(), -6.701e7, 1.229e7, 0);
    }

    /**
     * Cooled by 150 K and wetted by 0.5 %, AS4/3501-6 of Daniel and Ishai (data from memory; results computed apart):
     * every balanced symmetric laminate of equal shares has the same residual stresses.
     */
    @Test
    void residualStressesOfQuasiIsotropicLaminatesAreThoseOfCrossPlies() {
        double[][] halves = {{0, 90}, {0, 45, -45, 90}, {45, -45}, {45, 0, -45, 90}};
        for (double[] half : halves) {
            Laminate laminate = TextbookPlies.symmetric(TextbookPlies.AS4_3501_6, 1.25e-4, half);
            FreeExpansion cooled = FreeExpansion.of(laminate, new Climate(-150, 0));
            String name = java.util.Arrays.toString(half) + "s, ";
            DANIEL.equal(name + "strain after 150 K of cooling", -2.011e-4, cooled.strains()[0], 0.5e-7);
            assertEquals(-2.011e-4, cooled.strains()[1], 0.5e-7);
            FreeExpansion wetted = FreeExpansion.of(laminate, new Climate(0, 0.005));
            DANIEL.equal(name + "strain after taking up 0.5 % of water", 1.263e-4, wetted.strains()[0], 0.5e-7);
            for (PlyState state : LaminateResponse.underResultants(laminate, new double[6], new Climate(-150, 0))
                    .layers()) {
                assertEquals(-38.91e6, state.outer().plyStress()[0], 0.005e6);
                assertEquals(38.91e6, state.outer().plyStress()[1], 0.005e6);
            }
            for (PlyState state : LaminateResponse.underResultants(laminate, new double[6], new Climate(0, 0.005))
                    .layers()) {
                assertEquals(8.83e6, state.inner().plyStress()[0], 0.005e6);
                assertEquals(-8.83e6, state.inner().plyStress()[1], 0.005e6);
            }
        }
    }

    private static double[] mean(PlyState state) {
        double[] mean = new double[3];
        for (int k = 0; k < 3; k++) {
            mean[k] = 0.5 * (state.outer().stress()[k] + state.inner().stress()[k]);
        }
        return mean;
    }

    private static void assertPrinted(String name, double[] values, double... printed) {
        double largest = 0;
        for (double p : printed) {
            largest = Math.max(largest, Math.abs(p));
        }
        for (int i = 0; i < printed.length; i++) {
            double size = printed[i] == 0 ? 1e-4 * largest : Math.abs(printed[i]);
            double unit = Math.pow(10, Math.floor(Math.log10(size)) - (printed[i] == 7.53e6 ? 2 : 3));
            (name.contains("[0/90]") ? COLD : KAW)
                    .equal(name + ", component " + (i + 1), printed[i], values[i], 0.501 * unit);
        }
    }
}
