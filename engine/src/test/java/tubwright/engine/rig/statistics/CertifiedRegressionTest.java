// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Against the certified values of the NIST StRD linear sets (from memory; Longley and Filippelli verified). */
class CertifiedRegressionTest {
    @Test
    void norrisToElevenDigits() {
        double[] y =
                Arrays.stream(ReferenceData.NORRIS_Y_X).mapToDouble(r -> r[0]).toArray();
        double[] x =
                Arrays.stream(ReferenceData.NORRIS_Y_X).mapToDouble(r -> r[1]).toArray();
        LinearFit fit = LinearFit.line(x, y);
        close(11, -0.262323073774029, fit.coefficients()[0]);
        close(12, 1.00211681802045, fit.coefficients()[1]);
        close(11, 0.232818234301152, fit.standardErrors()[0]);
        close(11, 0.429796848199937e-3, fit.standardErrors()[1]);
        close(11, 0.884796396144373, fit.residualDeviation());
        close(13, 0.999993745883712, fit.rSquared());
        assertEquals(34, fit.degreesOfFreedom());
    }

    @Test
    void longleyToTenDigits() {
        double[] y =
                Arrays.stream(ReferenceData.LONGLEY_Y_X).mapToDouble(r -> r[0]).toArray();
        double[][] x = Arrays.stream(ReferenceData.LONGLEY_Y_X)
                .map(r -> {
                    double[] row = r.clone();
                    row[0] = 1;
                    return row;
                })
                .toArray(double[][]::new);
        LinearFit fit = LinearFit.of(x, y);
        double[] coefficients = {
            -3482258.63459582,
            15.0618722713733,
            -0.358191792925910e-1,
            -2.02022980381683,
            -1.03322686717359,
            -0.511041056535807e-1,
            1829.15146461355
        };
        double[] errors = {
            890420.383607373,
            84.9149257747669,
            0.334910077722432e-1,
            0.488399681651699,
            0.214274163161675,
            0.226073200069370,
            455.478499142212
        };
        for (int j = 0; j < 7; j++) {
            close(9.5, coefficients[j], fit.coefficients()[j]);
            close(9.5, errors[j], fit.standardErrors()[j]);
        }
        close(10, 304.854073561965, fit.residualDeviation());
        close(12, 0.995479004577296, fit.rSquared());
    }

    @Test
    void theExactPolynomialsOfWamplerComeBack() {
        for (double ratio : new double[] {1, 0.1}) {
            LinearFit fit = LinearFit.polynomial(stations(), wampler(ratio, 0), 5);
            for (int j = 0; j <= 5; j++) {
                close(9, Math.pow(ratio, j), fit.coefficients()[j]);
            }
        }
    }

    @Test
    void theScatteredPolynomialsOfWamplerComeBackWithTheirErrors() {
        double[] errors = {
            2152.32624678170, 2363.55173469681, 779.343524331583, 101.475507550350, 5.64566512170752, 0.112324854679312
        };
        for (double size : new double[] {1, 100, 10000}) {
            LinearFit fit = LinearFit.polynomial(stations(), wampler(1, size), 5);
            for (int j = 0; j <= 5; j++) {
                assertEquals(1, fit.coefficients()[j], 1e-9 * size, "coefficient " + j);
                close(10, errors[j] * size, fit.standardErrors()[j]);
            }
            close(11, 2360.14502379268 * size, fit.residualDeviation());
        }
    }

    /** A tenth-degree polynomial with a condition number near 1e10 even after scaling: seven digits are what is left. */
    @Test
    void filippelliToSevenDigits() {
        LinearFit fit = LinearFit.polynomial(ReferenceData.FILIP_X, ReferenceData.FILIP_Y, 10);
        double[] coefficients = {
            -1467.48961422980, -2772.17959193342, -2316.37108160893, -1127.97394098372, -354.478233703349,
            -75.1242017393757, -10.8753180355343, -1.06221498588947, -0.670191154593408e-1, -0.246781078275479e-2,
            -0.402962525080404e-4
        };
        double[] errors = {
            298.084530995537,
            559.779865474950,
            466.477572127796,
            227.204274477751,
            71.6478660875927,
            15.2897178747400,
            2.23691159816033,
            0.221624321934227,
            0.142363763154724e-1,
            0.535617408889821e-3,
            0.896632837373868e-5
        };
        for (int j = 0; j <= 10; j++) {
            close(7, coefficients[j], fit.coefficients()[j]);
            close(7, errors[j], fit.standardErrors()[j]);
        }
        close(8, 0.334801051324544e-2, fit.residualDeviation());
        close(9, 0.996727416185620, fit.rSquared());
    }

    private static double[] stations() {
        double[] x = new double[21];
        Arrays.setAll(x, i -> i);
        return x;
    }

    private static double[] wampler(double ratio, double size) {
        double[] y = new double[21];
        for (int i = 0; i < y.length; i++) {
            for (int j = 0; j <= 5; j++) {
                y[i] += Math.pow(ratio * i, j);
            }
            y[i] += size * ReferenceData.WAMPLER_DEPARTURES[i];
        }
        return y;
    }

    private static void close(double digits, double certified, double ours) {
        assertEquals(certified, ours, Math.abs(certified) * Math.pow(10, -digits));
    }
}
