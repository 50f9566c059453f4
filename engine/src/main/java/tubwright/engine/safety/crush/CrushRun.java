// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tubwright.engine.strength.Check;

/**
 * A mass stopped by a row of crush sections: m x″ = −F(x), the front section first. F is taken linear between stations, so
 * that energy is exact; between two stations the deceleration counts as constant for the time. The structure itself has no
 * mass, nothing turns, and the wall does not give.
 */
public final class CrushRun {
    /** Standard gravity, m/s². */
    public static final double GRAVITY = 9.80665;

    private static final int STATIONS = 400;

    private CrushRun() {}

    /**
     * How the front of the structure starts to crush.
     *
     * @param peakOverSteady first peak over the steady force of the tip; one where a trigger does away with it; empty where it
     *     is not known
     * @param source why
     */
    public record Trigger(OptionalDouble peakOverSteady, String source) {
        public Trigger {
            if (peakOverSteady.isPresent() && !(peakOverSteady.getAsDouble() >= 1)) {
                throw new IllegalArgumentException("a first peak is at least the steady force: one or more");
            }
        }
    }

    /**
     * A moment.
     *
     * @param time s
     * @param stroke m
     * @param speed m/s
     * @param force N
     */
    public record Moment(double time, double stroke, double speed, double force) {}

    /**
     * What an impact comes to.
     *
     * @param impact what came
     * @param history from the first touch to rest, or until the structure is solid
     * @param sectionEnergies J, one a section
     * @param speedLeft m/s when all stroke is used; 0 where it stops before
     * @param firstPeak N, at the first touch
     * @param notes where it may begin to crush other than at its tip, and the like
     * @param notChecked what is missing: no pass
     */
    public record Answer(
            Impact impact,
            List<Moment> history,
            List<Double> sectionEnergies,
            double speedLeft,
            double firstPeak,
            List<String> notes,
            List<Check.NotChecked> notChecked) {
        public Answer {
            history = List.copyOf(history);
            sectionEnergies = List.copyOf(sectionEnergies);
            notes = List.copyOf(notes);
            notChecked = List.copyOf(notChecked);
        }

        /** m. */
        public double stroke() {
            return history.getLast().stroke();
        }

        /** s. */
        public double time() {
            return history.getLast().time();
        }

        /** Taken, J. */
        public double energy() {
            return sectionEnergies.stream().mapToDouble(e -> e).sum();
        }

        /** Highest force, the first peak included, N. */
        public double peakForce() {
            return Math.max(
                    firstPeak, history.stream().mapToDouble(Moment::force).max().orElse(0));
        }

        /** Mean force over the stroke, N. */
        public double meanForce() {
            return energy() / stroke();
        }

        /** Mean over peak force: one is a structure that loads the cell evenly. */
        public double efficiency() {
            return meanForce() / peakForce();
        }

        /** Whether a limit is met: a reserve factor of limit over value. */
        public Check.Reserve against(CrushLimit limit) {
            double m = impact.mass();
            double[] pair = switch (limit) {
                case CrushLimit.Mean l -> new double[] {meanForce() / m, l.deceleration()};
                case CrushLimit.Peak l -> new double[] {peakForce() / m, l.deceleration()};
                case CrushLimit.PeakWithinStroke l -> new double[] {peak(l.stroke(), 1e300) / m, l.deceleration()};
                case CrushLimit.PeakWithinEnergy l -> new double[] {peak(1e300, l.energy()) / m, l.deceleration()};
                case CrushLimit.MeanWithinStroke l -> new double[] {mean(l.stroke()) / m, l.deceleration()};
                case CrushLimit.Force l -> new double[] {peakForce(), l.force()};
                case CrushLimit.TimeAbove l -> new double[] {timeAbove(l.deceleration()), l.seconds()};
            };
            // What is left when the structure is solid stops at once: no limit on deceleration is met then.
            double value = speedLeft > 0 ? Double.POSITIVE_INFINITY : pair[0];
            return Check.proportional(limit.words(), value, pair[1], "m x\" = -F(x), rigid wall");
        }

        /** Whether what carries the structure bears it: bulkhead, mounts. */
        public Check.Reserve bornBy(String what, double strength) {
            return Check.proportional(what, peakForce(), strength, "highest crush force");
        }

        private double mean(double within) {
            double work = 0;
            double at = 0;
            for (int i = 0; i + 1 < history.size() && at < within; i++) {
                Moment a = history.get(i);
                Moment b = history.get(i + 1);
                double step = Math.min(b.stroke(), within) - a.stroke();
                double share = b.stroke() > a.stroke() ? step / (b.stroke() - a.stroke()) : 0;
                work += (a.force() + 0.5 * share * (b.force() - a.force())) * step;
                at = b.stroke();
            }
            return work / Math.min(within, stroke());
        }

        private double peak(double stroke, double energy) {
            double peak = firstPeak;
            double taken = 0;
            for (int i = 0; i < history.size() && history.get(i).stroke() <= stroke && taken <= energy; i++) {
                peak = Math.max(peak, history.get(i).force());
                if (i + 1 < history.size()) {
                    Moment a = history.get(i);
                    Moment b = history.get(i + 1);
                    taken += 0.5 * (a.force() + b.force()) * (b.stroke() - a.stroke());
                }
            }
            return peak;
        }

        private double timeAbove(double deceleration) {
            double sum = 0;
            for (int i = 0; i + 1 < history.size(); i++) {
                Moment a = history.get(i);
                Moment b = history.get(i + 1);
                if (0.5 * (a.force() + b.force()) / impact.mass() > deceleration) {
                    sum += b.time() - a.time();
                }
            }
            return sum;
        }
    }

