// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Heat through the thickness of layers on a tool while they cure:
 * ρc ∂T/∂t = ∂/∂z(k ∂T/∂z) + H ∂α/∂t, with H the heat of reaction per volume (Loos and Springer 1983).
 *
 * <p>Finite volumes with the conductances of two half cells in series, Crank–Nicolson in time; the degree of cure goes by
 * the trapezoidal rule with the temperature, found by repetition. Second order in cell and step.
 */
public final class CureOven {
    private static final int MOST_REPETITIONS = 8;
    private static final double ENOUGH = 1e-6;

    private final List<HeatLayer> layers;
    private final double step;
    private final double kept;
    private final int[] layerOfCell;
    private final double[] heights;
    private final double[] capacity;
    private final double[] between;
    private final double toTool;
    private final double toBag;

    /**
     * How finely to compute.
     *
     * @param step longest time step, s
     * @param cell largest cell, m; each layer has at least four cells
     * @param kept moments are kept so far apart, s
     */
    public record Fineness(double step, double cell, double kept) {
        /** Converged to a tenth of a kelvin for places of a few centimetres. */
        public static final Fineness USUAL = new Fineness(4, 0.5e-3, 60);
    }

    /**
     * @param layers from the tool's outer face to the bag
     * @param toolSide how heat enters at the first face
     * @param bagSide and at the last
     */
    public CureOven(List<HeatLayer> layers, Face toolSide, Face bagSide, Fineness fineness) {
        if (layers.isEmpty()) {
            throw new CureException("there is nothing to cure: no layers");
        }
        this.layers = List.copyOf(layers);
        this.step = fineness.step;
        this.kept = fineness.kept;
        List<double[]> cells = new ArrayList<>();
        for (int l = 0; l < layers.size(); l++) {
            int n = Math.max(4, (int) Math.ceil(layers.get(l).thickness() / fineness.cell - 1e-9));
            for (int i = 0; i < n; i++) {
                cells.add(new double[] {l, layers.get(l).thickness() / n});
            }
        }
        int n = cells.size();
        layerOfCell = new int[n];
        heights = new double[n];
        capacity = new double[n];
        double[] half = new double[n];
        double z = 0;
        for (int i = 0; i < n; i++) {
            double size = cells.get(i)[1];
            layerOfCell[i] = (int) cells.get(i)[0];
            HeatProperties p = layers.get(layerOfCell[i]).properties();
            heights[i] = z + size / 2;
            z += size;
            capacity[i] = p.density() * p.specificHeat() * size;
            half[i] = 2 * p.conductivity() / size;
        }
        between = new double[Math.max(0, n - 1)];
        for (int i = 0; i + 1 < n; i++) {
            between[i] = half[i] * half[i + 1] / (half[i] + half[i + 1]);
        }
        toTool = toolSide.conductance(half[0]);
        toBag = bagSide.conductance(half[n - 1]);
    }

    /**
     * Runs a cycle.
     *
     * @throws CureException if a hold waits for ever
     */
    public CureHistory run(Cycle cycle) {
        return new Run(cycle).history();
    }

    /** One run: the fields as they change. */
    private final class Run {
        private final int n = heights.length;
        private final CycleClock clock;
        private final double[] temperature = new double[n];
        private final double[] degree = new double[n];
        private final double[] next = new double[n];
        private final double[] nextDegree = new double[n];
        private final double[] sweep = new double[n];
        private final double[] known = new double[n];
        private final double[] rates = new double[n];
        private final double[] heat = new double[n];
        private final boolean[] watched = new boolean[n];
        private final List<CureHistory.Moment> moments = new ArrayList<>();
        private CureHistory.Peak peak;
        private double time;

        Run(Cycle cycle) {
            clock = new CycleClock(cycle);
            Arrays.fill(temperature, cycle.start());
            boolean any = layers.stream().anyMatch(l -> l.reaction().isPresent());
            for (int i = 0; i < n; i++) {
                HeatLayer layer = layers.get(layerOfCell[i]);
                watched[i] = !any || layer.reaction().isPresent();
                degree[i] = layer.reaction().map(HeatLayer.Reaction::start).orElse(0.0);
                int cell = i;
                layer.reaction().ifPresent(r -> heat[cell] = r.heat() * sizeOf(cell));
            }
            peak = new CureHistory.Peak(cycle.start(), heights[0], 0);
        }

