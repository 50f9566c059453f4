// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.laminate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tubwright.engine.laminate.StrengthCriterion.HASHIN;
import static tubwright.engine.laminate.StrengthCriterion.MAXIMUM_STRESS;
import static tubwright.engine.laminate.StrengthCriterion.MODIFIED_TSAI_HILL;
import static tubwright.engine.laminate.StrengthCriterion.PUCK;
import static tubwright.engine.laminate.StrengthCriterion.TSAI_WU;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tubwright.engine.material.Strengths;

class StrengthCriterionTest {
    private static final double MPA = 1e6;

    /** Tsai and Hahn 1980, Kaw 2006 table 2.1 (from memory). */
    private static final Strengths T300_5208 = new Strengths(1500e6, 1500e6, 40e6, 246e6, 68e6);

    /** First world-wide failure exercise (from memory). */
    private static final Strengths AS4_3501_6 = new Strengths(1950e6, 1480e6, 48e6, 200e6, 79e6);

    /** Kaw 2006 examples 2.17 to 2.20: 60° ply, σx = 2S, σy = −3S, τxy = 4S (from memory, reproduced by computation). */
    @Test
    void kawsSixtyDegreePlyFailsAtHisStresses() {
        double[] local = PlaneStress.stressInLayerAxes(new double[] {2, -3, 4}, Math.toRadians(60));
        assertEquals(1.7141, local[0], 5e-5);
        assertEquals(-2.7141, local[1], 5e-5);
        assertEquals(-4.1651, local[2], 5e-5);
        assertEquals(16.33, MAXIMUM_STRESS.exposure(local, T300_5208).reserveFactor() / MPA, 0.005);
        assertEquals(16.06, MODIFIED_TSAI_HILL.exposure(local, T300_5208).reserveFactor() / MPA, 0.005);
        assertEquals(22.39, TSAI_WU.exposure(local, T300_5208).reserveFactor() / MPA, 0.005);
        assertEquals(16.07, HASHIN.exposure(local, T300_5208).reserveFactor() / MPA, 0.005);
        assertEquals(
                FailureMode.SHEAR, MAXIMUM_STRESS.exposure(local, T300_5208).mode());
    }

    /** Off-axis strengths of T300/5208, MPa, computed apart; a minus sign means compression. */
    @ParameterizedTest
    @CsvSource({
        "10, 1, 397.6, 370.2, 343.5, 380.9, 364.9",
        "30, 1, 157.0, 112.0, 101.2, 112.1, 106.8",
        "45, 1, 80.0, 69.0, 64.5, 69.0, 67.0",
        "60, 1, 53.3, 50.5, 49.0, 50.5, 49.9",
        "10, -1, 397.6, 385.1, 438.6, 397.2, 419.2",
        "30, -1, 157.0, 154.8, 215.3, 155.1, 186.6",
        "45, -1, 136.0, 131.1, 198.9, 131.1, 182.7",
        "60, -1, 157.0, 141.7, 211.7, 141.6, 209.7",
    })
    void offAxisStrengthsAreThoseComputedApart(
            double degrees, int sign, double maximum, double hill, double wu, double hashin, double puck) {
        double[] local = PlaneStress.stressInLayerAxes(new double[] {sign * MPA, 0, 0}, Math.toRadians(degrees));
        assertEquals(maximum, MAXIMUM_STRESS.exposure(local, T300_5208).reserveFactor(), 0.0501);
        assertEquals(hill, MODIFIED_TSAI_HILL.exposure(local, T300_5208).reserveFactor(), 0.0501);
        assertEquals(wu, TSAI_WU.exposure(local, T300_5208).reserveFactor(), 0.0501);
        assertEquals(hashin, HASHIN.exposure(local, T300_5208).reserveFactor(), 0.0501);
        assertEquals(puck, PUCK.exposure(local, T300_5208).reserveFactor(), 0.0501);
    }

    /** Inter-fibre exposure at (σ2, τ12) in MPa, AS4/3501-6, computed apart. */
    @ParameterizedTest
    @CsvSource({
        "20, 40, .6919, MATRIX_TENSION",
        "-30, 90, 1.0310, SHEAR",
        "-60, 80, .8101, SHEAR",
        "-100, 60, .6724, MATRIX_COMPRESSION",
        "-100, 100, .9788, MATRIX_COMPRESSION"
    })
    void pucksExposureIsThatComputedApart(double s2, double tau, double exposure, FailureMode mode) {
        var result = PUCK.exposure(new double[] {0, s2 * MPA, tau * MPA}, AS4_3501_6);
        assertEquals(exposure, result.value(), 5.1e-5);
        assertEquals(mode, result.mode());
    }

