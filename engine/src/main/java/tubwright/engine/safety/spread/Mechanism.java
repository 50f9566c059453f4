// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.safety.spread;

import java.util.List;

/**
 * One way in which a layer gives way.
 *
 * @param layer place in the laminate, 0 outside
 * @param kind what gives way
 * @param label of the layer, for a reader
 * @param tension energy per area in tension (mode I between fibres), J/m²; not a number where it is not known
 * @param compression the same in compression (mode II between fibres)
 * @param perVolume whether the energy is spent in rows of cracks as far apart as the layer is thick, or in one crack an element
 * @param needs what is missing, in words; empty if nothing is
 */
record Mechanism(
        int layer, Kind kind, String label, double tension, double compression, boolean perVolume, List<String> needs) {
    Mechanism {
        needs = List.copyOf(needs);
    }

    /** What gives way. */
    enum Kind {
        FIBRE,
        WEFT,
        MATRIX,
        YIELD,
        CORE_SHEAR;

        /** Whether it carries load: its loss shows in the picture of what failed. */
        boolean carries() {
            return this != MATRIX;
        }
    }

    /** In words, by the sign with which it began. */
    String words(boolean inTension) {
        return switch (kind) {
            case FIBRE -> inTension ? "fibres break in tension" : "fibres crush in compression";
            case WEFT -> inTension ? "weft breaks in tension" : "weft crushes in compression";
            case MATRIX -> "cracks between fibres";
            case YIELD -> "yields";
            case CORE_SHEAR -> "shears";
        };
    }

    /** Whether the run has to end where it would begin: load goes and nobody knows how fast. */
    boolean ends() {
        return !needs.isEmpty() && kind.carries();
    }
}