        private double sizeOf(int cell) {
            HeatProperties p = layers.get(layerOfCell[cell]).properties();
            return capacity[cell] / (p.density() * p.specificHeat());
        }

        CureHistory history() {
            keep();
            double due = kept;
            while (!clock.finished()) {
                double h = clock.straight(step);
                double before = clock.air();
                boolean held = clock.holding();
                int number = clock.number();
                clock.advance(h, lagging());
                advance(h, before, clock.air());
                time += h;
                lookForThePeak();
                if (time >= due || clock.holding() != held || clock.number() != number || clock.finished()) {
                    keep();
                    due = time + kept;
                }
            }
            return new CureHistory(heights.clone(), layerOfCell.clone(), layers, List.copyOf(moments), peak, time);
        }

        private void advance(double h, double airBefore, double airAfter) {
            for (int i = 0; i < n; i++) {
                rates[i] = rate(i, degree[i], temperature[i]);
                next[i] = temperature[i];
                nextDegree[i] = Math.min(1, degree[i] + h * rates[i]);
            }
            for (int repetition = 0; repetition < MOST_REPETITIONS; repetition++) {
                conduct(h, airBefore, airAfter);
                double change = 0;
                for (int i = 0; i < n; i++) {
                    double better = Math.min(1, degree[i] + h / 2 * (rates[i] + rate(i, nextDegree[i], next[i])));
                    change = Math.max(change, Math.abs(better - nextDegree[i]));
                    nextDegree[i] = better;
                }
                if (change < ENOUGH && repetition > 0) {
                    break;
                }
            }
            System.arraycopy(next, 0, temperature, 0, n);
            System.arraycopy(nextDegree, 0, degree, 0, n);
        }

        /** One Crank–Nicolson step of conduction with the heat of the present guess, by elimination (Thomas). */
        private void conduct(double h, double airBefore, double airAfter) {
            for (int i = 0; i < n; i++) {
                double left = i == 0 ? toTool : between[i - 1];
                double right = i == n - 1 ? toBag : between[i];
                double below = i == 0 ? airBefore : temperature[i - 1];
                double above = i == n - 1 ? airBefore : temperature[i + 1];
                known[i] = capacity[i] / h * temperature[i]
                        + heat[i] * (nextDegree[i] - degree[i]) / h
                        + (left * (below - temperature[i]) + right * (above - temperature[i])) / 2
                        + (i == 0 ? left * airAfter / 2 : 0)
                        + (i == n - 1 ? right * airAfter / 2 : 0);
                double diagonal = capacity[i] / h + (left + right) / 2;
                if (i > 0) {
                    double factor = between[i - 1] / 2 / sweep[i - 1];
                    diagonal -= factor * between[i - 1] / 2;
                    known[i] += factor * known[i - 1];
                }
                sweep[i] = diagonal;
            }
            for (int i = n - 1; i >= 0; i--) {
                double from = i == n - 1 ? 0 : between[i] / 2 * next[i + 1];
                next[i] = (known[i] + from) / sweep[i];
            }
        }

        private double rate(int cell, double alpha, double kelvin) {
            return heat[cell] == 0
                    ? 0
                    : layers.get(layerOfCell[cell])
                            .reaction()
                            .map(r -> r.law().rate(alpha, kelvin))
                            .orElse(0.0);
        }

        private double lagging() {
            double least = Double.POSITIVE_INFINITY;
            for (int i = 0; i < n; i++) {
                least = watched[i] ? Math.min(least, temperature[i]) : least;
            }
            return least;
        }

        private void lookForThePeak() {
            for (int i = 0; i < n; i++) {
                if (watched[i] && temperature[i] > peak.temperature()) {
                    peak = new CureHistory.Peak(temperature[i], heights[i], time);
                }
            }
        }

        private void keep() {
            moments.add(new CureHistory.Moment(
                    time, clock.air(), clock.number(), clock.holding(), temperature.clone(), degree.clone()));
        }
    }
}