    /**
     * [0/90/0] of 5 mm plies, T300/5208, pulled along x: the 90° ply fails at 485.1 MPa by Tsai and Wu (Kaw 2006, from
     * memory, reproduced), 487.3 MPa by maximum stress and, cooled by 75 K, at 285.3 MPa (computed apart).
     */
    @Test
    void theCrossPlyFailsFirstInItsNinetyAtTheKnownStress() {
        Laminate laminate = TextbookPlies.stack(TextbookPlies.T300_5208, 5e-3, 0, 90, 0);
        double h = laminate.thickness();
        double[] pull = {MPA * h, 0, 0, 0, 0, 0};
        double[] load = LaminateResponse.underResultants(laminate, pull, Climate.NONE)
                .layers()
                .get(1)
                .outer()
                .plyStress();
        double[] cold = LaminateResponse.underResultants(laminate, new double[6], new Climate(-75, 0))
                .layers()
                .get(1)
                .outer()
                .plyStress();
        assertEquals(485.1, TSAI_WU.exposure(load, T300_5208).reserveFactor(), 0.0501);
        assertEquals(487.3, MAXIMUM_STRESS.exposure(load, T300_5208).reserveFactor(), 0.0501);
        assertEquals(485.1, TSAI_WU.reserveFactor(load, new double[3], T300_5208), 0.0501);
        assertEquals(16.18, cold[1] / MPA, 0.005);
        assertEquals(-30.49, cold[0] / MPA, 0.005);
        assertEquals(285.3, TSAI_WU.reserveFactor(load, cold, T300_5208), 0.0501);
    }

    /** The exercise's [0/±45/90]s, AS4/3501-6, 1.1 mm: first-ply failure under σx in MPa, computed apart. */
    @ParameterizedTest
    @CsvSource({
        "1, 0, 0, 241.0, 226.6, 241.0",
        "1, 1, 0, 244, 274, 244",
        "0, 0, 1, 236.6, 175.2, 236.6",
        "-1, 0, 0, 473.2, 587.4, 564.2"
    })
    void theQuasiIsotropicLaminateHasTheFirstPlyFailureComputedApart(
            double x, double y, double xy, double maximum, double wu, double puck) {
        var ply = TextbookPlies.tape(126e9, 11e9, 0.28, 6.6e9, 6.6e9, 3.93e9);
        Laminate laminate = TextbookPlies.symmetric(ply, 1.1e-3 / 8, 0, 45, -45, 90);
        double h = laminate.thickness() * MPA;
        double[] load = {x * h, y * h, xy * h, 0, 0, 0};
        double[] least = {1e9, 1e9, 1e9};
        StrengthCriterion[] criteria = {MAXIMUM_STRESS, TSAI_WU, PUCK};
        for (PlyState state :
                LaminateResponse.underResultants(laminate, load, Climate.NONE).layers()) {
            for (int i = 0; i < 3; i++) {
                double factor = criteria[i]
                        .exposure(state.outer().plyStress(), AS4_3501_6)
                        .reserveFactor();
                least[i] = Math.min(least[i], factor);
            }
        }
        assertEquals(maximum, least[0], maximum == 244 ? 0.501 : 0.0501);
        assertEquals(wu, least[1], wu == 274 ? 0.501 : 0.0501);
        assertEquals(puck, least[2], puck == 244 ? 0.501 : 0.0501);
    }

    @Test
    void anUnloadedPlyHasInfiniteReserveAndAPlyAlreadyBrokenHasNone() {
        double[] none = new double[3];
        for (StrengthCriterion criterion : StrengthCriterion.values()) {
            assertEquals(0, criterion.exposure(none, T300_5208).value());
            assertTrue(Double.isInfinite(criterion.reserveFactor(none, none, T300_5208)));
            assertEquals(0, criterion.reserveFactor(none, new double[] {0, 50 * MPA, 0}, T300_5208));
        }
    }
}
