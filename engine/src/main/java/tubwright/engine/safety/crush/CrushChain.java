// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.crush;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A car that does not stay whole: masses in a row, the first one behind the crush structure, each tied to the one before it by a
 * spring that breaks at a force. What breaks off flies on with its own kinetic energy, which the crush structure need not take.
 *
 * <p>Equations of motion m x″ = Σ forces by the velocity form of Störmer and Verlet, steps a hundredth of the shortest period or
 * less. The crush force pushes only while the front goes forward; at rest it holds against what still pushes from behind. The
 * springs have no damping. Momentum and energy are booked beside and handed out with the answer.
 */
public final class CrushChain {
    private static final int MOST_STEPS = 4_000_000;

    /** Moments kept for a picture. */
    private static final int KEPT = 600;

    private CrushChain() {}

    /**
     * A mass of the row.
     *
     * @param name for the reader
     * @param mass kg
     * @param stiffness of its tie to the one before, N/m; does not count for the first
     * @param strength at which that tie breaks, N; infinite where it never does
     */
    public record Body(String name, double mass, double stiffness, double strength) {
        public Body {
            if (!(mass > 0) || !(stiffness > 0) || !(strength > 0) || !Double.isFinite(mass + stiffness)) {
                throw new IllegalArgumentException(name + ": mass, stiffness and strength are greater than zero");
            }
        }
    }

    /**
     * A tie that broke; all behind it goes with it.
     *
     * @param name of the first mass behind the tie
     * @param time s
     * @param speed m/s at which it then goes on
     */
    public record Parted(String name, double time, double speed) {}

    /**
     * What happened.
     *
     * @param history of the first mass: time, stroke, speed, crush force
     * @param parted ties that broke, in their order
     * @param peakTies largest force in each tie, N; the first tie belongs to the second mass
     * @param crushed energy the structure took, J
     * @param kinetic energy left in all masses, J
     * @param sprung energy in ties that hold, J
     * @param broken energy that was in ties when they broke, J
     * @param impulse ∫F dt of the crush force, N·s
     * @param momentumLost of all masses together, N·s
     * @param solid whether the stroke was used up before what hangs together stood still
     */
    public record Answer(
            List<CrushRun.Moment> history,
            List<Parted> parted,
            double[] peakTies,
            double crushed,
            double kinetic,
            double sprung,
            double broken,
            double impulse,
            double momentumLost,
            boolean solid) {
        public Answer {
            history = List.copyOf(history);
            parted = List.copyOf(parted);
        }

        /** m. */
        public double stroke() {
            return history.getLast().stroke();
        }

        /** All energy that came, J: crushed, kept, sprung and broken. */
        public double energy() {
            return crushed + kinetic + sprung + broken;
        }

        /** What broke off under a name. */
        public Optional<Parted> parted(String name) {
            return parted.stream().filter(p -> p.name().equals(name)).findFirst();
        }
    }

    /**
     * Runs it until what still hangs together no longer goes forward, or the stroke is used up.
     *
     * @param sections from the end that is hit
     * @param bodies from the front; at least one
     * @param speed m/s
     */
    public static Answer of(List<CrushSection> sections, List<Body> bodies, double speed) {
        if (sections.isEmpty() || bodies.isEmpty() || !(speed > 0)) {
            throw new IllegalArgumentException("a chain has a crush section, a mass and a speed above zero");
        }
        return new Run(new CrushLaw(sections), bodies, speed).answer();
    }

    private static final class Run {
        private final CrushLaw law;
        private final List<Body> bodies;
        private final int n;
        private final double[] x;
        private final double[] v;
        private final double[] a;
        private final double[] peak;
        private final List<Parted> parted = new ArrayList<>();
        private final List<CrushRun.Moment> history = new ArrayList<>();
        private final double start;
        private final double step;
        /** Masses that still hang on the front, it included. */
        private int held;

        private double time;
        private double crushed;
        private double broken;
        private double impulse;
        private double force;

