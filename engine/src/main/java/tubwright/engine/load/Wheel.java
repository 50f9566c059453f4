// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.load;

import java.util.Optional;

/**
 * A wheel with its tyre, hub and upright, and what holds it.
 *
 * @param name "front L"
 * @param front true on the front axle
 * @param left true on the left
 * @param contact middle of the tyre's contact with the road, m
 * @param hub middle of the wheel, m
 * @param mass of wheel, tyre, hub and upright, kg: unsprung
 * @param held by a corner of links, or
 * @param carrier by a body of this name, rigidly, where no links are given
 */
public record Wheel(
        String name,
        boolean front,
        boolean left,
        double[] contact,
        double[] hub,
        double mass,
        Optional<Corner> held,
        Optional<String> carrier) {
    public Wheel {
        if (!(mass >= 0)) {
            throw new LoadException("the wheel '" + name + "' has a negative mass", "give what it weighs, or 0 kg");
        }
        if (held.isEmpty() && carrier.isEmpty()) {
            throw new LoadException(
                    "nothing holds the wheel '" + name + "'",
                    "give its corner under \"suspension\", or say under its axle which body carries it");
        }
    }

    /** Rolling radius, m. */
    public double radius() {
        return hub[2] - contact[2];
    }
}
