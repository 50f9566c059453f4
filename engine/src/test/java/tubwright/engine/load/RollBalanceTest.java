// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RollBalanceTest {
    private static final double K = 800 * 180 / Math.PI;

    /** The two equations of equilibrium, solved by elimination: the moment in the front axle. */
    private static double frontAxle(double front, double rear, double k, double onFront, double onRear) {
        double determinant = (front + k) * (rear + k) - k * k;
        return front * (onFront * (rear + k) + k * onRear) / determinant;
    }

    @Test
    void theFrontAxleCarriesWhatEquilibriumSays() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 200; i++) {
            double lambda = 0.05 + 0.9 * random.nextDouble();
            double mu = random.nextDouble();
            double k = K * Math.pow(10, 4 * random.nextDouble() - 2);
            RollBalance balance = new RollBalance(K, lambda, mu);
            double statics = frontAxle(lambda * K, (1 - lambda) * K, k, mu, 1 - mu);
            assertEquals(statics, balance.atFront(k), 1e-12);
            double step = 1e-5;
            double slope = (frontAxle((lambda + step) * K, (1 - lambda - step) * K, k, mu, 1 - mu)
                            - frontAxle((lambda - step) * K, (1 - lambda + step) * K, k, mu, 1 - mu))
                    / (2 * step);
            assertEquals(slope, balance.arriving(k), 1e-7);
        }
    }

    /** By hand: with even axles and even loads, κ / (κ + 1/4) arrives, so 80 % needs a chassis as stiff as both axles. */
    @Test
    void aChassisAsStiffAsBothAxlesLetsFourFifthsArrive() {
        RollBalance even = new RollBalance(K, 0.5, 0.5);
        assertEquals(0.8, even.arriving(K), 1e-14);
        assertEquals(K, even.needed(0.8), 1e-9 * K);
        assertEquals(2.25 * K, even.needed(0.9), 1e-9 * K);
    }

    /** Rule of the trade: three to five times the roll stiffness (common practice, no source). */
    @Test
    void threeToFiveTimesTheRollStiffnessLosesAThirteenthToATwentyFirst() {
        RollBalance even = new RollBalance(K, 0.5, 0.5);
        assertEquals(1 - 1.0 / 13, even.arriving(3 * K), 1e-12);
        assertEquals(1 - 1.0 / 21, even.arriving(5 * K), 1e-12);
    }

    @Test
    void whatIsNeededIsWhatArrives() {
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 500; i++) {
            RollBalance balance = new RollBalance(K, 0.02 + 0.96 * random.nextDouble(), random.nextDouble());
            double share = 0.01 + 0.98 * random.nextDouble();
            assertEquals(share, balance.arriving(balance.needed(share)), 1e-10);
        }
    }

    @Test
    void aLimpChassisLeavesEachAxleItsOwnEnd() {
        RollBalance balance = new RollBalance(K, 0.6, 0.45);
        assertEquals(0.45, balance.atFront(1e-9 * K), 1e-6);
        assertEquals(0, balance.arriving(1e-9 * K), 1e-6);
        assertEquals(0.6, balance.atFront(Double.POSITIVE_INFINITY));
        assertEquals(1, balance.arriving(Double.POSITIVE_INFINITY));
    }

    @Test
    void impossibleBalancesAreRefused() {
        assertThrows(LoadException.class, () -> new RollBalance(0, 0.5, 0.5));
        assertThrows(LoadException.class, () -> new RollBalance(K, 1, 0.5));
        RollBalance balance = new RollBalance(K, 0.5, 0.5);
        LoadException all = assertThrows(LoadException.class, () -> balance.needed(1));
        assertTrue(all.getMessage().contains("cannot be asked for"), all.getMessage());
    }
}