    /**
     * Runs it.
     *
     * @param sections from the end that is hit
     * @param trigger of the first one
     * @throws IllegalArgumentException without a section
     */
    public static Answer of(List<CrushSection> sections, Trigger trigger, Impact impact) {
        if (sections.isEmpty()) {
            throw new IllegalArgumentException("a crush structure has at least one section");
        }
        List<Check.NotChecked> notChecked = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        gaps(sections, trigger, notChecked);
        order(sections, notes);
        List<Moment> history = new ArrayList<>();
        List<Double> energies = new ArrayList<>();
        double tip = sections.getFirst().force(0);
        Moment now = new Moment(0, 0, impact.speed(), tip);
        history.add(now);
        boolean stopped = false;
        for (CrushSection section : sections) {
            double energy = 0;
            double step = section.stroke() / STATIONS;
            // Where one section ends and the next begins the force may jump.
            if (!stopped && now.force() != section.force(0)) {
                now = new Moment(now.time(), now.stroke(), now.speed(), section.force(0));
                history.add(now);
            }
            for (int k = 0; k < STATIONS && !stopped; k++) {
                double before = section.force((double) k / STATIONS);
                double after = section.force((k + 1.0) / STATIONS);
                double left = 0.5 * impact.mass() * now.speed() * now.speed();
                double work = 0.5 * (before + after) * step;
                double share = 1;
                if (work >= left) {
                    share = partOf(before, after, step, left);
                    stopped = true;
                }
                double force = before + share * (after - before);
                double taken = stopped ? left : work;
                double speed = stopped ? 0 : Math.sqrt(2 * (left - work) / impact.mass());
                double dx = share * step;
                now = new Moment(now.time() + 2 * dx / (now.speed() + speed), now.stroke() + dx, speed, force);
                history.add(now);
                energy += taken;
            }
            energies.add(energy);
        }
        return new Answer(
                impact,
                history,
                energies,
                stopped ? 0 : now.speed(),
                tip * trigger.peakOverSteady().orElse(1),
                notes,
                notChecked);
    }

    /** Share of a step after which a linear force has done so much work. */
    private static double partOf(double before, double after, double step, double work) {
        double slope = (after - before) / step;
        double x = 2 * work / (before + Math.sqrt(before * before + 2 * slope * work));
        return Math.min(1, x / step);
    }

    private static void gaps(List<CrushSection> sections, Trigger trigger, List<Check.NotChecked> notChecked) {
        if (trigger.peakOverSteady().isEmpty()) {
            notChecked.add(new Check.NotChecked(
                    "first peak", List.of("the trigger, or the first peak over the steady force from a test")));
        }
        sections.stream()
                .filter(s -> s.data().dynamicOverStatic().isEmpty())
                .map(s -> s.data().name())
                .distinct()
                .forEach(name -> notChecked.add(new Check.NotChecked(
                        "crush of " + name + " at speed",
                        List.of("force at speed over quasi-static force (quasi-static tests may overstate the energy of"
                                + " carbon structures by much: Feraboli et al. 2007)"))));
    }

    /** A structure crushes at its tip first only where the force does not fall behind it. */
    private static void order(List<CrushSection> sections, List<String> notes) {
        double most = 0;
        for (CrushSection s : sections) {
            double least = Math.min(s.force(0), s.force(1));
            if (least < 0.999 * most) {
                notes.add(String.format(
                        Locale.ROOT,
                        "%s crushes at %.1f kN, less than the %.1f kN of what lies before it: it may give way first",
                        s.name(),
                        1e-3 * least,
                        1e-3 * most));
            }
            most = Math.max(most, Math.max(s.force(0), s.force(1)));
        }
    }
}
