// SPDX-License-Identifier: Apache-2.0
package tubwright.fleet.findings;

import java.util.List;
import java.util.Optional;
import tubwright.fleet.Row;
import tubwright.fleet.plan.StudyPlan;
import tubwright.fleet.statistics.Probability;
import tubwright.fleet.statistics.SobolIndices;

/**
 * What a study came to. The same rows give the same findings, in how many goes ever they were computed.
 *
 * @param plan of the study
 * @param variants each in turn
 * @param complete whether every point has its row
 */
public record Findings(StudyPlan plan, List<OfVariant> variants, boolean complete) {
    public Findings {
        variants = List.copyOf(variants);
    }

    /**
     * Of one variant.
     *
     * @param variant its name
     * @param points all that were computed, those of the plan first, then those of the front
     * @param nominal the design with nothing varied, where things scatter
     * @param chances of meeting the design's targets, where things scatter
     * @param indices which of what is varied matters, by reading, where the layout allows to tell
     * @param between how well each reading can be told between the points, where it can
     * @param front numbers of the points that nothing beats, where asked
     * @param layups how far the stiffness scatters with the layup, where asked
     */
    public record OfVariant(
            String variant,
            List<OfPoint> points,
            Optional<Row> nominal,
            List<Chance> chances,
            List<Indices> indices,
            List<Between> between,
            List<Integer> front,
            Optional<LayupDraws> layups) {
        public OfVariant {
            points = List.copyOf(points);
            chances = List.copyOf(chances);
            indices = List.copyOf(indices);
            between = List.copyOf(between);
            front = List.copyOf(front);
        }

        /** Points that could not be computed. */
        public long failed() {
            return points.stream()
                    .filter(p -> p.row().filter(r -> !r.ok()).isPresent())
                    .count();
        }
    }

    /**
     * A point.
     *
     * @param shares where it lies, one number from 0 to 1 for each thing varied
     * @param row what it came to; empty where the study was stopped before
     * @param promised what was guessed of the front's aims before it was computed; empty for points of the plan
     */
    public record OfPoint(double[] shares, Optional<Row> row, double[] promised) {
        /** Whether it was added for the front. */
        public boolean added() {
            return promised.length > 0;
        }

        /** Value of a reading; NaN for none. */
        public double value(String reading) {
            return row.map(r -> r.value(reading)).orElse(Double.NaN);
        }
    }

    /**
     * How probably a target is met.
     *
     * @param reading the target's
     * @param limit SI
     * @param atLeast which way it binds
     * @param met probability
     * @param suffices factor on all scatter at which the share asked for would just meet it, to first order
     */
    public record Chance(String reading, double limit, boolean atLeast, Probability met, double suffices) {}

    /** Indices of a reading. */
    public record Indices(String reading, SobolIndices of) {}

    /**
     * What lies between the points of a reading.
     *
     * @param reading which
     * @param error root mean square of what points left out are off, SI
     * @param explained share of the variance that is told of points left out
     * @param slopes at the middle, SI for the whole range of each thing varied; with their standard error from the error
     */
    public record Between(String reading, double error, double explained, double[] slopes) {}
}
