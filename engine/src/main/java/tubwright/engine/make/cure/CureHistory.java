// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.List;

/**
 * What happened in a cure. Cells are counted from the first layer (the tool's outer face) on.
 *
 * @param heights of the cells' middles above the first face, m
 * @param layerOfCell index of the layer each cell belongs to
 * @param layers as put in
 * @param moments kept, first and last among them
 * @param peak hottest moment of what cures (of everything, if nothing does)
 * @param stoppedAt s when the cycle was over
 */
public record CureHistory(
        double[] heights,
        int[] layerOfCell,
        List<HeatLayer> layers,
        List<Moment> moments,
        Peak peak,
        double stoppedAt) {

    /**
     * One moment.
     *
     * @param time s
     * @param air K
     * @param step of the cycle
     * @param holding whether the clock of a hold runs
     * @param temperature of each cell, K
     * @param degree of cure of each cell, 0 where nothing cures
     */
    public record Moment(double time, double air, int step, boolean holding, double[] temperature, double[] degree) {}

    /**
     * The hottest place.
     *
     * @param temperature K
     * @param height above the first face, m
     * @param time s
     */
    public record Peak(double temperature, double height, double time) {}

    /** True if the cell cures. */
    public boolean cures(int cell) {
        return layers.get(layerOfCell[cell]).reaction().isPresent();
    }

    /** Coldest of what cures at a moment (the lagging thermocouple of an ideal set), K. */
    public double lagging(Moment moment) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < heights.length; i++) {
            least = cures(i) ? Math.min(least, moment.temperature[i]) : least;
        }
        return least;
    }

    /** Hottest of what cures at a moment (the leading thermocouple of an ideal set), K. */
    public double leading(Moment moment) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < heights.length; i++) {
            most = cures(i) ? Math.max(most, moment.temperature[i]) : most;
        }
        return most;
    }

    /** Least degree of cure of what cures at a moment. */
    public double leastDegree(Moment moment) {
        double least = 1;
        for (int i = 0; i < heights.length; i++) {
            least = cures(i) ? Math.min(least, moment.degree[i]) : least;
        }
        return least;
    }

    /** The end. */
    public Moment last() {
        return moments.getLast();
    }

    /** Temperature at a height and time, between the cells' middles and moments by straight lines, K. */
    public double temperatureAt(double height, double time) {
        return between(height, time, true);
    }

    /** Degree of cure at a height and time, likewise. */
    public double degreeAt(double height, double time) {
        return between(height, time, false);
    }

    private double between(double height, double time, boolean temperature) {
        int k = 0;
        while (k < moments.size() - 2 && moments.get(k + 1).time < time) {
            k++;
        }
        Moment a = moments.get(k);
        Moment b = moments.get(Math.min(k + 1, moments.size() - 1));
        double share = b.time > a.time ? Math.clamp((time - a.time) / (b.time - a.time), 0, 1) : 0;
        double[] first = temperature ? a.temperature : a.degree;
        double[] second = temperature ? b.temperature : b.degree;
        return (1 - share) * along(first, height) + share * along(second, height);
    }

    private double along(double[] values, double height) {
        int i = 0;
        while (i < heights.length - 2 && heights[i + 1] < height) {
            i++;
        }
        double share = Math.clamp((height - heights[i]) / (heights[i + 1] - heights[i]), 0, 1);
        return (1 - share) * values[i] + share * values[i + 1];
    }
}
