// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.Arrays;

/**
 * How far every mechanism has gone. A mechanism begins when its ratio reaches one; from there its stress falls in a straight
 * line to nought at κ_f times the strain of its onset, so that its share of stiffness lost is d = κ_f/(κ_f − 1) (1 − 1/κ) and
 * the energy it has taken W₀ κ_f/(κ_f − 1) (κ − 1), W₀ the elastic energy at the onset, W₀ κ_f all it ever takes.
 *
 * <p>Where W₀ alone is more than that, the element is too large for its energy: its strength is lowered until it is not (Bažant
 * and Oh 1983; Maimí et al. 2007), and that is remembered.
 */
final class SpreadState {
    /** A mechanism's κ_f is at least this: it would snap back in itself otherwise. */
    private static final double STEEPEST = 1.1;

    /** Share of stiffness that a failed shell keeps, so that the rest stays solvable. */
    private static final double SHELL = 1e-6;

    /** The same of springs, which are many times as stiff as what they join. */
    private static final double SPRING = 1e-12;

    /** Largest ratio so far, one before the onset. */
    final double[] kappa;

    /** κ_f; not a number before the onset. */
    final double[] last;

    /** W₀, J. */
    final double[] onset;

    /** By what the ratio is multiplied, above one where the strength had to be lowered. */
    final double[] sharper;

    private final boolean[] opened;

    private final double[] remnant;

    /** @param shells which mechanisms are of shells rather than of springs */
    SpreadState(boolean[] shells) {
        int mechanisms = shells.length;
        remnant = new double[mechanisms];
        for (int m = 0; m < mechanisms; m++) {
            remnant[m] = shells[m] ? SHELL : SPRING;
        }
        kappa = new double[mechanisms];
        last = new double[mechanisms];
        onset = new double[mechanisms];
        sharper = new double[mechanisms];
        opened = new boolean[mechanisms];
        Arrays.fill(kappa, 1);
        Arrays.fill(last, Double.NaN);
        Arrays.fill(sharper, 1);
    }

    private SpreadState(SpreadState other) {
        remnant = other.remnant;
        kappa = other.kappa.clone();
        last = other.last.clone();
        onset = other.onset.clone();
        sharper = other.sharper.clone();
        opened = other.opened.clone();
    }

    SpreadState copy() {
        return new SpreadState(this);
    }

    /** The state that would come next if all went on as it did since an earlier one, by so many times as much. */
    SpreadState onward(SpreadState before, double times) {
        SpreadState next = copy();
        for (int m = 0; m < kappa.length; m++) {
            if (begun(m)) {
                next.kappa[m] = Math.min(last[m], kappa[m] + times * (kappa[m] - before.kappa[m]));
            }
        }
        return next;
    }

    boolean begun(int m) {
        return !Double.isNaN(last[m]);
    }

    /** Share of stiffness left. */
    double left(int m) {
        return begun(m) ? Math.max(remnant[m], 1 - lost(m)) : 1;
    }

    /** Share of stiffness lost. */
    double lost(int m) {
        if (!begun(m)) {
            return 0;
        }
        return kappa[m] >= last[m] ? 1 : fall(last[m]) * (1 - 1 / kappa[m]);
    }

    private static double fall(double last) {
        return last == Double.POSITIVE_INFINITY ? 1 : last / (last - 1);
    }

    /** κ_f that follows from the energies. */
    private static double last(double onset, double capacity) {
        return Math.max(STEEPEST, capacity / onset);
    }

    /**
     * How far a field drives a mechanism. One that has begun goes by its energy, √(W/W₀), whose own pattern of strain the ratio of
     * its worst point no longer tells: only so is what it takes what the structure loses. Where its sign has turned, the energies
     * of its two signs are not the same, and the ratio counts.
     */
    private double drive(SpreadModel.Driven driven, int m) {
        double ratio = driven.ratio()[m];
        if (!begun(m)) {
            return ratio * sharper(driven.onset()[m], driven.capacity()[m]);
        }
        return driven.tension()[m] == opened[m] ? ratio * Math.sqrt(driven.onset()[m] / onset[m]) : ratio * sharper[m];
    }

    /** How far a field drives a mechanism, by its ratio alone where nothing is known of its energy. */
    double driven(SpreadModel.Driven driven, int m) {
        double drive = drive(driven, m);
        return Double.isNaN(drive) ? driven.ratio()[m] : drive;
    }