        Run(CrushLaw law, List<Body> bodies, double speed) {
            this.law = law;
            this.bodies = bodies;
            n = bodies.size();
            held = n;
            x = new double[n];
            v = new double[n];
            a = new double[n];
            peak = new double[Math.max(0, n - 1)];
            Arrays.fill(v, speed);
            start = bodies.stream().mapToDouble(Body::mass).sum() * speed;
            double fastest = 0;
            for (int i = 1; i < n; i++) {
                double lighter =
                        Math.min(bodies.get(i).mass(), bodies.get(i - 1).mass());
                fastest = Math.max(fastest, Math.sqrt(4 * bodies.get(i).stiffness() / lighter));
            }
            double shortest = fastest > 0 ? 2 * Math.PI / fastest : Double.POSITIVE_INFINITY;
            step = Math.min(shortest / 200, law.stroke() / speed / 20_000);
        }

        Answer answer() {
            accelerate();
            history.add(new CrushRun.Moment(0, 0, v[0], force));
            boolean solid = false;
            int every = 1;
            for (int k = 1; k <= MOST_STEPS; k++) {
                move();
                if (k % every == 0) {
                    history.add(new CrushRun.Moment(time, x[0], v[0], force));
                    if (history.size() > 2 * KEPT) {
                        thin();
                        every *= 2;
                    }
                }
                solid = x[0] >= law.stroke();
                if (solid || momentum(held) <= 0) {
                    break;
                }
            }
            history.add(new CrushRun.Moment(time, x[0], v[0], force));
            double kinetic = 0;
            double sprung = 0;
            for (int i = 0; i < n; i++) {
                kinetic += 0.5 * bodies.get(i).mass() * v[i] * v[i];
                if (i > 0 && i < held) {
                    sprung += energy(i);
                }
            }
            return new Answer(
                    history,
                    parted,
                    peak,
                    crushed,
                    kinetic,
                    sprung,
                    broken,
                    impulse,
                    start - momentum(n),
                    solid && v[0] > 0);
        }

        /** One step; the front that would turn back stands instead. */
        private void move() {
            double before = force;
            double from = x[0];
            for (int i = 0; i < n; i++) {
                x[i] += step * v[i] + 0.5 * step * step * a[i];
                v[i] += 0.5 * step * a[i];
            }
            if (x[0] < from) {
                x[0] = from;
            }
            accelerate();
            for (int i = 0; i < n; i++) {
                v[i] += 0.5 * step * a[i];
            }
            crushed += 0.5 * (before + force) * (x[0] - from);
            double pushed = 0.5 * (before + force) * step;
            if (v[0] < 0 && pushed > 0) {
                // The crush force ends within the step: it stops the front and does not throw it back.
                pushed = Math.max(0, pushed + bodies.getFirst().mass() * v[0]);
                v[0] = 0;
                accelerate();
            }
            impulse += pushed;
            time += step;
            tear();
        }

        private void accelerate() {
            double[] f = new double[n];
            for (int i = 1; i < held; i++) {
                double push = bodies.get(i).stiffness() * (x[i] - x[i - 1]);
                f[i] -= push;
                f[i - 1] += push;
            }
            double most = law.force(x[0]);
            // At rest it gives back no more than what pushes.
            force = v[0] > 0 ? most : Math.clamp(f[0], 0, most);
            f[0] -= force;
            for (int i = 0; i < n; i++) {
                a[i] = f[i] / bodies.get(i).mass();
            }
        }

        private void tear() {
            for (int i = 1; i < held; i++) {
                double push = Math.abs(bodies.get(i).stiffness() * (x[i] - x[i - 1]));
                peak[i - 1] = Math.max(peak[i - 1], push);
                if (push > bodies.get(i).strength()) {
                    for (int j = i; j < held; j++) {
                        broken += energy(j);
                    }
                    parted.add(new Parted(bodies.get(i).name(), time, v[i]));
                    held = i;
                    accelerate();
                }
            }
        }

        private double energy(int tie) {
            double s = x[tie] - x[tie - 1];
            return 0.5 * bodies.get(tie).stiffness() * s * s;
        }

        private double momentum(int of) {
            double sum = 0;
            for (int i = 0; i < of; i++) {
                sum += bodies.get(i).mass() * v[i];
            }
            return sum;
        }

        private void thin() {
            for (int i = history.size() - 2; i > 0; i -= 2) {
                history.remove(i);
            }
        }
    }
}
