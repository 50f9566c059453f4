// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.rig.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.structure.Case;
import tubwright.engine.structure.Tub;

/**
 * What a test has taught about the works' materials and joints, kept for later runs. Properties of the test itself are
 * left behind.
 *
 * @param doubts with their spreads before the test
 * @param mean θ after it
 * @param covariance of θ after it
 * @param tested name of the tub that was tested
 * @param mass of that tub as computed, kg
 * @param source file of the readings
 * @param stamp when it was made, in words
 */
public record Calibration(
        List<Doubt> doubts,
        double[] mean,
        double[][] covariance,
        String tested,
        double mass,
        String source,
        String stamp) {
    public Calibration {
        doubts = List.copyOf(doubts);
    }

    /** What an explanation leaves for later. */
    public static Calibration of(Explanation explanation, String tested, double mass, String source, String stamp) {
        Update update = explanation.update();
        int[] kept = java.util.stream.IntStream.range(0, update.doubts().size())
                .filter(i -> !update.doubts().get(i).ofTheTest())
                .toArray();
        List<Doubt> doubts = new ArrayList<>();
        double[] mean = new double[kept.length];
        double[][] covariance = new double[kept.length][kept.length];
        for (int a = 0; a < kept.length; a++) {
            doubts.add(update.doubts().get(kept[a]));
            mean[a] = update.mean()[kept[a]];
            for (int b = 0; b < kept.length; b++) {
                covariance[a][b] = update.covariance()[kept[a]][kept[b]];
            }
        }
        return new Calibration(doubts, mean, covariance, tested, mass, source, stamp);
    }

    /**
     * The calibration as it bears on another tub: doubts of that tub that were calibrated keep what is known of them, new
     * ones come with their spread before any test.
     *
     * @param tub of the same works
     * @param loading its torsion case
     */
    public Calibration on(Tub tub, Case.Torsion loading) {
        List<Doubt> all = Doubts.of(tub, loading);
        int n = all.size();
        double[] m = new double[n];
        double[][] c = new double[n][n];
        for (int a = 0; a < n; a++) {
            Optional<Integer> known = find(all.get(a));
            if (known.isEmpty()) {
                c[a][a] = all.get(a).spread() * all.get(a).spread();
                continue;
            }
            m[a] = mean[known.get()];
            for (int b = 0; b < n; b++) {
                Optional<Integer> other = find(all.get(b));
                if (other.isPresent()) {
                    c[a][b] = covariance[known.get()][other.get()];
                }
            }
        }
        return new Calibration(all, m, c, tested, mass, source, stamp);
    }

    /** A calibration that knows nothing yet: every doubt with its spread before any test. */
    public static Calibration none(Tub tub, Case.Torsion loading) {
        return new Calibration(List.of(), new double[0], new double[0][0], "", Double.NaN, "", "").on(tub, loading);
    }

    private Optional<Integer> find(Doubt doubt) {
        for (int i = 0; i < doubts.size(); i++) {
            if (doubts.get(i).name().equals(doubt.name())) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }
}
