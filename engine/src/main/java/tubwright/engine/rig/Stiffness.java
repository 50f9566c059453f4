// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import tubwright.engine.rig.TorsionReading.CycleStiffness;
import tubwright.engine.rig.statistics.Uncertainty;
import tubwright.engine.rig.statistics.Uncertainty.Contribution;

/** Stiffness over all steps, a branch, a cycle, with what its uncertainty is made of (docs/theory/rig.md). */
final class Stiffness {
    private final Readings readings;
    private final double[] angles;
    private final PairErrors errors;
    private final double sign;
    private final List<CycleStiffness> cycles;

    /**
     * @param angles rad, one a load step; NaN where it was not read
     * @param errors of the pairs that read them
     * @param sign of the slope, so that stiffness is positive
     */
    Stiffness(Readings readings, double[] angles, PairErrors errors, double sign) {
        this.readings = readings;
        this.angles = angles;
        this.errors = errors;
        this.sign = sign;
        this.cycles = ofCycles();
    }

    /** Each cycle alone. */
    List<CycleStiffness> cycles() {
        return cycles;
    }

    /** Over the steps named, if there are enough of them. */
    Optional<Estimate> over(IntPredicate with) {
        double[] x = angles.clone();
        int count = 0;
        for (int i = 0; i < x.length; i++) {
            if (!with.test(i)) {
                x[i] = Double.NaN;
            } else if (Double.isFinite(x[i])) {
                count++;
            }
        }
        if (count < 3 + readings.cycles().size()) {
            return Optional.empty();
        }
        return Optional.of(of(CycleFit.of(x, errors.torque(), errors.cycle())));
    }

    Estimate of(CycleFit line) {
        double k = sign * line.slope();
        List<Contribution> parts = new ArrayList<>();
        parts.add(new Contribution(
                "scatter about the line", line.standardError(), line.fit().degreesOfFreedom()));
        // Fitted the other way round, angle against torque, the slope is K/R²: the truth lies between the two.
        parts.add(Contribution.known("which of the two is fitted", k * (1 / line.rSquared() - 1) / Math.sqrt(3)));
        if (cycles.size() > 1) {
            repeat(cycles, line.fit().degreesOfFreedom()).ifPresent(parts::add);
        }
        Setup setup = readings.setup();
        if (setup.torqueUncertainty() > 0) {
            parts.add(Contribution.known("torque (scale and arm)", k * setup.torqueUncertainty()));
        }
        double place = errors.place(setup.spacingUncertainty());
        if (place > 0) {
            // The angle over torque is 1/K.
            parts.add(Contribution.known("gauge spacing", k * k * place));
        }
        double step = errors.step(setup.resolution());
        if (step > 0) {
            double[] read =
                    IntStream.of(line.used()).mapToDouble(i -> angles[i]).toArray();
            double mean = Arrays.stream(read).average().orElse(0);
            double away = Math.sqrt(
                    Arrays.stream(read).map(a -> (a - mean) * (a - mean)).sum());
            parts.add(Contribution.known("gauge resolution", k * step / away));
        }
        return new Estimate(k, line.standardError(), line.rSquared(), line.used().length, new Uncertainty(parts));
    }

    /**
     * What cycles differ by beyond the scatter of each, as uncertainty of their mean; nothing where the scatter explains
     * it (F-test at 5 %), for then it would be counted twice.
     */
    private static Optional<Contribution> repeat(List<CycleStiffness> cycles, int freedom) {
        int n = cycles.size();
        double mean =
                cycles.stream().mapToDouble(CycleStiffness::stiffness).average().orElseThrow();
        double between = 0;
        double within = 0;
        for (CycleStiffness each : cycles) {
            between += (each.stiffness() - mean) * (each.stiffness() - mean) / (n - 1);
            within += each.standardError() * each.standardError() / n;
        }
        double limit = Uncertainty.varianceRatio(0.95, n - 1, freedom);
        return between > limit * within
                ? Optional.of(new Contribution("repeat of cycles", Math.sqrt((between - within) / n), n - 1.0))
                : Optional.empty();
    }

    private List<CycleStiffness> ofCycles() {
        List<CycleStiffness> result = new ArrayList<>();
        for (int number : readings.cycles()) {
            double[] x = angles.clone();
            int count = 0;
            for (int i = 0; i < x.length; i++) {
                x[i] = errors.cycle()[i] == number ? x[i] : Double.NaN;
                count += Double.isFinite(x[i]) ? 1 : 0;
            }
            if (count >= 4) {
                CycleFit line = CycleFit.of(x, errors.torque(), errors.cycle());
                result.add(new CycleStiffness(number, sign * line.slope(), line.standardError()));
            }
        }
        return result;
    }
}
