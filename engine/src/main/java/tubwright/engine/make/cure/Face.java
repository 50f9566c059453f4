// SPDX-License-Identifier: Apache-2.0
package tubwright.engine.make.cure;

/** How heat enters at a face. */
public sealed interface Face {
    /**
     * From moving air: q = h (T_air − T).
     *
     * @param coefficient h, W/(m² K)
     */
    record Convective(double coefficient) implements Face {}

    /** The face has the temperature of the air. */
    record Held() implements Face {}

    /** W/(m² K) from the air to the middle of the first cell, whose half conducts this much. */
    default double conductance(double halfCell) {
        return switch (this) {
            case Convective(double h) -> h * halfCell / (h + halfCell);
            case Held() -> halfCell;
        };
    }
}
