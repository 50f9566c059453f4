// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.built;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What a shop wrote down while it built a tub; the same lines, without anything measured, are the plan.
 *
 * @param source name of the file, for messages
 * @param lines in the order of the file
 * @param issue of the pack the form came with; "" where it does not say
 * @param design fingerprint of the design of that pack, likewise
 */
public record BuiltTub(String source, List<Line> lines, String issue, String design) {
    /** What a line is about. */
    public enum Kind {
        /** A batch of material: what a square metre of it weighs, how thick it cures. */
        BATCH,
        /** A pattern, weighed when it is cut, without its backing. */
        PLY,
        /** A piece out of its mould, trimmed. */
        PIECE,
        /** The whole tub, bonded. */
        TUB,
        /** Something that is not as the plan has it. */
        DEVIATION,
        /** A deviation that was released, by whom. */
        CONCESSION;

        /** As it is written. */
        public String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * One line. What is not said is "" or empty.
     *
     * @param number in the file, from 1
     * @param kind what it is about
     * @param piece which
     * @param pattern which
     * @param material which
     * @param batch which
     * @param planned mass, kg
     * @param mass weighed, kg
     * @param plannedAreal mass per area, kg/m²
     * @param areal measured, kg/m²
     * @param plannedThickness m
     * @param thickness measured, m
     * @param words what is to be said
     * @param released by whom
     */
    public record Line(
            int number,
            Kind kind,
            String piece,
            String pattern,
            String material,
            String batch,
            OptionalDouble planned,
            OptionalDouble mass,
            OptionalDouble plannedAreal,
            OptionalDouble areal,
            OptionalDouble plannedThickness,
            OptionalDouble thickness,
            String words,
            String released) {
        /** Whether somebody wrote something into it. */
        public boolean filled() {
            return !batch.isEmpty()
                    || mass.isPresent()
                    || areal.isPresent()
                    || thickness.isPresent()
                    || !words.isEmpty()
                    || !released.isEmpty();
        }
    }

    public BuiltTub {
        lines = List.copyOf(lines);
    }

    /** Lines of a kind. */
    public List<Line> of(Kind kind) {
        return lines.stream().filter(l -> l.kind == kind).toList();
    }
}
