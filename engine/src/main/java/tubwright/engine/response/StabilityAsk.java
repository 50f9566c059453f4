// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.response;

import java.util.List;
import tubwright.engine.structure.Case;

/**
 * What of stability and vibration to answer.
 *
 * @param factors lowest buckling factors of every case; 0 for none
 * @param frequencies lowest natural frequencies of the free body, its rigid motions not counted; 0 for none
 * @param hold directions held at hardpoints in which the frequencies are told too; empty to tell those of the free body only
 */
public record StabilityAsk(int factors, int frequencies, List<Case.Support> hold) {
    /** Nothing. */
    public static final StabilityAsk NONE = new StabilityAsk(0, 0, List.of());

    /** Three factors of every case, ten frequencies of the free body. */
    public static final StabilityAsk USUAL = new StabilityAsk(3, 10, List.of());

    public StabilityAsk {
        hold = List.copyOf(hold);
    }

    /** Whether anything is asked. */
    public boolean any() {
        return factors > 0 || frequencies > 0;
    }

    /** This, or the usual where this asks nothing. */
    public StabilityAsk orUsual() {
        return any() ? this : USUAL;
    }
}
