// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.Comparator;
import java.util.List;

/**
 * A load followed until little is left.
 *
 * @param steps in their order, the first one at nought
 * @param events what began to fail, in that order
 * @param ended why it ends there, in words
 * @param goesRound whether the load went on growing past this place: its largest value is then no strength
 * @param needs what could not be followed and what it needs, each once
 * @param lowered where strength was lowered because elements are too large for the fracture energy, in words
 * @param failed of each shell looked at, share of the stiffness of its worst load-carrying mechanism that is lost
 * @param cracked the same of cracks between fibres
 */
public record SpreadAnswer(
        List<Step> steps,
        List<Event> events,
        String ended,
        boolean goesRound,
        List<String> needs,
        List<String> lowered,
        double[] failed,
        double[] cracked) {
    public SpreadAnswer {
        steps = List.copyOf(steps);
        events = List.copyOf(events);
        needs = List.copyOf(needs);
        lowered = List.copyOf(lowered);
    }

    /**
     * A state in balance.
     *
     * @param factor on the load
     * @param movement of the load on its own way, f·u for a load factor of one, J
     * @param taken energy that mechanisms have taken, by their laws, J
     * @param released energy that is neither in the structure nor was ever given back, by the work of the load, J
     * @param imbalance largest force out of balance over the largest force in the structure
     * @param rounds solutions it took
     * @param settled whether the imbalance came below what is asked
     */
    public record Step(
            double factor,
            double movement,
            double taken,
            double released,
            double imbalance,
            int rounds,
            boolean settled) {}

    /**
     * Something that began to fail.
     *
     * @param zone where
     * @param what layer and manner, in words
     * @param factor on the load then
     * @param movement then, J
     * @param place of the first, m
     * @param share of the elements (points of a joint) of that zone and layer that had begun in the end
     * @param gone of those that had failed altogether
     */
    public record Event(
            String zone, String what, double factor, double movement, double[] place, double share, double gone) {}

    /** The load factor at which the first thing begins. */
    public double first() {
        return events.isEmpty() ? Double.POSITIVE_INFINITY : events.getFirst().factor();
    }

    /** The step that bears most. */
    public Step peak() {
        return steps.stream().max(Comparator.comparingDouble(Step::factor)).orElseThrow();
    }

    /** Largest difference between the energy taken by the laws and that released by the work, as a share of the latter. */
    public double energyGap() {
        Step end = steps.getLast();
        return end.released() > 0 ? Math.abs(end.taken() - end.released()) / end.released() : 0;
    }
}
