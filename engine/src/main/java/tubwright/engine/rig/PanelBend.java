// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import tubwright.engine.rig.statistics.LinearFit;
import tubwright.engine.rig.statistics.Uncertainty;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;

/** Three-point bending of panels: load and deflection to stiffness, several spans to bending and shear. */
public final class PanelBend {
    private PanelBend() {}

    /**
     * A stiffness from a bend test.
     *
     * @param asRead slope of load against deflection, N/m
     * @param stiffness with the rig's flexibility taken out; the same where the rig is not known
     * @param correction stiffness over {@code asRead}, less one
     * @param uncertainty of {@code stiffness}, N/m
     */
    public record Stiffness(double asRead, double stiffness, double correction, Uncertainty uncertainty) {
        /** Whether more of the deflection was the rig's than the panel's. */
        public boolean mostlyRig() {
            return correction > 1;
        }
    }

    /**
     * Fits a straight line to the part of a test handed in and takes the rig out.
     *
     * @param deflection m
     * @param load N
     * @param rig stiffness of the rig with its standard uncertainty, N/m
     * @throws ReadingsException if the rig would be softer than what was read
     */
    public static Stiffness of(double[] deflection, double[] load, Optional<Spring> rig) {
        LinearFit line = LinearFit.line(deflection, load);
        return without(
                line.coefficients()[1],
                new Contribution("scatter about the line", line.standardErrors()[1], line.degreesOfFreedom()),
                rig);
    }

    /** Takes the rig out of a slope already read. */
    public static Stiffness without(double asRead, Contribution scatter, Optional<Spring> rig) {
        if (rig.isEmpty()) {
            return new Stiffness(asRead, asRead, 0, new Uncertainty(List.of(scatter)));
        }
        double left = Series.without(asRead, rig.get().stiffness());
        double growth = left / asRead * (left / asRead);
        double share = left / rig.get().stiffness();
        return new Stiffness(
                asRead,
                left,
                left / asRead - 1,
                new Uncertainty(List.of(
                        Series.scaled(scatter, growth),
                        Contribution.known("rig", rig.get().standardUncertainty() * share * share))));
    }

    /**
     * A spring.
     *
     * @param stiffness N/m
     * @param standardUncertainty N/m
     */
    public record Spring(double stiffness, double standardUncertainty) {}

    /**
     * Bending and shear stiffness told apart.
     *
     * @param bending N·m²
     * @param bendingError its standard error
     * @param shear N
     * @param shearError its standard error
     */
    public record Split(double bending, double bendingError, double shear, double shearError) {}

    /**
     * Tells bending from shear by testing the same panel on several spans: flexibility = L³/(48 EI) + L/(4 S), two
     * unknowns, least squares over the spans with each weighted by its own size (the separation that ASTM D7250
     * standardises).
     *
     * @param spans m, at least three
     * @param stiffnesses N/m, rig taken out
     * @throws ReadingsException if the spans cannot tell them apart
     */
    public static Split split(double[] spans, double[] stiffnesses) {
        return split(spans, stiffnesses, span -> span * span * span / 48, span -> span / 4);
    }

    /**
     * The same for another arrangement of loads.
     *
     * @param bending movement over load by bending for EI = 1, by span
     * @param shear movement over load by shear for S = 1, by span
     */
    public static Split split(
            double[] spans, double[] stiffnesses, DoubleUnaryOperator bending, DoubleUnaryOperator shear) {
        List<double[]> rows = new ArrayList<>();
        double[] right = new double[spans.length];
        double[] weights = new double[spans.length];
        double shortest = Double.MAX_VALUE;
        double longest = 0;
        for (int i = 0; i < spans.length; i++) {
            rows.add(new double[] {bending.applyAsDouble(spans[i]), shear.applyAsDouble(spans[i])});
            right[i] = 1 / stiffnesses[i];
            weights[i] = stiffnesses[i] * stiffnesses[i];
            shortest = Math.min(shortest, spans[i]);
            longest = Math.max(longest, spans[i]);
        }
        if (spans.length < 3 || longest < 1.2 * shortest) {
            throw new ReadingsException(
                    "bending and shear are told apart by at least three tests on spans that differ by"
                            + " a fifth or more; on one span any share of shear fits");
        }
        LinearFit fit = LinearFit.weighted(rows.toArray(double[][]::new), right, weights);
        double b = fit.coefficients()[0];
        double s = fit.coefficients()[1];
        if (!(b > 0) || !(s > 0)) {
            throw new ReadingsException("these tests ask for a negative " + (b > 0 ? "shear" : "bending")
                    + " flexibility: their scatter, or the rig, hides it");
        }
        return new Split(1 / b, fit.standardErrors()[0] / (b * b), 1 / s, fit.standardErrors()[1] / (s * s));
    }
}
