// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.strength;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tubwright.engine.laminate.Climate;
import tubwright.engine.laminate.Laminate;
import tubwright.engine.laminate.LaminateResponse;
import tubwright.engine.laminate.Layer;

/**
 * Failure of a laminate ply by ply: what has failed is softened, the rest is loaded anew, until nothing is left (Kaw 2006,
 * section 5.2). The laminate as it is after each step is loaded from nothing; there is no memory but what failed.
 * It ends where the remainder is a mechanism under this load.
 *
 * @param steps in the order of failure; a factor lower than the one before means that the step follows at once
 * @param ultimateFactor largest factor on the load the laminate bears at any step
 * @param notChecked layers that lack data; they are taken never to fail
 */
public record LastPlyFailure(List<Step> steps, double ultimateFactor, List<Check.NotChecked> notChecked) {

    /**
     * One step.
     *
     * @param factor on the load
     * @param findings what fails together, at least one
     */
    public record Step(double factor, List<PlyFinding> findings) {}

    /** A laminate this many times as soft under the load as the whole one has become a mechanism and bears nothing. */
    private static final double MECHANISM = 1000;

    private enum State {
        WHOLE,
        CRACKED,
        GONE
    }

    /**
     * Under growing resultants.
     *
     * @param resultants (Nx, Ny, Nxy, Mx, My, Mxy) about the laminate's reference surface, N/m and N, mechanical
     * @param climate change since the stress-free state
     */
    public static LastPlyFailure of(
            Laminate laminate, double[] resultants, Climate climate, LayerCriteria criteria, Discount discount) {
        List<Optional<PreparedCriterion>> prepared = PlyStresses.prepare(laminate, criteria);
        State[] states = new State[prepared.size()];
        java.util.Arrays.fill(states, State.WHOLE);
        List<Step> steps = new ArrayList<>();
        double ultimate = 0;
        double yieldsFrom = MECHANISM * work(laminate, resultants);
        while (true) {
            Laminate present = softened(laminate, states);
            List<PlyFinding> next = next(present, resultants, climate, prepared, states);
            if (next.isEmpty() || work(present, resultants) > yieldsFrom) {
                break;
            }
            double factor = next.getFirst().failure().reserveFactor();
            steps.add(new Step(factor, next));
            ultimate = Math.max(ultimate, factor);
            for (PlyFinding finding : next) {
                boolean all = discount == Discount.WHOLE_PLY || isFibre(finding.failure());
                states[finding.index()] = all ? State.GONE : State.CRACKED;
            }
        }
        boolean bearsForEver = steps.isEmpty();
        return new LastPlyFailure(
                List.copyOf(steps),
                bearsForEver ? Double.POSITIVE_INFINITY : ultimate,
                PlyStresses.notChecked(prepared));
    }

    /** Work of the resultants on their own deformation, J/m². */
    private static double work(Laminate laminate, double[] resultants) {
        double[] strains = LaminateResponse.underResultants(laminate, resultants, Climate.NONE)
                .strains();
        double work = 0;
        for (int k = 0; k < 6; k++) {
            work += strains[k] * resultants[k];
        }
        return work;
    }

    private static List<PlyFinding> next(
            Laminate laminate,
            double[] resultants,
            Climate climate,
            List<Optional<PreparedCriterion>> prepared,
            State[] states) {
        PlyStresses stresses = new PlyStresses(laminate, resultants, climate);
        List<PlyFinding> found = new ArrayList<>();
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < states.length; i++) {
            if (states[i] != State.GONE && prepared.get(i).orElse(null) instanceof PlyCriterion criterion) {
                Optional<PlyFinding> finding = stresses.earliest(i, criterion, true);
                if (states[i] == State.WHOLE) {
                    Optional<PlyFinding> crack = stresses.earliest(i, criterion, false);
                    finding = factor(crack) < factor(finding) ? crack : finding;
                }
                finding.ifPresent(found::add);
                smallest = Math.min(smallest, factor(finding));
            }
        }
        double together = smallest * (1 + 1e-9);
        return found.stream()
                .filter(f -> f.failure().reserveFactor() <= together)
                .toList();
    }

    private static double factor(Optional<PlyFinding> finding) {
        return finding.map(f -> f.failure().reserveFactor()).orElse(Double.POSITIVE_INFINITY);
    }

    private static boolean isFibre(PlyFailure failure) {
        return switch (failure) {
            case PlyFailure.Reached reached -> reached.mode().isFibre();
            case PlyFailure.ByResidualStress broken -> broken.mode().isFibre();
            case PlyFailure.Never _ -> false;
        };
    }

    private static Laminate softened(Laminate laminate, State[] states) {
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < states.length; i++) {
            Layer layer = laminate.layers().get(i);
            layers.add(
                    switch (states[i]) {
                        case WHOLE -> layer;
                        case CRACKED ->
                            new Layer(
                                    Discount.cracked(layer.material()), layer.thickness(), layer.angle(), layer.role());
                        case GONE ->
                            new Layer(Discount.gone(layer.material()), layer.thickness(), layer.angle(), layer.role());
                    });
        }
        return new Laminate(layers, laminate.reference());
    }
}
