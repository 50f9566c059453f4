// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.trim;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.ObjIntConsumer;
import java.util.stream.IntStream;

/**
 * Exact solutions of changed tubs by conjugate gradients on the nominal factor, several changes in step so that their
 * back-substitutions go together.
 *
 * <p>With z = K₀⁻¹ r of the residual r at hand, c ≤ c_low + zᵀr + Σ tr((C₀ C⁻¹ C₀ − C₀) G(z)) and c ≥ c_low = fᵀu + uᵀr:
 * the preconditioned residual that every step needs anyway is the certificate. Since K₀ z = r, no product with the
 * nominal matrix is needed: only the changed blocks are visited.
 */
final class Resolve {
    /** Vectors of so many changes are held at once. */
    private static final int TOGETHER = 16;

    private static final int MOST_STEPS = 400;

    private final LoadedTub tub;

    Resolve(LoadedTub tub) {
        this.tub = tub;
    }

    /**
     * A changed tub solved.
     *
     * @param compliance bounds on c, J
     * @param displacements u, the field that gives the lower end
     * @param work uᵀKu of that field, J
     * @param residual f − Ku of that field
     * @param steps back-substitutions it took
     */
    record Solved(Interval compliance, double[] displacements, double work, double[] residual, int steps) {}

    /** When an answer is good enough. */
    @FunctionalInterface
    interface Enough {
        boolean test(Interval compliance);
    }

    /** Stops at a width relative to the compliance. */
    static Enough within(double share) {
        return c -> c.high() - c.low() <= share * c.low();
    }

    /**
     * Where to begin.
     *
     * @param displacements u
     * @param nominalForces K₀ u
     */
    record Start(double[] displacements, double[] nominalForces) {}

    /** Solves one change from the nominal solution. */
    Solved solve(Change change, Enough enough) {
        return solve(change, new Start(tub.displacements(), tub.loads()), enough);
    }

    /** Solves one change from a displacement field at hand. */
    Solved solve(Change change, Start start, Enough enough) {
        Run run = new Run(change, start);
        advance(List.of(run), enough);
        return run.solved();
    }

    /** Solves many changes, answers in their order, without their fields, which would fill the memory. */
    List<Solved> solve(List<Change> changes, Enough enough) {
        List<Solved> result = new ArrayList<>();
        solve(
                changes,
                enough,
                (s, _) -> result.add(new Solved(s.compliance(), new double[0], s.work(), new double[0], s.steps())));
        return result;
    }

    /** Solves many changes and hands over each with its number, in their order. */
    void solve(List<Change> changes, Enough enough, ObjIntConsumer<Solved> solved) {
        for (int from = 0; from < changes.size(); from += TOGETHER) {
            List<Run> runs = changes.subList(from, Math.min(from + TOGETHER, changes.size())).stream()
                    .map(c -> new Run(c, new Start(tub.displacements(), tub.loads())))
                    .toList();
            advance(runs, enough);
            for (int k = 0; k < runs.size(); k++) {
                solved.accept(runs.get(k).solved(), from + k);
            }
        }
    }

    private void advance(List<Run> runs, Enough enough) {
        runs.parallelStream().forEach(Run::begin);
        List<Run> open = runs.stream().filter(r -> !r.change.isNothing()).toList();
        while (!open.isEmpty()) {
            if (Thread.currentThread().isInterrupted()) {
                throw new CancellationException("stopped while solving");
            }
            double[][] z = open.stream().map(r -> r.residual.clone()).toArray(double[][]::new);
            tub.substitute(z);
            List<Run> now = open;
            IntStream.range(0, z.length).parallel().forEach(k -> now.get(k).step(z[k], enough));
            open = open.stream().filter(r -> !r.done).toList();
        }
    }

    private final class Run {
        private final Change change;
        private double[] u;
        private double[] residual;
        private double[] direction = new double[0];
        /** K times the direction. */
        private double[] ofDirection = new double[0];

        private double before;
        private Interval bounds = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        private double work;
        private int steps;
        private boolean done;
        private final Map<Integer, double[]> weights = new java.util.TreeMap<>();

        Run(Change change, Start start) {
            this.change = change;
            u = start.displacements();
            residual = start.nominalForces();
        }

        /** Scales the start to be the best of its direction and forms the residual. */
        void begin() {
            if (change.isNothing()) {
                u = tub.displacements();
                bounds = new Interval(tub.compliance(), tub.compliance());
                work = tub.compliance();
                return;
            }
            change.laminates()
                    .forEach((b, c) -> weights.put(
                            b, Constitutive.minus(Constitutive.weighted(tub.laminate(b), c), tub.laminate(b))));
            double[] f = tub.loads();
            double[] forces = tub.forces(change, u);
            double q = LoadedTub.dot(f, u) / (LoadedTub.dot(u, residual) + LoadedTub.dot(u, forces));
            double[] scaled = new double[u.length];
            double[] left = new double[u.length];
            for (int i = 0; i < u.length; i++) {
                scaled[i] = q * u[i];
                left[i] = f[i] - q * (residual[i] + forces[i]);
            }
            u = scaled;
            residual = left;
        }

        void step(double[] z, Enough enough) {
            steps++;
            double rz = LoadedTub.dot(residual, z);
            double load = LoadedTub.dot(tub.loads(), u);
            double rest = LoadedTub.dot(u, residual);
            double low = load + rest;
            work = load - rest;
            // One visit gives the certificate and what the next step needs.
            double[] forces = new double[z.length];
            double high = low + rz + tub.forces(change, weights, z, forces);
            for (Map.Entry<Integer, Double> each : change.joints().entrySet()) {
                high += (1 / each.getValue() - 1) * tub.members().between(each.getKey(), z, z);
            }
            bounds = bounds.and(new Interval(low, high));
            if (enough.test(bounds) || steps >= MOST_STEPS || rz <= 1e-26 * tub.compliance()) {
                finish();
                return;
            }
            // K z = K₀ z + ΔK z, and K₀ z is the residual.
            double beta = direction.length == 0 ? 0 : rz / before;
            for (int i = 0; i < z.length; i++) {
                forces[i] += residual[i];
                if (beta != 0) {
                    z[i] += beta * direction[i];
                    forces[i] += beta * ofDirection[i];
                }
            }
            direction = z;
            ofDirection = forces;
            before = rz;
            double alpha = rz / LoadedTub.dot(direction, ofDirection);
            for (int i = 0; i < forces.length; i++) {
                u[i] += alpha * direction[i];
                residual[i] -= alpha * forces[i];
            }
            // The step raises 2fᵀu − uᵀKu by α rᵀz: the lower end is known before the next back-substitution.
            low += alpha * rz;
            work = 2 * (load + alpha * LoadedTub.dot(tub.loads(), direction)) - low;
            bounds = bounds.and(new Interval(low, high));
            if (enough.test(bounds)) {
                finish();
            }
        }

        private void finish() {
            done = true;
            direction = new double[0];
            ofDirection = new double[0];
        }

        Solved solved() {
            return new Solved(bounds, u, work, change.isNothing() ? new double[u.length] : residual, steps);
        }
    }
}
