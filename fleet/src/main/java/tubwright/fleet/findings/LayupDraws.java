// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tubwright.engine.design.Design;
import tubwright.engine.design.Targets;
import tubwright.engine.design.text.Limit;
import tubwright.engine.response.Study;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Structure;
import tubwright.engine.structure.Tub;
import tubwright.engine.trim.Layup;
import tubwright.engine.trim.LayupScatter;
import tubwright.engine.trim.LoadedTub;
import tubwright.fleet.FleetException;
import tubwright.fleet.plan.LayupScatterText;
import tubwright.fleet.plan.StudyPlan;
import tubwright.fleet.statistics.Probability;
import tubwright.fleet.statistics.Suffices;
import tubwright.numerics.solver.Solvers;

/**
 * How far torsional stiffness and mass scatter with materials and hands. Stiffness is between skin sections; what lies
 * between those and the hardpoints is taken as designed.
 *
 * @param nominal stiffness as designed, N·m/rad
 * @param draws how many
 * @param quantiles of the middles of the bounds: 1, 5, 50, 95 and 99 %, N·m/rad
 * @param widest of the proved bounds, share of their middle
 * @param bars counts of the middles between {@code from} and {@code to}
 * @param from least middle, N·m/rad
 * @param to largest
 * @param stiffness how probably its target is met; draws whose bounds lie to both sides of it count as unknown
 * @param suffices factor on all scatter at which the share asked for would just meet it
 * @param mass how probably its target is met
 * @param massDeviation standard deviation of the mass, kg
 * @param inputs what was drawn once for the tub
 * @param explained share of the stiffness's variance that a straight line in each input explains
 * @param shortfall what is left: ply angles, and what is no straight line
 */
public record LayupDraws(
        double nominal,
        int draws,
        double[] quantiles,
        double widest,
        int[] bars,
        double from,
        double to,
        Optional<Probability> stiffness,
        double suffices,
        Optional<Probability> mass,
        double massDeviation,
        List<String> inputs,
        double[] explained,
        double shortfall) {
    /** The shares of {@link #quantiles}. */
    public static final double[] SHARES = {0.01, 0.05, 0.5, 0.95, 0.99};

    private static final int BARS = 48;
    private static final int MOST = 10_000_000;

    static LayupDraws of(
            Design.Variant variant, double meshSize, LayupScatterText text, StudyPlan plan, BooleanSupplier stop) {
        if (text.draws() < 2 || text.draws() > MOST) {
            throw new FleetException("layup scatter: " + text.draws() + " draws", "write 2 to " + MOST);
        }
        Tub tub = variant.tub();
        Case.Torsion torsion = tub.cases().stream()
                .filter(Case.Torsion.class::isInstance)
                .map(Case.Torsion.class::cast)
                .findFirst()
                .orElseThrow(() ->
                        new FleetException("layup scatter: there is no torsion case", "write one under \"cases:\""));
        Structure structure = Structure.of(tub, Study.mesh(tub, meshSize > 0 ? meshSize : tub.meshSize()));
        try (LoadedTub loaded = LoadedTub.solve(structure, torsion, Layup.of(tub), Solvers.best())) {
            LayupScatter scatter = LayupScatter.of(
                    loaded,
                    new LayupScatter.Spreads(
                            text.stiffness().si(),
                            text.thickness().si(),
                            text.angle().si(),
                            text.core().si(),
                            text.bond().si()));
            LayupScatter.Drawn drawn = scatter.draw(text.draws(), plan.text().seed(), stop);
            double around = 1 / loaded.stiffness(loaded.compliance()) - 1 / loaded.sectionStiffness();
            return of(
                    variant.targets(),
                    loaded.sectionStiffness(),
                    around,
                    drawn,
                    plan.text().share());
        } catch (IllegalArgumentException none) {
            throw new FleetException(
                    "layup scatter, " + variant.name() + ": " + none.getMessage(), "leave the variant out");
        }
    }

    private static LayupDraws of(
            Targets targets, double nominal, double around, LayupScatter.Drawn drawn, double share) {
        int n = drawn.low().length;
        double[] low = Arrays.stream(drawn.low()).map(k -> 1 / (1 / k - around)).toArray();
        double[] high =
                Arrays.stream(drawn.high()).map(k -> 1 / (1 / k - around)).toArray();
        double[] middle = new double[n];
        double widest = 0;
        for (int i = 0; i < n; i++) {
            middle[i] = 0.5 * (low[i] + high[i]);
            widest = Math.max(widest, (high[i] - low[i]) / middle[i]);
        }
        double[] sorted = middle.clone();
        Arrays.sort(sorted);
        int[] bars = new int[BARS];
        double step = Math.max((sorted[n - 1] - sorted[0]) / BARS, 1e-12 * sorted[n - 1]);
        for (double each : middle) {
            bars[Math.min(BARS - 1, (int) ((each - sorted[0]) / step))]++;
        }
        List<Double> explained = new ArrayList<>();
        double rest = 1;
        for (double[] input : drawn.drawn()) {
            double r = correlation(input, middle);
            explained.add(r * r);
            rest -= r * r;
        }
        Optional<Limit> stiff = targets.torsionalStiffness();
        double mean = Arrays.stream(drawn.mass()).average().orElseThrow();
        return new LayupDraws(
                nominal,
                n,
                Arrays.stream(SHARES)
                        .map(s -> sorted[Math.min(n - 1, (int) (s * n))])
                        .toArray(),
                widest,
                bars,
                sorted[0],
                sorted[n - 1],
                stiff.map(l -> met(l, low, high)),
                stiff.map(l -> Suffices.factor(nominal, low, l.si(), l.atLeast(), share))
                        .orElse(Double.NaN),
                targets.mass().map(l -> met(l, drawn.mass(), drawn.mass())),
                Math.sqrt(Arrays.stream(drawn.mass())
                        .map(m -> (m - mean) * (m - mean))
                        .average()
                        .orElseThrow()),
                drawn.inputs(),
                explained.stream().mapToDouble(Double::doubleValue).toArray(),
                rest);
    }

    private static Probability met(Limit limit, double[] low, double[] high) {
        int met = 0;
        int unknown = 0;
        for (int i = 0; i < low.length; i++) {
            boolean one = Targets.met(limit, low[i]);
            boolean other = Targets.met(limit, high[i]);
            met += one && other ? 1 : 0;
            unknown += one != other ? 1 : 0;
        }
        return Probability.of(met, unknown, low.length, Probability.USUAL);
    }

    private static double correlation(double[] x, double[] y) {
        double mx = Arrays.stream(x).average().orElseThrow();
        double my = Arrays.stream(y).average().orElseThrow();
        double xx = 0;
        double yy = 0;
        double xy = 0;
        for (int i = 0; i < x.length; i++) {
            xx += (x[i] - mx) * (x[i] - mx);
            yy += (y[i] - my) * (y[i] - my);
            xy += (x[i] - mx) * (y[i] - my);
        }
        return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
    }
}
