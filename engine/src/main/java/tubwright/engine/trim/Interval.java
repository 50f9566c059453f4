// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

/**
 * Two numbers between which a third is proved to lie.
 *
 * @param low lower end
 * @param high upper end
 */
public record Interval(double low, double high) {
    /** Whether a number lies within, ends included. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    /** Width over the middle. */
    public double relativeWidth() {
        return (high - low) / middle();
    }

    /** Half way between the ends. */
    public double middle() {
        return 0.5 * (low + high);
    }

    /** What both know; where rounding has parted them, the gap between. */
    Interval and(Interval other) {
        double l = Math.max(low, other.low);
        double h = Math.min(high, other.high);
        return new Interval(Math.min(l, h), Math.max(l, h));
    }

    /** Wider by a share of its ends, for rounding. */
    Interval outward(double share) {
        return new Interval(low - share * Math.abs(low), high + share * Math.abs(high));
    }
}