    /** Factor on the ratio that lowers the strength of an element too large for its energy. */
    static double sharper(double onset, double capacity) {
        return capacity < STEEPEST * onset ? Math.sqrt(STEEPEST * onset / capacity) : 1;
    }

    /**
     * The factor on the ratios at which all mechanisms have taken so much energy, which grows with it in straight pieces.
     *
     * @return infinite where they never take as much
     */
    double factor(SpreadModel.Driven driven, boolean[] follows, double target) {
        double[] weight = new double[kappa.length];
        double[] slope = new double[kappa.length];
        double[] from = new double[kappa.length];
        double[] to = new double[kappa.length];
        int count = 0;
        double least = Double.POSITIVE_INFINITY;
        double given = 0;
        for (int m = 0; m < kappa.length; m++) {
            if (!follows[m] || !(driven.ratio()[m] > 0)) {
                given += follows[m] && begun(m) ? onset[m] * fall(last[m]) * (kappa[m] - 1) : 0;
                continue;
            }
            boolean begun = begun(m);
            double sharp = begun ? sharper[m] : sharper(driven.onset()[m], driven.capacity()[m]);
            double w = begun ? onset[m] : driven.onset()[m] / (sharp * sharp);
            double f = begun ? last[m] : last(w, driven.capacity()[m]);
            weight[count] = w * fall(f);
            slope[count] = drive(driven, m);
            from[count] = kappa[m];
            to[count] = f;
            least = kappa[m] < f ? Math.min(least, kappa[m] / slope[count]) : least;
            count++;
        }
        if (least == Double.POSITIVE_INFINITY) {
            return least;
        }
        double low = least;
        double high = least;
        double wanted = target - given;
        for (int k = 0; taken(weight, slope, from, to, count, high) < wanted; k++) {
            if (k == 80) {
                return Double.POSITIVE_INFINITY;
            }
            low = high;
            high *= k < 10 ? 1.02 : 1.5;
        }
        int few = 0;
        for (int i = 0; i < count; i++) {
            if (from[i] / slope[i] < high) {
                weight[few] = weight[i];
                slope[few] = slope[i];
                from[few] = from[i];
                to[few++] = to[i];
            } else {
                wanted -= weight[i] * (from[i] - 1);
            }
        }
        for (int k = 0; k < 50; k++) {
            double middle = 0.5 * (low + high);
            if (taken(weight, slope, from, to, few, middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private static double taken(double[] weight, double[] slope, double[] from, double[] to, int count, double factor) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += weight[i] * (Math.min(Math.max(from[i], factor * slope[i]), to[i]) - 1);
        }
        return sum;
    }

    /** Energy taken by all mechanisms so far, J. */
    double taken() {
        double sum = 0;
        for (int m = 0; m < kappa.length; m++) {
            if (begun(m)) {
                sum += onset[m] * fall(last[m]) * (Math.min(kappa[m], last[m]) - 1);
            }
        }
        return sum;
    }

    /** The state after this one under a field. */
    SpreadState after(SpreadModel.Driven driven, boolean[] follows, double factor) {
        SpreadState next = copy();
        for (int m = 0; m < kappa.length; m++) {
            if (!follows[m]) {
                continue;
            }
            double k = factor * drive(driven, m);
            if (!(k > kappa[m])) {
                continue;
            }
            if (!begun(m)) {
                double sharp = sharper(driven.onset()[m], driven.capacity()[m]);
                next.sharper[m] = sharp;
                next.opened[m] = driven.tension()[m];
                next.onset[m] = driven.onset()[m] / (sharp * sharp);
                next.last[m] = last(next.onset[m], driven.capacity()[m]);
            }
            next.kappa[m] = Math.min(k, next.last[m]);
        }
        return next;
    }

    /** Smallest load factor at which anything of the chosen begins or goes on, for the ratios of a unit load. */
    double reach(SpreadModel.Driven driven, boolean[] chosen) {
        double least = Double.POSITIVE_INFINITY;
        for (int m = 0; m < kappa.length; m++) {
            if (chosen[m] && driven.ratio()[m] > 0 && !(begun(m) && kappa[m] >= last[m])) {
                least = Math.min(least, kappa[m] / driven(driven, m));
            }
        }
        return least;
    }
}
