// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import java.util.Locale;

/**
 * Carries values computed on a few mesh sizes to size zero (Richardson 1911) and puts a band round the result after
 * Roache (1994), "Perspective: a method for uniform reporting of grid refinement studies", J. Fluids Eng. 116: the
 * difference between finest value and estimate times a factor of safety, 1.25 with an observed order, 3 with an assumed
 * one.
 */
public final class Richardson {
    private static final double ASSUMED_ORDER = 2;
    private static final double LEAST_ORDER = 0.5;
    private static final double GREATEST_ORDER = 4;

    private Richardson() {}

    /**
     * Extrapolates.
     *
     * @param samples coarsest first, sizes strictly falling; the last three count
     * @return the estimate with its band
     */
    public static Converged extrapolate(List<Converged.Sample> samples) {
        int n = samples.size();
        if (n == 0) {
            throw new IllegalArgumentException("extrapolation needs at least one value");
        }
        Converged.Sample fine = samples.get(n - 1);
        if (n == 1) {
            return new Converged(
                    fine.value(), Double.NaN, Double.NaN, "one mesh only: its error is not known", samples);
        }
        Converged.Sample middle = samples.get(n - 2);
        if (n == 2) {
            double estimate = estimate(middle, fine, ASSUMED_ORDER);
            double error = 3 * Math.abs(estimate - fine.value());
            return new Converged(estimate, error, Double.NaN, "two meshes, second order assumed", samples);
        }
        Converged.Sample coarse = samples.get(n - 3);
        double first = middle.value() - coarse.value();
        double second = fine.value() - middle.value();
        double spread = Math.max(Math.max(coarse.value(), middle.value()), fine.value())
                - Math.min(Math.min(coarse.value(), middle.value()), fine.value());
        if (first * second <= 0) {
            return new Converged(
                    fine.value(),
                    spread,
                    Double.NaN,
                    "the meshes do not approach from one side: finest value, band of their whole spread",
                    samples);
        }
        double order = observedOrder(coarse, middle, fine);
        boolean usable = order >= LEAST_ORDER && order <= GREATEST_ORDER;
        double used = usable ? order : ASSUMED_ORDER;
        double estimate = estimate(middle, fine, used);
        double error = (usable ? 1.25 : 3) * Math.abs(estimate - fine.value());
        String note = usable
                ? String.format(Locale.ROOT, "three meshes, observed order %.1f", order)
                : String.format(Locale.ROOT, "three meshes, observed order %.1f not used, second assumed", order);
        return new Converged(estimate, error, order, note, samples);
    }

    private static double estimate(Converged.Sample coarse, Converged.Sample fine, double order) {
        double ratio = Math.pow(coarse.meshSize() / fine.meshSize(), order);
        return fine.value() + (fine.value() - coarse.value()) / (ratio - 1);
    }

    /**
     * The order p for which f(h) = f₀ + c hᵖ passes through three samples; by bisection, since the sizes need not be in
     * a constant ratio.
     */
    private static double observedOrder(Converged.Sample coarse, Converged.Sample middle, Converged.Sample fine) {
        double wanted = (middle.value() - coarse.value()) / (fine.value() - middle.value());
        double low = 1e-3;
        double high = 20;
        for (int i = 0; i < 100; i++) {
            double p = 0.5 * (low + high);
            double a = Math.pow(coarse.meshSize() / fine.meshSize(), p);
            double b = Math.pow(middle.meshSize() / fine.meshSize(), p);
            if ((a - b) / (b - 1) < wanted) {
                low = p;
            } else {
                high = p;
            }
        }
        return 0.5 * (low + high);
    }
}
